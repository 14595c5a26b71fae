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

const (
	filletSource = "arc-brazed fillets pulled to failure, Materials 18(10):2339, 2025, Table A1 (read), as F/(a·L); predictive band of a small sample, lognormal, Student t"
	capacityForm = "{f}·{a}·{L}/1000"
)

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
	throat, bond := p.capacities(card, a, length)
	sheet := p.sheetCapacity(card, length)
	p.allow(card, throat, bond, sheet)
	p.governs(throat, bond, sheet)
	p.needs(card, throat, bond, sheet, a, length)
	p.strengthWords(card)
	return p, nil
}

// noLoad says, of a joint that must carry no load, why, and reports whether it is one.
func (p *Page) noLoad(card *calc.Card) bool {
	t, limit := card.Used.ServiceTemp, tables.ServiceLimit
	switch {
	case card.Used.Joint == "overlay":
		p.because("an overlay joins no two parts: no strength is figured", calc.OwnCalc, filletSource)
	case calc.Applies(string(tables.CastIron), card):
		p.Warnings = append(p.Warnings, calc.Warning{Code: "iron-no-load", Severity: calc.Caution, Text: "Brazed cast iron is not structural: no load to allow is figured. A part that carries or holds something up is renewed, or repaired as a qualified person plans.", Basis: "common practice, no source"})
	case t.Set && t.V > limit.V:
		p.Warnings = append(p.Warnings, calc.Warning{Code: "too-warm", Severity: calc.Caution,
			Text: fmt.Sprintf("Service at %.0f °C is above about %.0f °C: a copper-alloy braze creeps and lets go, and no load to allow is figured. Weld it, or bolt it.", t.V, limit.V), Basis: limit.Source})
	default:
		return false
	}
	return true
}

// throatOf is the throat that was given, as such or as a leg, or the computed one.
func (p *Page) throatOf(card *calc.Card) (calc.Figure, error) {
	switch {
	case card.Job.Throat.Set:
		f := calc.GivenFigure("throat", card.Job.Throat.V, "mm")
		p.Figures = append(p.Figures, f)
		return f, nil
	case card.Job.Leg.Set:
		v := formula.LegThroat(card.Job.Leg.V)
		f := calc.Figure{Name: "throat", Value: v, Low: v, High: v, Unit: "mm", Basis: calc.Basis{Formula: "{l}/√2", Source: "geometry of an equal-legged fillet", Known: calc.OwnCalc, Inputs: []calc.Input{{Symbol: "l", Name: "leg", Value: card.Job.Leg.V, Unit: "mm"}}}}
		p.Figures = append(p.Figures, f)
		return f, nil
	}
	f, ok := card.Figure("throat")
	if !ok || !(f.Value > 0) {
		return f, mistake.In("throat", "none is computed for this joint", "give throat or leg as measured on a cut test piece: 2mm, 3mm")
	}
	p.Figures = append(p.Figures, f)
	return f, nil
}

// capacities are those of throat and bond, kN. Fillers other than the tested one scale by their guide strengths: the
// throat both ways, the bond only down.
func (p *Page) capacities(card *calc.Card, a calc.Figure, length float64) (throat, bond calc.Figure) {
	tested, _ := tables.FillerByID("cual8")
	ratio := card.Setup.Filler.Tensile.V / tested.Tensile.V
	make := func(name string, isBond bool, scale, most float64) calc.Figure {
		mid, low, high, err := formula.Predictive(formula.FilletStress(isBond))
		if err != nil {
			return calc.Figure{}
		}
		low, mid = min(low*scale, most), min(mid*scale, most)
		unit := length / 1000
		f := calc.Figure{Name: name, Value: mid * a.Value * unit, Low: low * a.Low * unit, High: max(high*scale, mid) * a.High * unit, Unit: "kN",
			Basis: calc.Basis{Formula: capacityForm, Source: filletSource, Known: calc.OwnCalc, Inputs: []calc.Input{
				{Symbol: "f", Name: "stress at failure", Value: mid, Unit: "MPa", Derived: true},
				{Symbol: "a", Name: "throat", Value: a.Value, Unit: "mm", Derived: true},
				{Symbol: "L", Name: "length of one fillet", Value: length, Unit: "mm"},
				{Name: "filler's guide strength over the tested one's", Value: ratio, Unit: "1"}}}}
		p.Figures = append(p.Figures, f)
		return f
	}
	return make("throat_capacity", false, ratio, card.Setup.Filler.Tensile.V/math.Sqrt(3)), make("bond_capacity", true, min(1, ratio), math.Inf(1))
}

