package advice

import (
	"math"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

const restingSource = "rings of sheet and bronze about the hole, heated by a Gaussian arc; held against a closed " +
	"form, against no test"

// hole adds the diameter of a plug's hole: the job's, or the least that the trade uses.
func (p *Page) hole(card *calc.Card) calc.Figure {
	least, most := formula.PlugHole(card.Setup.Members[0].Core)
	p.Because(tables.PlugPitch.Origin, "hole from %.1f to %.1f mm, centres at least %.0f diameters apart", least, most,
		tables.PlugPitch.V)
	if !card.Job.Hole.Set {
		return p.add("hole", "mm", least, least, most, calc.RowBasis("{t} + {m}",
			tables.PlugHoleOverSheet.Origin,
			calc.In("t", "metal of the upper sheet", card.Setup.Members[0].Core, "mm"),
			calc.In("m", "least over the sheet", tables.PlugHoleOverSheet.V, "mm")))
	}
	d := card.Job.Hole.V
	switch {
	case d < least*(1-lastBit):
		p.Warn("hole-small", tables.PlugHoleOverSheet.Source, "A hole of %.1f mm in this sheet is under the %.1f "+
			"mm that the trade takes: the arc burns on the hole's wall.", d, least)
	case d > most*(1+lastBit):
		p.Warn("hole-large", tables.PlugHoleSpan.Source, "A hole of %.1f mm is over the %.1f mm up to which it is "+
			"filled in one go: braze around its rim instead, or make it smaller.", d, most)
	}
	return p.take(calc.GivenFigure("hole", d, "mm"))
}

// tears is the load that the metal of a member carries around its plugs, kN; d is the coefficient of the
// failure.
func tears(name string, m *calc.Member, d tables.Datum, hole, count float64) calc.Figure {
	r := m.Metal.Tensile
	at := func(c, f float64) float64 { return c * m.Core * hole * f * count / 1000 }
	return calc.NewFigure(name, "kN", at(d.V, r.V), at(d.Low, r.Low), at(d.High, r.High),
		calc.RowBasis("{c}·{t}·{d}·{R}·{n}/1000", d.Origin, calc.In("c", "tear-out", d.V, "1"),
			calc.In("t", "metal alone", m.Core, "mm"), calc.In("d", "hole", hole, "mm"),
			calc.In("R", "tensile strength of "+m.Metal.ID, r.V, "MPa"), calc.In("n", "plugs", count, "1")))
}

// sawPlug is what to do before a plug's strength is given.
const sawPlug = "saw a test plug through, and where it wets the sheet below over its whole hole, give that hole"

// plug is the strength page of a hole that is filled with bronze which wets the sheet below.
func (p Page) plug(card *calc.Card) (Page, error) {
	if why := plugDoubt(card); why != "" {
		if !card.Job.Hole.Set {
			p.Because(Own(restingSource), "what the plug carries: not judged, because %s; %s", why, sawPlug)
			return p, nil
		}
		p.Warn("plug-unproved", restingSource, "These loads hold only for a plug that wets the sheet below over the "+
			"whole %.1f mm: %s. Saw a test plug through.", card.Job.Hole.V, why)
	}
	hole := p.hole(card).Value
	mid, low, high, _ := formula.Predictive(formula.FilletStress(true))
	count := card.Used.Count.Or(1)
	area := math.Pi / 4 * hole * hole * count
	scale := min(1, guideRatio(card))
	bond := p.add("plug_capacity", "kN", area*mid*scale/1000, area*low*scale/1000, area*high*scale/1000,
		calc.OwnBasis("pi/4·{d}²·{n}·{f}/1000", filletSource, calc.In("d", "hole", hole, "mm"),
			calc.In("n", "plugs", count, "1"), calc.Derived("f", "stress of the bond at failure", mid*scale, "MPa")))
	tearsOut := func(m *calc.Member) calc.Figure { return tears("sheet_capacity", m, tables.PlugTearOut, hole, count) }
	p.overloaded(card, p.allow("allowable_load", card, bond, p.weakest(tearsOut)))
	p.allow("allowable_pull", card, p.take(tears("pull_out_capacity", &card.Setup.Members[0], tables.PlugPullOut, hole,
		count)), bond)
	p.Because(fillets, "the load along the sheet and the pull square to it are allowed each alone: where both "+
		"come, take the share of each and let the shares add up to no more than one")
	p.Because(practice, "a brazed plug carries on the area that it wets below, not on fused metal: look at the other "+
		"face of a test piece")
	p.strengthWords(card)
	return p, nil
}

// Plug is the page of a plug: its hole, its metal and time, and how hot the arc makes the sheet below.
func Plug(card *calc.Card) (Page, error) {
	p := Page{Name: "plug", Card: *card}
	if card.Used.Joint != "plug" {
		return p, mistake.In("joint", card.Used.Joint+" has no hole to fill", "choose the joint plug")
	}
	time, ok := p.filled(card)
	if !ok {
		return p, nil
	}
	if h, judged := p.plugHeat(card, time); judged {
		p.judgePlug(card, h)
	}
	p.Because(practice, "strike in the middle of the sheet below, lead the arc around the rim and out, and fill to "+
		"flush or proud, to be dressed; clamp the sheets so that no air lies between them at the hole")
	p.Because(ownJob, "what plugs carry is on the page strength, their price on the page cost")
	return p, nil
}

// filled adds the hole, the metal of one plug and the time to lay it, s.
func (p *Page) filled(card *calc.Card) (calc.Figure, bool) {
	hole, t := p.hole(card), card.Setup.Members[0].Core
	d := hole.Value
	v := formula.PlugVolume(d, t)
	volume := p.add("plug_volume", "mm3", v, v, v, calc.OwnBasis("pi/4·{d}²·{t}", "geometry: filled flush",
		hole.As("d"),
		calc.In("t", "metal of the upper sheet", t, "mm")))
	rate, ok := card.Figure("deposition_rate")
	if !ok || card.Used.Mode == "timed" {
		p.Because(ownJob, "time and heat of a plug: not judged, because a timed arc stops and starts within it; "+
			"try the mode dip")
		return rate, false
	}
	density := card.Setup.Filler.Density.V
	s := func(rate float64) float64 { return 60 * v * density / 1000 / rate }
	return p.add("plug_time", "s", s(rate.Value), s(rate.High), s(rate.Low), calc.OwnBasis("60·{V}·{q}/1000/{m}",
		"mass balance; the strike left out", volume.As("V"), calc.In("q", "density of the filler", density, "g/cm3"),
		rate.As("m"))), true
}

// plugCost is the cost of plugs: arc time, wire and gas, and the money as for a seam. For prices per metre the
// length is the sum of the holes' diameters.
func (p Page) plugCost(card *calc.Card) (Page, error) {
	one, ok := p.filled(card)
	if !ok {
		return p, mistake.In("mode", "no time of a plug is computed for a timed arc", "choose the mode dip")
	}
	rate, _ := card.Figure("deposition_rate")
	hole, _ := p.Figure("hole")
	count := card.Used.Count.Or(1)
	time := p.scaled("arc_time", "s", one, count, calc.OwnBasis("{t}·{n}", "definition; strikes left out", one.As("t"),
		calc.In("n", "plugs", count, "1")))
	share := calc.Deposition(card.Used.Mode).V
	mass := one.Value * rate.Value / 60 / share * count
	wire := p.add("wire_used", "g", mass, mass, mass, calc.OwnBasis("{t}·{m}/60/{e}", "mass balance", time.As("t"),
		rate.As("m"), calc.In("e", "deposition efficiency", share, "1")))
	gas := p.gas(card, time)
	p.money(card, time, wire, gas, count*hole.Value)
	p.order(wire, gas)
	return p, nil
}

func plugEta(card *calc.Card) tables.Datum {
	eta := tables.ArcEfficiency
	if card.Used.Eta.Set {
		eta.V = card.Used.Eta.V
	}
	return eta
}

// truePower is the power of a pulsed arc over the product of its mean volts and mean amps, %.
func truePower(card *calc.Card) calc.Figure {
	if f, ok := card.Figure("pulse_power"); ok {
		return f
	}
	return calc.Figure{Value: 100, Low: 100, High: 100}
}
