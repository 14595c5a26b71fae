package calc

import (
	"fmt"
	"math"

	"brazebooth/tables"
)

// High-strength sheet gets its strength from quenching. Warm parts stay warm for minutes, which softens the sheet where
// the seconds of a seam do not. So no answer tries or names a preheat above what such sheet bears.

// PreheatSoftens is the code of the warning against a preheat that softens hardened sheet.
const PreheatSoftens = "preheat-softens"

// HottestPreheat is the hottest preheat of a card's parts, C: lower where a member is hardened sheet.
func HottestPreheat(card *Card) float64 {
	if Applies("high-strength", card) {
		return min(tables.PreheatMost.V, tables.HardenedWarmest.V)
	}
	return tables.PreheatMost.V
}

// Softened reports hardened sheet that the job preheats above what it bears.
func Softened(card *Card) bool {
	return Applies("high-strength", card) && card.Used.Preheat.V > HottestPreheat(card)
}

// LessPreheat is the advice where a preheat softens the sheet.
func LessPreheat(card *Card) string {
	return fmt.Sprintf("no more than %.0f °C of preheat, and ask again", HottestPreheat(card))
}

// NoHotter ends advice to warm hardened sheet with the limit; "" for other parts.
func NoHotter(card *Card) string {
	if !Applies("high-strength", card) {
		return ""
	}
	return fmt.Sprintf(" to no more than %.0f °C, since hotter softens the sheet", HottestPreheat(card))
}

// softens cautions a given preheat that softens the sheet.
func (w *warnings) softens() {
	if Softened(w.card) {
		w.tell(PreheatSoftens, Caution, tables.HardenedWarmest.Source, "%.0f °C of preheat softens the sheet: "+
			"hardened steel loses strength from about %.0f to %.0f °C on. Take %s.", w.card.Used.Preheat.V,
			HottestPreheat(w.card),
			tables.HardenedWarmest.High, LessPreheat(w.card))
	}
}

// OtherProcess is how to join parts that this arc wets with no preheat.
func OtherProcess(card *Card) string {
	if Applies("high-strength", card) {
		return "rivet or bolt it, or join it as its maker says: a torch or a furnace softens the sheet too"
	}
	return "braze it with a torch or in a furnace"
}

// mostWarm is the preheat of a remedy, C: the wanted one, or the hottest that the parts bear.
func mostWarm(card *Card, wanted float64) float64 { return math.Min(wanted, HottestPreheat(card)) }
