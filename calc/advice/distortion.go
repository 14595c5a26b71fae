package advice

import (
	"math"
	"slices"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// ironWelds is where what is said of cast iron beside a seam comes from.
var ironWelds = tables.Origin{Source: "ASM Handbook vol. 6, welding of cast irons", Known: tables.MemoryHigh}

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
		p.Because(ironWelds, "not judged, because cast iron cracks where sheet would bend: short pieces, peening, "+
			"slow "+
			"cooling, see the page prepare")
		return p, nil
	case !ok || row < 0:
		p.Because(ownJob, "not judged, because no heat per length is computed for this joint; try a seam: lap, tee, "+
			"butt or corner")
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
	pull   calc.Figure // kN
}

// put adds a figure that is proportional to the net heat, the expansion, 1/ρc and factors; its interval is that of
// all of them by root-sum-square of the logarithms.
func (s *shrinks) put(name, unit, form string, v float64, factor tables.Datum, inputs []calc.Input,
	more ...tables.Datum) calc.Figure {
	down, up := math.Log(s.net.Value/s.net.Low), math.Log(s.net.High/s.net.Value)
	for _, d := range append(more, factor, s.metal.Expansion) {
		down, up = math.Hypot(down, math.Log(d.V/d.Low)), math.Hypot(up, math.Log(d.High/d.V))
	}
	c := s.member.Metal.HeatCapacity
	down, up = math.Hypot(down, math.Log(c.High/c.V)), math.Hypot(up, math.Log(c.V/c.Low))
	inputs = append([]calc.Input{s.net.As("q"), calc.In("a", "expansion", s.metal.Expansion.V, "1e-6/K"),
		calc.In("c", "heat capacity", c.V, "J/mm3K"), calc.In("t", "thickness of the thinner sheet", s.member.Core,
			"mm"),
		calc.In("k", "share of the free shrinkage", factor.V, "")}, inputs...)
	return s.p.add(name, unit, v, v*math.Exp(-down), v*math.Exp(up), calc.OwnBasis(form, factor.Source, inputs...))
}

// along adds the pull and the widths that stay flat under it.
func (s *shrinks) along() {
	share, e := tables.ShrinkageForce, s.metal.Modulus
	v, err := formula.ShrinkageForce(s.net.Value, e.V, s.metal.Expansion.V, s.member.Metal.HeatCapacity.V, share.V)
	if err != nil {
		return
	}
	s.pull = s.put("shrinkage_force", "kN", "{k}·{E}·{a}·{q}/{c}/1000000", v/1000, share,
		[]calc.Input{calc.In("E", "modulus", e.V, "GPa")}, e)
	s.flat("flat_width_held", "with its outer edge held straight", tables.PlateHeld)
	s.flat("flat_width_free", "with a free edge", tables.PlateFree)
	s.given()
}

// wideSheet is wider than any that a shop brazes on one side of a seam, mm.
const wideSheet = 3000

// yields is how wide the zone is, at least, that yields on each side of the seam, mm: the pull over what the sheet
// carries.
func (s *shrinks) yields() float64 {
	return 1000 * s.pull.Value / (2 * s.member.Metal.Tensile.V * s.member.Core)
}

// flat adds how wide the sheet on each side of the seam may be before it waves, or says why no width is named.
func (s *shrinks) flat(name, edge string, k tables.Datum) {
	p, t, e, source := s.p, s.member.Core, s.metal.Modulus, Own(k.Source)
	at := func(pull float64) float64 {
		b, err := formula.FlatWidth(1000*pull, t, e.V, tables.Poisson.V, k.V)
		if err != nil {
			return math.NaN()
		}
		return b
	}
	v, yields := at(s.pull.Value), s.yields()
	switch {
	case v < yields:
		p.Because(source, "sheet %s: no width is named, because the zone that yields, at least %.0f mm on each "+
			"side, is "+
			"itself wider than what would stay flat: it waves unless it is clamped or folded", edge, yields)
		return
	case v > wideSheet:
		p.Because(source, "sheet %s stays flat in any width that a shop has", edge)
		return
	}
	p.add(name, "mm", v, at(s.pull.High), at(s.pull.Low), calc.OwnBasis(
		"2·{k}·pi²·{E}·{t}³/(12·(1 − {nu}²)·{F})",
		k.Source+"; flat, evenly compressed sheet on each side of the seam, "+edge,
		calc.In("k", "buckling coefficient", k.V, ""), calc.In("E", "modulus", e.V, "GPa"),
		calc.In("t", "thickness of the thinner sheet", t, "mm"), calc.In("nu", "Poisson's ratio", tables.Poisson.V, ""),
		s.pull.As("F")))
}

// across adds how far a butt closes.
func (s *shrinks) across(card *calc.Card) {
	share := tables.ShrinkageAcross
	v, err := formula.ShrinkageAcross(s.net.Value, s.member.Core, s.metal.Expansion.V, s.member.Metal.HeatCapacity.V,
		share.V)
	if card.Used.Joint == "butt" && err == nil {
		s.put("shrinkage_across", "mm", "{k}·{a}/1000000/{c}·{q}/{t}", v, share, nil)
	}
}

// angle adds how far a plate bends, or says why nothing is said.
func (s *shrinks) angle() {
	if s.p.Card.Used.Joint == "edge" {
		s.p.Because(Own(tables.AngularLimit.Source), "bend along the seam: not judged, because the formulas are of "+
			"a face that is "+
			"heated, not of an edge, which shortens and bows both sheets alike. Try a test piece, tacks and clamps")
		return
	}
	form, limit := tables.AngularChange, tables.AngularLimit
	v, err := formula.AngularChange(s.net.Value, s.member.Core, s.metal.Expansion.V, s.member.Metal.HeatCapacity.V,
		form.V, limit.V)
	if err != nil {
		perSquare := s.net.Value / (s.member.Core * s.member.Core)
		s.p.Because(Own(limit.Source), "bend along the seam: not judged, because %s J/mm³ of heat over thickness "+
			"squared heats this sheet through (formulas hold to %.0f): it waves more than it bends. Try a test piece, "+
			"tacks and clamps", calc.Number(round2(perSquare)), limit.V)
		return
	}
	s.put("angular_change", "deg", "180/pi·{k}·{a}/1000000/{c}·{q}/{t}²", v*180/math.Pi, form, nil)
}

// remedies says what lessens it and by how much, as far as that is computed.
func (s *shrinks) remedies(card *calc.Card) {
	p, force := s.p, Own(tables.ShrinkageForce.Source)
	if pull := s.pull.Value; pull > 0 {
		p.Because(force, "the pull is proportional to the heat per length: a tenth less heat, a tenth less pull, a "+
			"tenth "+
			"more width that stays flat; stitched over half its length the seam pulls about half (%.1f kN)", pull/2)
	}
	p.Because(Own(tables.PlateHeld.Source), "a fold, bead or flange beside the seam makes a free edge a held one: "+
		"more "+
		"than nine times the width stays flat")
	p.Because(practice, "clamp on a copper bar until the seam is cold, tack close, lay short pieces from the middle "+
		"outward or back-stepped, both sides in turn")
	if card.Used.Joint == "tee" || card.Used.Joint == "corner" {
		p.Because(practice, "set the standing sheet a little away from where it is to end: the side with the bead "+
			"pulls "+
			"it over")
	}
	p.Because(force, "narrow strips shrink instead of waving and keep less pull than this; flat sheet is assumed, and "+
		"rolling stresses may wave it sooner")
}
