package calc

import (
	"fmt"
	"math"

	"brazebooth/tables"
)

// High-strength sheet has its strength from a quench. Warm parts stay warm for minutes, which softens them where a
// seam's seconds do not: so no answer tries or names a preheat over what such sheet bears.

// PreheatSoftens is the code of the warning against a preheat that softens hardened sheet.
const PreheatSoftens = "preheat-softens"

// HottestPreheat is the hottest that parts are warmed for the arc, C: less where a member is hardened sheet.
func HottestPreheat(card *Card) float64 {
	if Applies("high-strength", card) {
		return min(tables.PreheatMost.V, tables.HardenedWarmest.V)
	}
	return tables.PreheatMost.V
}

// Softened reports hardened sheet that the job warms over what it bears.
func Softened(card *Card) bool {
	return Applies("high-strength", card) && card.Used.Preheat.V > HottestPreheat(card)
}

// LessPreheat is what is done where a preheat softens the sheet.
func LessPreheat(card *Card) string {
	return fmt.Sprintf("no more than %.0f °C of preheat, and ask again", HottestPreheat(card))
}

// NoHotter is how warm hardened sheet may be made, to end advice to warm it; "" for other parts.
func NoHotter(card *Card) string {
	if !Applies("high-strength", card) {
		return ""
	}
	return fmt.Sprintf(" to no more than %.0f °C, since hotter softens the sheet", HottestPreheat(card))
}

// softens cautions a preheat that was given and that softens the sheet.
func (w *warnings) softens() {
	if Softened(w.card) {
		w.tell(PreheatSoftens, Caution, tables.HardenedWarmest.Source, "%.0f °C of preheat softens the sheet: "+
			"hardened steel loses strength from about %.0f to %.0f °C on. Take %s.", w.card.Used.Preheat.V,
			HottestPreheat(w.card),
			tables.HardenedWarmest.High, LessPreheat(w.card))
	}
}

// OtherProcess is what joins parts that no preheat makes this arc wet.
func OtherProcess(card *Card) string {
	if Applies("high-strength", card) {
		return "rivet or bolt it, or join it as its maker says: a torch or a furnace softens the sheet too"
	}
	return "braze it with a torch or in a furnace"
}

// mostWarm is the hottest preheat for a remedy, C: the wanted one or what the parts bear.
func mostWarm(card *Card, wanted float64) float64 { return math.Min(wanted, HottestPreheat(card)) }
