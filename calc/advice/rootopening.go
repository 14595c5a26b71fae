package advice

import (
	"brazebooth/calc"
	"brazebooth/tables"
)

// rootOpening is the gap to leave in a square butt: bronze does not melt the root, it has to run in. It is less
// than the widest gap that a setting bridges.
func (p *Page) rootOpening(card *calc.Card, thin float64) {
	s, w, wire := tables.RootOpeningSheet, tables.RootOpeningWire, card.Used.Wire.V
	p.add("root_opening", "mm", min(s.V*thin, w.V*wire), min(s.Low*thin, w.Low*wire), min(s.High*thin, w.High*wire),
		calc.RowBasis("min({s}·{t}, {w}·{d})", s.Origin, calc.In("s", "share of the sheet", s.V, "1"),
			calc.In("t", "thinner sheet", thin, "mm"), calc.In("w", "share of the wire", w.V, "1"),
			calc.In("d", "wire", wire, "mm")))
	if card.Used.Gap.V == 0 {
		p.reason(s.Origin, "set the sheets apart and give that as the gap: the base stays solid, so that no bronze "+
			"gets down a closed root and the cap alone would carry").Topic = tables.TopicFitUp
	}
}
