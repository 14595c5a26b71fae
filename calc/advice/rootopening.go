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
		p.Because(s.Origin, "set the sheets apart and give that as the gap: the base stays solid, so that no bronze "+
			"gets down a closed root and the cap alone would carry").Topic = tables.TopicFitUp
	}
}

// usualOpening is the usual root opening for a groove, mm.
func usualOpening(fill *calc.Fill) tables.Datum {
	if fill.Vee {
		return tables.VeeOpening
	}
	d, t := tables.SquareOpening, fill.Groove.Depth
	return tables.Datum{V: d.V * t, Low: d.Low * t, High: d.High * t, Unit: "mm", Origin: d.Origin}
}

// groove adds the sizes and the section of the groove.
func (p *Page) groove(card *calc.Card, fill *calc.Fill) {
	g := &fill.Groove
	switch opening := usualOpening(fill); {
	case card.Job.Gap.Set:
		p.take(calc.GivenFigure("root_opening", g.Opening, "mm"))
	default:
		p.row("root_opening", opening, "not given: usual at this thickness")
		p.Because(opening.Origin, "the card's own heat is that of a closed root: a gap of %.1f mm gives the root "+
			"pass its own card", g.Opening)
	}
	inputs := []calc.Input{calc.In("t", "thickness of the thinner plate", g.Depth, "mm"),
		calc.In("b", "root opening", g.Opening, "mm")}
	form := "{b}·{t}"
	if fill.Vee {
		p.row("root_face", tables.VeeFace, "left upright at the root")
		p.row("bevel", tables.Bevel, "both sides together; bronze wants it wider than a weld in steel")
		form = "{b}·{t} + ({t} − {c})²·tan({a}/2)"
		inputs = append(inputs, calc.In("c", "root face", g.Face, "mm"), calc.In("a", "angle of the V", g.Angle, "deg"))
		p.add("groove_width", "mm", g.Width(), g.Width(), g.Width(), calc.OwnBasis(
			"{b} + 2·({t} − {c})·tan({a}/2)", grooveSource, inputs...))
	}
	p.add("groove_area", "mm2", fill.Section, fill.Low, fill.High, calc.OwnBasis(form, grooveSource+
		"; the band by how well edges and angle are held (common practice, no source)", inputs...))
	if fill.Vee && g.Depth >= tables.BothSidesFrom.V {
		p.add("groove_area_both", "mm2", g.BothSides(), g.BothSides(), g.BothSides(), calc.OwnBasis(
			"{b}·{t} + ({t} − {c})²/2·tan({a}/2)", grooveSource, inputs...))
		p.Because(tables.BothSidesFrom.Origin, "where both faces can be reached, half a V from each takes less "+
			"bronze and bends the plate less")
	}
	if card.Job.Gap.Set && g.Opening > 0 {
		return
	}
	p.Because(practice, "a closed root stays open at the back: bronze gets down into an opening only")
}
