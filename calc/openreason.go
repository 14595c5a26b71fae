package calc

import "brazebooth/calc/thinsheet"

// openReason is the sentence of a reason whose way out depends on the joint: the ways that the job lacks and that are
// judged. A timed arc is judged over no bar or strip, so that backing goes with an arc without pauses.
func openReason(r thinsheet.Reason, card *Card) string {
	steady := candidate{"an arc without pauses", pauseless}
	switch r {
	case thinsheet.Falls:
		ways := carriesMore(card)
		if len(ways) == 0 {
			ways = []string{"less wire feed"}
		}
		return "The puddle does not stay in the joint: tension carries neither its weight nor the arc's push. Try " +
			either(ways) + "."
	case thinsheet.WideGap:
		return "Not judged, because the gap is wider than the arc's own width, and the arc finds little sheet to " +
			"land on; try " + OverOpening(card) + "."
	case thinsheet.TooThick:
		ways := []candidate{steady}
		if card.Used.Gap.V > 0 {
			ways = append(ways, candidate{"an arc without pauses with the opening closed", func(j *Job) {
				pauseless(j)
				closed(j)
			}})
		}
		return orTry(card, "Not judged, because above about 3 mm the heat flows in three dimensions", ways...) + "."
	case onBacking:
		return orTry(card, "Not judged, because nothing here follows a timed arc over a bar or strip", steady,
			candidate{"it without the " + backingName(card.Used.Backing), func(j *Job) { j.Backing = "" }}) + "."
	}
	return ""
}

// pauseless makes a timed job one of an arc without pauses.
func pauseless(j *Job) {
	*j = withoutTimes(*j)
	j.Mode = "dip"
}

// carriesMore are the ways to let a timed arc's puddle lie on more than it does: none that the job has.
func carriesMore(card *Card) (words []string) {
	u := &card.Used
	if u.Gap.V > 0 {
		words = append(words, "a closer gap")
	}
	if u.Position != defaultPosition {
		words = append(words, "the parts laid flat")
	}
	return append(words, advised(card, candidate{"an arc without pauses over a copper bar", func(j *Job) {
		if j.Joint == "butt" {
			pauseless(j)
			j.Backing = copperBar
		}
	}})...)
}
