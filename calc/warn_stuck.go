package calc

import "brazebooth/tables"

// noneGood reports whether the search found no good setting, so that the card has the nearest miss.
func noneGood(sug *suggestion, v *verdict) bool { return v.modelled && sug.feed != 0 && !v.met() }

// noGoodSetting says that the search found no good setting, and which edges rule each other out.
func (w *warnings) noGoodSetting(sug *suggestion, v *verdict) {
	if !noneGood(sug, v) {
		return
	}
	first, second := v.opposed()
	why := first + " and " + second + " rule each other out"
	if second == "" {
		why = first + " is the furthest from being met there"
	}
	none := "No feed and travel here meets"
	try := "Try another wire size, filler, mode or thickness: the window (map) says which of them opens a good zone"
	if sug.kept != "" {
		other := map[string]string{"wire feed": "travel", "travel": "wire feed"}[sug.kept]
		none = "At this " + sug.kept + " no " + other + " meets"
		try = "Try another " + sug.kept + ": the window (map) shows whether one is good"
	}
	w.tell("no-good-setting", Caution, OwnCalc, "%s every edge by more than a hand repeats (about %.0f %%); shown is "+
		"what is likeliest and easy on the hand. %s.%s", none, tables.HandRepeats.V, why, w.remedy(false, try))
}

// opposed is limit.All.Opposed with the names in quotes.
func (v *verdict) opposed() (first, second string) {
	first, second = v.logs.Opposed(&v.d, &v.courses)
	if second != "" {
		second = "“" + second + "”"
	}
	return "“" + first + "”", second
}

// remedy is the sentence that says what to change: none for a job that is stopped, and another choice where no feed and
// travel is good, which no-good-setting says in full.
func (w *warnings) remedy(stuck bool, text string) string {
	switch {
	case w.stopped:
		return ""
	case stuck:
		text = "Try another wire, filler or mode"
	}
	return " " + text + "."
}