// sheetCapacity is that of the weaker member's section, kN.
func (p *Page) sheetCapacity(card *calc.Card, length float64) calc.Figure {
	var least calc.Figure
	for i, m := range card.Setup.Joined() {
		v := m.Metal.Tensile.V * m.Core * length / 1000
		f := calc.Figure{Name: "sheet_capacity", Value: v, Low: m.Metal.Tensile.Low * m.Core * length / 1000, High: m.Metal.Tensile.High * m.Core * length / 1000, Unit: "kN",
			Basis: calc.Basis{Formula: "{R}·{t}·{L}/1000", Source: m.Metal.Tensile.Source, Known: string(m.Metal.Tensile.Known), Inputs: []calc.Input{
				{Symbol: "R", Name: "tensile strength of " + m.Metal.ID, Value: m.Metal.Tensile.V, Unit: "MPa"},
				{Symbol: "t", Name: "metal alone", Value: m.Core, Unit: "mm"}, {Symbol: "L", Name: "length", Value: length, Unit: "mm"}}}}
		if i == 0 || f.Low < least.Low {
			least = f
		}
	}
	p.Figures = append(p.Figures, least)
	return least
}

// allow divides the lowest capacity by the safety factor, and compares a load with it.
func (p *Page) allow(card *calc.Card, capacities ...calc.Figure) {
	safety := card.Used.Safety.Or(tables.DesignSafety.V)
	edge := math.Inf(1)
	var symbols []string
	var in []calc.Input
	for i, f := range capacities {
		edge = min(edge, f.Low)
		symbols = append(symbols, fmt.Sprintf("{F%d}", i+1))
		in = append(in, calc.Input{Symbol: fmt.Sprintf("F%d", i+1), Name: "low edge of the " + calc.FigureLabel(f.Name), Value: f.Low, Unit: "kN", Derived: true})
	}
	v := downTo2(edge / safety)
	p.add("allowable_load", "kN", v, v, v, calc.Basis{Formula: "min(" + strings.Join(symbols, ", ") + ")/{S}, rounded down to two figures", Source: tables.DesignSafety.Source, Known: string(tables.DesignSafety.Known),
		Inputs: append(in, calc.Input{Symbol: "S", Name: "safety factor", Value: safety, Unit: "1", Assumed: !card.Job.Safety.Set})})
	if !card.Job.Load.Set {
		return
	}
	load := card.Job.Load.V
	if load > v*(1+lastBit) {
		p.Warnings = append(p.Warnings, calc.Warning{Code: "overloaded", Severity: calc.Caution,
			Text: fmt.Sprintf("%s kN is more than the allowable %s kN. %s, another filler, or another way to join it.", calc.Number(load), calc.Number(v), moreOf(card)), Basis: filletSource})
	}
}

// lastBit is by how much two ways to the same number may differ, relative.
const lastBit = 1e-12

// downTo2 rounds a positive number down to two figures: a load to allow claims no more digits than its interval does.
func downTo2(v float64) float64 {
	if !(v > 0) {
		return v
	}
	unit := math.Pow(10, math.Floor(math.Log10(v))-1)
	return math.Floor(v/unit*(1+lastBit)) * unit
}

// upTo2 rounds a positive number up to two figures: what must be allowed for it.
func upTo2(v float64) float64 {
	unit := math.Pow(10, math.Floor(math.Log10(v))-1)
	return math.Ceil(v/unit*(1-lastBit)) * unit
}

// moreOf is what would make a joint carry more.
func moreOf(card *calc.Card) string {
	if card.Used.Joint == "plug" {
		return "More plugs or larger ones, thicker sheet"
	}
	return "Longer, a fuller throat, thicker sheet"
}

// tearOut is the load at which the sheet tears around its plugs, kN.
func (p *Page) tearOut(card *calc.Card, hole, count float64) calc.Figure {
	var least calc.Figure
	for i, m := range card.Setup.Joined() {
		d, r := tables.PlugTearOut, m.Metal.Tensile
		at := func(c, f float64) float64 { return c * m.Core * hole * f * count / 1000 }
		f := calc.Figure{Name: "sheet_capacity", Value: at(d.V, r.V), Low: at(d.Low, r.Low), High: at(d.High, r.High), Unit: "kN", Basis: calc.Basis{Formula: "{c}·{t}·{d}·{R}·{n}/1000", Source: d.Source, Known: string(d.Known), Inputs: []calc.Input{
			{Symbol: "c", Name: "tear-out", Value: d.V, Unit: "1"}, {Symbol: "t", Name: "metal alone", Value: m.Core, Unit: "mm"}, {Symbol: "d", Name: "hole", Value: hole, Unit: "mm", Assumed: true},
			{Symbol: "R", Name: "tensile strength of " + m.Metal.ID, Value: r.V, Unit: "MPa"}, {Symbol: "n", Name: "plugs", Value: count, Unit: "1"}}}}
		if i == 0 || f.Low < least.Low {
			least = f
		}
	}
	p.Figures = append(p.Figures, least)
	return least
}

