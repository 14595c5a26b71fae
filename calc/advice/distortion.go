package advice

import (
	"fmt"
	"math"
	"slices"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// Distortion is the page of what shrinks: the pull along the seam, how wide the sheet beside it may be before it
// waves, how far a butt closes and a plate bends.
func Distortion(card *calc.Card) (Page, error) {
	p := Page{Name: "distortion", Card: *card}
	member := 0 // the thinner one waves first
	if !card.Setup.One && card.Setup.Members[1].Core < card.Setup.Members[0].Core {
		member = 1
	}
	m := &card.Setup.Members[member]
	net, ok := card.Figure("net_heat")
	rows := tables.Shrinkers()
	row := slices.IndexFunc(rows, func(s tables.Shrinker) bool { return s.Family == m.Metal.Family })
	switch {
	case m.Metal.Family == tables.CastIron:
		p.because("not judged, because cast iron cracks where sheet would bend: short pieces, peening, slow cooling, see the page prepare", string(tables.MemoryHigh), "ASM Handbook vol. 6, welding of cast irons")
		return p, nil
	case !ok || row < 0:
		p.because("not judged, because no heat per length is computed for this joint; try a seam: lap, tee, butt or corner", calc.OwnCalc, "the job")
		return p, nil
	}
	s := shrinks{p: &p, member: m, metal: &rows[row], net: net}
	s.along()
	s.across(card)
	s.angle()
	s.remedies(card)
	return p, nil
}

// shrinks is what the page's figures rest on.
type shrinks struct {
	p      *Page
	member *calc.Member
	metal  *tables.Shrinker
	net    calc.Figure
	pull   ends // kN
}

// band is a figure that is proportional to the net heat, the expansion, 1/ρc and a factor: its ends by
// root-sum-square of the logarithms.
func (s *shrinks) band(v float64, factor tables.Datum, more ...tables.Datum) ends {
	down, up := math.Log(s.net.Value/s.net.Low), math.Log(s.net.High/s.net.Value)
	for _, d := range append(more, factor, s.metal.Expansion) {
		down, up = math.Hypot(down, math.Log(d.V/d.Low)), math.Hypot(up, math.Log(d.High/d.V))
	}
	c := s.member.Metal.HeatCapacity
	down, up = math.Hypot(down, math.Log(c.High/c.V)), math.Hypot(up, math.Log(c.V/c.Low))
	return ends{v * math.Exp(-down), v, v * math.Exp(up)}
}

func (s *shrinks) inputs(more ...calc.Input) []calc.Input {
	return append([]calc.Input{{Symbol: "q", Name: "net heat", Value: s.net.Value, Unit: "J/mm", Derived: true},
		{Symbol: "a", Name: "expansion", Value: s.metal.Expansion.V, Unit: "1e-6/K"},
		{Symbol: "c", Name: "heat capacity", Value: s.member.Metal.HeatCapacity.V, Unit: "J/mm3K"},
		{Symbol: "t", Name: "thickness of the thinner sheet", Value: s.member.Core, Unit: "mm"}}, more...)
}

// along adds the pull and the widths that stay flat under it.
func (s *shrinks) along() {
	share, e := tables.ShrinkageForce, s.metal.Modulus
	v, err := formula.ShrinkageForce(s.net.Value, e.V, s.metal.Expansion.V, s.member.Metal.HeatCapacity.V, share.V)
	if err != nil {
		return
	}
	s.pull = s.band(v/1000, share, e)
	s.p.add("shrinkage_force", "kN", s.pull.mid, s.pull.low, s.pull.high, calc.Basis{Formula: "{k}·{E}·{a}·1e-6·{q}/{c}", Source: share.Source, Known: calc.OwnCalc,
		Inputs: s.inputs(calc.Input{Symbol: "k", Name: "share of the free shrinkage that stays", Value: share.V}, calc.Input{Symbol: "E", Name: "modulus", Value: e.V, Unit: "GPa"})})
	s.flat("flat_width_held", "with its outer edge held straight", tables.PlateHeld)
	s.flat("flat_width_free", "with a free edge", tables.PlateFree)
}

// wideSheet is wider than any that a shop brazes on one side of a seam, mm.
const wideSheet = 3000

// flat adds how wide the sheet on each side of the seam may be before it waves, or says why no width is named.
func (s *shrinks) flat(name, edge string, k tables.Datum) {
	p, t, e := s.p, s.member.Core, s.metal.Modulus
	at := func(pull float64) float64 {
		b, err := formula.FlatWidth(1000*pull, t, e.V, tables.Poisson.V, k.V)
		if err != nil {
			return math.NaN()
		}
		return b
	}
	v := at(s.pull.mid)
	yields := 1000 * s.pull.mid / (2 * s.member.Metal.Tensile.V * t)
	switch {
	case v < yields:
		p.because(fmt.Sprintf("sheet %s: no width is named, because the zone that yields, at least %.0f mm on each side, is itself wider than what would stay flat: it waves unless it is clamped or folded", edge, yields), calc.OwnCalc, k.Source)
		return
	case v > wideSheet:
		p.because("sheet "+edge+" stays flat in any width that a shop has", calc.OwnCalc, k.Source)
		return
	}
	p.add(name, "mm", v, at(s.pull.high), at(s.pull.low), calc.Basis{
		Formula: "2·{k}·pi²·{E}·{t}³/(12·(1 − {nu}²)·{F})", Source: k.Source + "; flat, evenly compressed sheet on each side of the seam, " + edge, Known: calc.OwnCalc,
		Inputs: []calc.Input{{Symbol: "k", Name: "buckling coefficient", Value: k.V}, {Symbol: "E", Name: "modulus", Value: e.V, Unit: "GPa"},
			{Symbol: "t", Name: "thickness of the thinner sheet", Value: t, Unit: "mm"}, {Symbol: "nu", Name: "Poisson's ratio", Value: tables.Poisson.V},
			{Symbol: "F", Name: "shrinkage force", Value: s.pull.mid, Unit: "kN", Derived: true}}})
}

// across adds how far a butt closes.
func (s *shrinks) across(card *calc.Card) {
	share := tables.ShrinkageAcross
	v, err := formula.ShrinkageAcross(s.net.Value, s.member.Core, s.metal.Expansion.V, s.member.Metal.HeatCapacity.V, share.V)
	if card.Used.Joint != "butt" || err != nil {
		return
	}
	b := s.band(v, share)
	s.p.add("shrinkage_across", "mm", b.mid, b.low, b.high, calc.Basis{Formula: "{k}·{a}·1e-6/{c}·{q}/{t}", Source: share.Source, Known: calc.OwnCalc,
		Inputs: s.inputs(calc.Input{Symbol: "k", Name: "share of the free shrinkage", Value: share.V})})
}

// angle adds how far a plate bends, or says why nothing is said.
func (s *shrinks) angle() {
	form, limit := tables.AngularChange, tables.AngularLimit
	v, err := formula.AngularChange(s.net.Value, s.member.Core, s.metal.Expansion.V, s.member.Metal.HeatCapacity.V, form.V, limit.V)
	perSquare := s.net.Value / (s.member.Core * s.member.Core)
	if err != nil {
		s.p.because(fmt.Sprintf("bend along the seam: not judged, because %.3g J/mm³ of heat over thickness squared heats this sheet through (formulas hold to %.0f): it waves more than it bends. Try a test piece, tacks and clamps", perSquare, limit.V), calc.OwnCalc, limit.Source)
		return
	}
	b := s.band(v*180/math.Pi, form)
	s.p.add("angular_change", "deg", b.mid, b.low, b.high, calc.Basis{Formula: "180/pi·{k}·{a}·1e-6/{c}·{q}/{t}²", Source: form.Source, Known: calc.OwnCalc,
		Inputs: s.inputs(calc.Input{Symbol: "k", Name: "angular form", Value: form.V})})
}

// remedies says what lessens it and by how much, as far as that is computed.
func (s *shrinks) remedies(card *calc.Card) {
	p := s.p
	if s.pull.mid > 0 {
		p.because(fmt.Sprintf("the pull is proportional to the heat per length: a tenth less heat, a tenth less pull, a tenth more width that stays flat; stitched over half its length the seam pulls about half (%.1f kN)", s.pull.mid/2), calc.OwnCalc, tables.ShrinkageForce.Source)
	}
	p.because("a fold, bead or flange beside the seam makes a free edge a held one: more than nine times the width stays flat", calc.OwnCalc, tables.PlateHeld.Source)
	p.because("clamp on a copper bar until the seam is cold, tack close, lay short pieces from the middle outward or back-stepped, both sides in turn", "common practice, no source", "common practice, no source")
	if card.Used.Joint == "tee" || card.Used.Joint == "corner" {
		p.because("set the standing sheet a little away from where it is to end: the side with the bead pulls it over", "common practice, no source", "common practice, no source")
	}
	p.because("narrow strips shrink instead of waving and keep less pull than this; flat sheet is assumed, and rolling stresses may wave it sooner", calc.OwnCalc, tables.ShrinkageForce.Source)
}
