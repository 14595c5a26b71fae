package calc

import (
	"fmt"
	"strings"

	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// Zinc is never warmed: it smokes, and from 420 °C on it runs. So no answer tries or names warmer parts where a member
// is coated with zinc; there the remedy begins with stripping it.

// StripZinc is the advice where warmer parts would help, by the rule of the trade: strip the zinc first, and ask again
// with the bare sheet.
func StripZinc(card *Card) string {
	return "strip the zinc back, give the sheet as bare (" + bareChoices(card) + ") and ask again"
}

// bareChoices are the choices that describe the members with zinc as bare.
func bareChoices(card *Card) string {
	var list []string
	for i, m := range card.Setup.Joined() {
		if !m.Coating.Zinc {
			continue
		}
		if i == 0 {
			list = append(list, "coating none")
		} else if j := &card.Job; len(list) == 0 || j.Metal2 != "" || j.Coating2 != "" { // else it follows the first
			list = append(list, "second coating none")
		}
	}
	return strings.Join(list, ", ")
}

// WarmedZinc reports parts that carry zinc and are warmer than a hand bears, or have to be, as cast iron.
func WarmedZinc(card *Card) bool {
	return Applies("zinc", card) && (Preheated(card) || Applies(string(tables.CastIron), card))
}

// Preheated reports a preheat warmer than a hand bears.
func Preheated(card *Card) bool { return card.Used.Preheat.V > tables.ChillOff.V }

// OrStrip is advice to warm the parts, as far as they bear it, or to strip the zinc where there is any.
func OrStrip(card *Card, warm string) string {
	if Applies("zinc", card) {
		return StripZinc(card)
	}
	return warm + NoHotter(card)
}

// WarmOverZinc is the objection of a card and of the page fit to zinc on parts that are warmed.
func WarmOverZinc(card *Card) string {
	if !Preheated(card) {
		return "cast iron has to be warm, and zinc is never preheated"
	}
	return fmt.Sprintf("%.0f °C of preheat over zinc: zinc is never preheated", card.Used.Preheat.V)
}

// zinc cautions zinc that the preheat or the seam itself makes warmer than a hand bears.
func (w *warnings) zinc(v *verdict) {
	if !Applies("zinc", w.card) {
		return
	}
	const source = "common practice, no source"
	if WarmedZinc(w.card) {
		w.tell(ZincWarmed, Caution, source, "%s. Another way: %s.",
			sentenceCase(WarmOverZinc(w.card)), StripZinc(w.card))
	}
	hot := w.card.Used.Preheat.V + v.ends.rise
	if f, ok := w.card.Figure("next_start"); ok {
		hot = max(hot, f.Value)
	}
	if rise := hot - w.card.Used.Preheat.V; rise > 0 && hot > tables.ChillOff.V {
		w.tell("zinc-warms", Caution, source, "The seam itself warms the zinc to about %.0f °C before its end, and "+
			"zinc is kept under %.0f °C, hand-warm. Short seams, apart from each other, and let the part cool before "+
			"the next; or %s.",
			hot, tables.ChillOff.V, StripZinc(w.card))
	}
}

// ZincWarmed is the code of the caution on parts that are preheated with zinc on them.
const ZincWarmed = "zinc-warmed"

// PreheatNever is the code of the warning against warming zinc, paint and linings.
const PreheatNever = "preheat-never"

// solidZinc refuses parts so warm that their zinc is liquid before the arc is struck.
func (r *resolution) solidZinc() error {
	if !Applies("zinc", r.card) || r.used.Preheat.V < tables.ZincMelts.Low {
		return nil
	}
	return mistake.In("preheat", fmt.Sprintf("zinc melts at %.0f °C", tables.ZincMelts.V),
		"strip the zinc back and choose "+bareChoices(r.card)+", or give less preheat")
}
