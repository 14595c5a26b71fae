package advice

import (
	"strings"

	"brazebooth/calc"
	"brazebooth/tables"
)

// hopeless is the chance of a good bead, in 100, at the best setting, below which a joint does not suit arc
// brazing as it is: a judgement, without a source.
const hopeless = 5

// aboutEven says that a setting's chance is about even; otherwise it is "".
func aboutEven(card *calc.Card) string {
	if card.AboutEven() {
		return "; its chance is about even"
	}
	return ""
}

// heat says what the cross-section finds about the setting and about remedies for it.
func (f *fitting) heat(card *calc.Card) {
	if chance, judged := card.Figure("chance"); judged && card.Met() && chance.Value < tables.MarginalUnder.V {
		verdict := ": marginal"
		if card.TooHotParts() != "" { // whatever the chance, the setting is outside
			verdict = ""
		}
		f.say(WithCare, ownSection, "", "at this setting every edge is met, but only about %.0f in 100 beads would be "+
			"good%s%s; the window (map) tells what makes it surer", chance.Value, verdict, aboutEven(card))
		return
	}
	switch card.Zone {
	case "good":
		if card.Said("weld-braze") != "" {
			f.say(WithCare, ownSection, "", "at this setting the bead wets, and the skin of the base melts with it: a "+
				"weld-braze")
			return
		}
		f.say(Suits, ownSection, "", "at this setting the bead wets and the base stays solid%s", aboutEven(card))
	case "cold", "hot", "burn-through":
		where := "the window shows where it is good"
		if card.Said("no-good-setting") != "" {
			where = "no feed and travel that are open meet every edge; the window tries what would open one"
		}
		f.say(WithCare, ownSection, "", "at this setting the heat is %s: %s", card.Zone, where)
		chance, judged := card.Figure("chance")
		if text := card.Said("preheat-needed"); text != "" {
			f.say(WithCare, ownSection, "", "%s", text)
		} else if card.Said("no-good-setting") != "" && judged && chance.Value < hopeless {
			f.say(AnotherWay, ownSection, "what the window finds to open a good setting, or another process", "at the "+
				"best feed and travel about %.0f in 100 beads would be good", chance.Value)
		}
		process := "another process, such as a torch or a furnace"
		if calc.Applies("high-strength", card) {
			process = calc.OtherProcess(card)
		}
		for _, code := range [...]string{"another-process", "preheat-no-cure"} {
			if text := card.Said(code); text != "" {
				f.say(WithCare, ownSection, process, "%s", text)
			}
		}
	case "not-modelled":
		if card.Used.Joint == "plug" && f.plug(card) {
			return
		}
		f.say(WithCare, ownSection, "", "%s", card.Said("not-modelled"))
	}
}

// plug repeats the warning of the plug page; false if that page warns of nothing.
func (f *fitting) plug(card *calc.Card) bool {
	p, err := Plug(card)
	if err != nil {
		return false
	}
	for _, w := range p.Warnings {
		if w.Code == plugNever {
			f.say(AnotherWay, Own(restingSource), "another joint or process", "%s", w.Text)
			return true
		}
		if strings.HasPrefix(w.Code, "plug-") {
			f.say(WithCare, Own(restingSource), "", "%s", w.Text)
			return true
		}
	}
	return false
}
