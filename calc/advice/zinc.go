package advice

import (
	"slices"

	"brazebooth/calc"
	"brazebooth/tables"
)

// PreheatCautions repeats the card's cautions about preheated zinc and overheated hardened sheet: every page
// must show them.
func (p *Page) PreheatCautions(card *calc.Card) {
	if calc.WarmedZinc(card) {
		p.repeat(card, calc.PreheatNever)
	}
	p.repeat(card, calc.PreheatSoftens)
}

// repeat takes a warning over from the card.
func (p *Page) repeat(card *calc.Card, code string) {
	is := func(w calc.Warning) bool { return w.Code == code }
	if at := slices.IndexFunc(card.Warnings, is); at >= 0 && !slices.ContainsFunc(p.Warnings, is) {
		p.Warnings = append(p.Warnings, card.Warnings[at])
	}
}

// unlessZinc is advice to warm the parts, with the temperature that they bear; "" if zinc is on them.
func unlessZinc(card *calc.Card, words string) string {
	if calc.Applies("zinc", card) {
		return ""
	}
	return words + calc.NoHotter(card)
}

// stripsZinc reports whether zinc must come off before the arc: from metal that it would embrittle, under an
// overlay, and from parts that are warmed or would have to be.
func (p *Page) stripsZinc(card *calc.Card) bool {
	embrittles := p.has(tables.Stainless) || calc.Applies("boron-steel", card)
	return calc.Applies("zinc", card) && (embrittles || card.Setup.One || calc.WarmedZinc(card) ||
		card.Said("preheat-needed") != "")
}

// zincStaysCold says that parts with zinc on are not warmed. It reports whether it had to say so.
func (p *Page) zincStaysCold(card *calc.Card, heavy bool) bool {
	say := func(format string, args ...any) { p.Because(practice, format, args...).Topic = tables.TopicWarm }
	switch strip := calc.StripZinc(card); {
	case calc.Preheated(card):
		say("the job has %.0f °C of preheat, and zinc must not be preheated: %s", card.Used.Preheat.V, strip)
	case p.has(tables.CastIron):
		say("cast iron has to be warm, and zinc must not be preheated: %s", strip)
	case card.Said("preheat-needed") != "": // preheatOf says it
	case heavy || card.Zone == "cold" || p.has(tables.CopperFam):
		say("zinc-coated parts are not warmed, not even hand-warm; where warmth is wanted, %s", strip)
	default:
		return false
	}
	return true
}
