package advice

import (
	"fmt"
	"math"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

const filletSource = "arc-brazed fillets pulled to failure, Materials 18(10):2339, 2025, Table A1 (read), as " +
	"F/(a·L); predictive band of a small sample, lognormal, Student t"

// Strength computes what a joint of this length carries: in its throat, in its bond, in its sheet.
func Strength(card *calc.Card) (Page, error) {
	p := Page{Name: "strength", Card: *card}
	if p.noLoad(card) {
		return p, nil
	}
	if card.Used.Joint == "plug" {
		return p.plug(card)
	}
	a, err := p.throatOf(card)
	if err != nil {
		return p, err
	}
	length := p.seamLength(card)
	l := p.lines(card, a, length)
	dry := dryEnd(card)
	if dry {
		p.Warn("dry-end-no-load", ownSection.Source, "By the middle values this bead wets both members; at an end of "+
			"its bands one stays dry and holds nothing: no load is computed that is safe to allow. Find a hotter "+
			"setting, read amps and volts while the arc burns, which narrows the bands, or give the throat of a cut "+
			"test piece that wetted both.")
	} else {
		p.overloaded(card, p.allow("allowable_load", card, l.throat, l.bond, l.sheet))
	}
	p.pulled(card, length)
	p.breaks(card, &l)
	if !dry {
		p.needs(card, &l)
	}
	p.shortSeam(&l)
	if why := failing(card); why != "" {
		p.Warn("unsound-measured", ownSection.Source, "%s: the load holds for the piece that was measured, if it "+
			"bonded all along and its base did not melt. Pull one.", why)
	}
	p.strengthWords(card)
	return p, nil
}

// noLoad says why a joint must carry no load, and reports whether that is so.
func (p *Page) noLoad(card *calc.Card) bool {
	t, limit := card.Used.ServiceTemp, tables.ServiceLimit
	switch {
	case card.Used.Joint == "overlay":
		p.Because(fillets, "an overlay does not join two parts: no strength is computed")
	case card.Used.Joint == "edge":
		p.Because(fillets, "what an edge joint carries is not judged, because a pull opens it like a book: the whole "+
			"pull acts on the line where the sheets meet, and no test of that is at hand. For a joint that carries "+
			"try a lap or a tee; for a tank or a planter fold a lap, or pull a test piece")
	case calc.Applies(string(tables.CastIron), card):
		p.Warn("iron-no-load", practice.Source, "Brazed cast iron is not structural: no allowable load is computed. "+
			"A part that carries or holds something up is renewed, or repaired as a qualified person plans.")
	case calc.TooWarm(card) != "":
		p.Warn("too-warm", limit.Source, "Service at %.0f °C is above about %s: a copper-alloy braze creeps and "+
			"lets go, and no allowable load is computed. Another way: %s.", t.V, calc.WarmestService(),
			calc.OtherJoint(card))
	case failing(card) != "" && !card.Job.Throat.Set && !card.Job.Leg.Set:
		p.Warn("unsound-no-load", ownSection.Source, "%s: not judged, because strength was tested on beads that wet "+
			"a solid base. Find a setting that meets every edge, or give the throat of a cut test piece that came out "+
			"sound.", failing(card))
	default:
		return false
	}
	return true
}

// dryEnd reports a computed throat whose band begins at nothing, as one member is not wetted there.
func dryEnd(card *calc.Card) bool {
	f, ok := card.Figure("throat")
	return ok && f.Value > 0 && !(f.Low > 0) && !card.Job.Throat.Set && !card.Job.Leg.Set && card.Used.Joint != "plug"
}

// throatOf is the throat that was given, directly or as a leg, or the computed one.
func (p *Page) throatOf(card *calc.Card) (calc.Figure, error) {
	switch {
	case card.Job.Throat.Set:
		return p.take(calc.GivenFigure("throat", card.Job.Throat.V, "mm")), nil
	case card.Job.Leg.Set:
		return p.throatOfLeg(card)
	}
	f, ok := card.Figure("throat")
	if !ok || !(f.Value > 0) {
		return f, mistake.In("throat", "none is computed for this joint at this setting",
			"give throat or leg as measured on a cut test piece: 2mm, 3mm")
	}
	return p.take(f), nil
}

// throatOfLeg is the throat of a measured leg. Over a gap the leg is measured on the lower member, and the part of it
// across the gap is no throat.
func (p *Page) throatOfLeg(card *calc.Card) (calc.Figure, error) {
	leg, gap := card.Job.Leg.V, 0.0
	basis := calc.OwnBasis("{l}/√2", "geometry of an equal-legged fillet", calc.In("l", "leg", leg, "mm"))
	if u := &card.Used; u.Gap.V > 0 && (u.Joint == "lap" || u.Joint == "tee") {
		gap = u.Gap.V
		basis = calc.RowBasis("({l} − {g})/√2", openLeg, calc.In("l", "leg", leg, "mm"),
			calc.In("g", "gap under the member that ends there", gap, "mm"))
	}
	if leg <= gap {
		return calc.Figure{}, mistake.In("leg", "it is not longer than the gap, so the bead holds nothing",
			"give a leg of more than the gap, or close the gap")
	}
	v := formula.LegThroat(leg - gap)
	return p.add("throat", "mm", v, v, v, basis), nil
}

var openLeg = tables.Origin{Known: tables.MemoryMedium,
	Source: "AWS D1.1, fillet welds: an opening over 1.6 mm is added to the leg; here any opening"}

// weakest adds the capacity of the member whose sheet breaks first, kN.
func (p *Page) weakest(of func(m *calc.Member) calc.Figure) calc.Figure {
	least := of(&p.Card.Setup.Members[0])
	for _, m := range p.Card.Setup.Joined()[1:] {
		if f := of(&m); f.Low < least.Low {
			least = f
		}
	}
	return p.take(least)
}

// sheetCapacity is the capacity of the weaker member's section, kN.
func (p *Page) sheetCapacity(length float64) calc.Figure {
	return p.weakest(func(m *calc.Member) calc.Figure {
		r := m.Metal.Tensile
		at := func(f float64) float64 { return f * m.Core * length / 1000 }
		return calc.NewFigure("sheet_capacity", "kN", at(r.V), at(r.Low), at(r.High),
			calc.RowBasis("{R}·{t}·{L}/1000", r.Origin, calc.In("R", "tensile strength of "+m.Metal.ID, r.V, "MPa"),
				calc.In("t", "metal alone", m.Core, "mm"), calc.In("L", "length", length, "mm")))
	})
}

// allow divides the lowest capacity by the safety factor.
func (p *Page) allow(name string, card *calc.Card, capacities ...calc.Figure) calc.Figure {
	edge := math.Inf(1)
	var symbols []string
	var in []calc.Input
	for i, f := range capacities {
		edge = min(edge, f.Low)
		symbols = append(symbols, fmt.Sprintf("{F%d}", i+1))
		in = append(in, calc.Derived(fmt.Sprintf("F%d", i+1), "low edge of the "+calc.FigureLabel(f.Name),
			f.Low, "kN"))
	}
	v := downTo2(edge / factor(card).Value)
	return p.add(name, "kN", v, v, v, calc.RowBasis("min("+strings.Join(symbols, ", ")+")/{S}, rounded down to two "+
		"figures", tables.DesignSafety.Origin, append(in, factor(card))...))
}

// overloaded compares the job's load with the one to allow.
func (p *Page) overloaded(card *calc.Card, allowed calc.Figure) {
	if !card.Job.Load.Set || card.Job.Load.V <= allowed.Value*(1+lastBit) {
		return
	}
	stronger := "Longer, a fuller throat, thicker sheet"
	if card.Used.Joint == "plug" {
		stronger = "More plugs or larger ones, thicker sheet"
	}
	p.Warn("overloaded", filletSource, "%s kN is more than the allowable %s kN. %s, another filler, or another way to "+
		"join it.", calc.Number(card.Job.Load.V), calc.Number(allowed.Value), stronger)
}

// lastBit is the relative difference up to which two ways to compute a number count as equal.
const lastBit = 1e-12

// downTo2 rounds a positive number down to two figures: an allowable load has no more digits than its interval.
func downTo2(v float64) float64 {
	return toTwo(v, func(n float64) float64 { return math.Floor(n * (1 + lastBit)) })
}

// upTo2 rounds a positive number up to two figures, for quantities that must be enough.
func upTo2(v float64) float64 {
	return toTwo(v, func(n float64) float64 { return math.Ceil(n * (1 - lastBit)) })
}

// round2 rounds to two figures.
func round2(v float64) float64 { return toTwo(v, math.Round) }

// toTwo rounds a positive number to two figures; others stay as they are.
func toTwo(v float64, whole func(float64) float64) float64 {
	if !(v > 0) {
		return v
	}
	unit := math.Pow(10, math.Floor(math.Log10(v))-1)
	return whole(v/unit) * unit
}

// factor is the safety factor as an input of an allowable load.
func factor(card *calc.Card) calc.Input {
	return calc.Input{Symbol: "S", Name: "safety factor", Value: card.Used.Safety.Or(tables.DesignSafety.V), Unit: "1",
		Assumed: !card.Job.Safety.Set}
}

func (p *Page) strengthWords(card *calc.Card) {
	if card.Used.Joint == "lap" || card.Used.Joint == "tee" {
		p.Because(fillets, "the length is that of one bead")
	}
	if card.Used.Backing == "patch" {
		p.Because(fillets, "the load passes both laps of the patch one after the other: what one of them carries "+
			"counts")
	}
	p.Warn("straight-pull", filletSource, "For a straight, steady pull along the seam only, as in the tests: a "+
		"joint that is levered, peeled or shaken fails at its toe long before. A bracket levers its joint.")
	p.Because(tables.DesignSafety.Origin, "no standard gives a design factor for arc-brazed joints")
	p.Warn("strength-person", practice.Source, "For structures, lifting, pressure or vehicles this figure is not "+
		"enough: they need a qualified procedure and a person who is allowed to decide. "+
		"Pull a test piece.")
}