// governs names what fails first, or that either may.
func (p *Page) governs(throat, bond, sheet calc.Figure) {
	first := throat
	for _, f := range [...]calc.Figure{bond, sheet} {
		if f.Low < first.Low {
			first = f
		}
	}
	text := "the " + calc.FigureLabel(first.Name) + " governs: its low edge is the lowest"
	if first.Name != "sheet_capacity" && throat.Low < bond.High && bond.Low < throat.High {
		text += "; throat and bond overlap, so that either may fail first"
	}
	p.because(text, calc.OwnCalc, filletSource)
}

// needs says which length or throat would carry a given load. Both are rounded up, and so is the load to what the
// allowable one is rounded down to: who follows the advice is allowed the load.
func (p *Page) needs(card *calc.Card, throat, bond, sheet, a calc.Figure, length float64) {
	if !card.Job.Load.Set || !(card.Job.Load.V > 0) {
		return
	}
	safety := card.Used.Safety.Or(tables.DesignSafety.V)
	want := upTo2(card.Job.Load.V) * safety
	bead := min(throat.Low, bond.Low)
	text := fmt.Sprintf("for %s kN at a safety factor of %s: a seam of %.0f mm with this throat", calc.Number(card.Job.Load.V), calc.Number(safety), math.Ceil(want/min(bead, sheet.Low)*length))
	switch need := math.Ceil(100*a.Value*want/bead) / 100; {
	case sheet.Low*(1+lastBit) < want:
		text += "; at this length no throat helps, since the sheet itself is too weak: thicker sheet"
	case card.Used.Joint == "lap" && need > math.Sqrt2/2*card.Setup.Members[0].Core:
		text += fmt.Sprintf("; at this length it would take a throat of %.2f mm, more than a lap of this sheet has", need)
	default:
		text += fmt.Sprintf(", or a throat of %.2f mm at this length", need)
	}
	p.because(text, calc.OwnCalc, filletSource)
}

func (p *Page) strengthWords(card *calc.Card) {
	if card.Used.Joint == "lap" || card.Used.Joint == "tee" {
		p.because("the length is that of one bead", calc.OwnCalc, filletSource)
	}
	p.Warnings = append(p.Warnings, calc.Warning{Code: "straight-pull", Severity: calc.Caution,
		Text: "A straight, steady pull along the seam only, as in the tests: a joint that is levered, peeled or shaken lets go at its toe long before. A bracket levers.", Basis: filletSource})
	p.because("no standard gives a design factor for arc-brazed joints", string(tables.DesignSafety.Known), tables.DesignSafety.Source)
	p.Warnings = append(p.Warnings, calc.Warning{Code: "strength-person", Severity: calc.Caution,
		Text: "Structural, lifting, pressure, vehicle: a qualified procedure and a person who may decide, not this figure. Pull a test piece.", Basis: "common practice, no source"})
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
	p.add("plug_capacity", "kN", area*mid*scale/1000, area*low*scale/1000, area*high*scale/1000, calc.Basis{Formula: "pi/4·{d}²·{n}·{f}/1000", Source: filletSource, Known: calc.OwnCalc,
		Inputs: []calc.Input{{Symbol: "d", Name: "hole", Value: least, Unit: "mm", Assumed: true}, {Symbol: "n", Name: "plugs", Value: count, Unit: "1"},
			{Symbol: "f", Name: "stress of the bond at failure", Value: mid * scale, Unit: "MPa", Derived: true}}})
	bond := p.Figures[len(p.Figures)-1]
	p.allow(card, bond, p.tearOut(card, least, count))
	p.because(fmt.Sprintf("hole from %.1f to %.1f mm, centres at least %.0f mm apart", least, most, tables.PlugPitch.V*least), "read", tables.PlugPitch.Source)
	p.because("a brazed plug carries on the area that it wets below, not on fused metal: look at the other face of a test piece", "common practice, no source", "common practice, no source")
	p.strengthWords(card)
	return p, nil
}
