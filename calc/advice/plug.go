package advice

import (
	"math"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// tearOut is the load at which the sheet tears around its plugs, kN.
func (p *Page) tearOut(hole, count float64) calc.Figure {
	return p.weakest(func(m *calc.Member) calc.Figure {
		d, r := tables.PlugTearOut, m.Metal.Tensile
		at := func(c, f float64) float64 { return c * m.Core * hole * f * count / 1000 }
		return calc.NewFigure("sheet_capacity", "kN", at(d.V, r.V), at(d.Low, r.Low), at(d.High, r.High),
			calc.RowBasis("{c}·{t}·{d}·{R}·{n}/1000", d.Origin, calc.In("c", "tear-out", d.V, "1"),
				calc.In("t", "metal alone", m.Core, "mm"), calc.Assumed("d", "hole", hole, "mm"),
				calc.In("R", "tensile strength of "+m.Metal.ID, r.V, "MPa"), calc.In("n", "plugs", count, "1")))
	})
}

// plug is a hole that is filled and wetted to the sheet under it.
func (p Page) plug(card *calc.Card) (Page, error) {
	least, most := formula.PlugHole(card.Setup.Members[0].Core)
	mid, low, high, err := formula.Predictive(formula.FilletStress(true))
	if err != nil {
		return p, err
	}
	count := card.Used.Count.Or(1)
	area := math.Pi / 4 * least * least * count
	tested, _ := tables.FillerByID("cual8")
	scale := min(1, card.Setup.Filler.Tensile.V/tested.Tensile.V)
	bond := p.add("plug_capacity", "kN", area*mid*scale/1000, area*low*scale/1000, area*high*scale/1000,
		calc.OwnBasis("pi/4·{d}²·{n}·{f}/1000", filletSource, calc.Assumed("d", "hole", least, "mm"),
			calc.In("n", "plugs", count, "1"), calc.Derived("f", "stress of the bond at failure", mid*scale, "MPa")))
	p.allow(card, bond, p.tearOut(least, count))
	p.Because(tables.PlugPitch.Origin, "hole from %.1f to %.1f mm, centres at least %.0f mm apart", least, most,
		tables.PlugPitch.V*least)
	p.Because(practice, "a brazed plug carries on the area that it wets below, not on fused metal: look at the other "+
		"face of a test piece")
	p.strengthWords(card)
	return p, nil
}
