package advice

import (
	"math"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// ironWelds is the source of the statements about cast iron beside a seam.
var ironWelds = tables.Origin{Source: "ASM Handbook vol. 6, welding of cast irons", Known: tables.MemoryHigh}

// Distortion is the page about shrinkage: the pull along the seam, how wide the sheet beside it may be before
// it waves, how far a butt closes and a plate bends.
func Distortion(card *calc.Card) (Page, error) {
	p := Page{Name: "distortion", Card: *card}
	net, ok := card.Figure("net_heat")
	if p.has(tables.CastIron) {
		p.Because(ironWelds, "not judged, because cast iron cracks where sheet would bend: short pieces, peening, "+
			"slow cooling, see the page prepare")
		return p, nil
	}
	if !ok {
		p.Because(ownJob, "not judged, because no heat per length is computed for this joint; try a seam: lap, tee, "+
			"butt or corner")
		return p, nil
	}
	s := shrinkage{p: &p, metals: shrinking(card), thin: calc.MinCore(card.Setup.Joined()), net: net}
	p.asIfSound(card)
	s.along()
	s.across(card)
	s.angle()
	s.remedies(card)
	return p, nil
}

// shrinkage holds what the page's figures are computed from.
type shrinkage struct {
	p      *Page
	metals []shrinker
	thin   float64 // thickness of the thinner sheet, which waves first, mm
	net    calc.Figure
	pull   calc.Figure // kN
}

// put adds a figure that is proportional to the net heat, to the metals' shrinkage and to a factor. Its
// interval combines theirs by root-sum-square of the logarithms. of returns the part of one metal for its share
// of the heat.
func (s *shrinkage) put(name, unit, form string, stiff bool, factor tables.Datum, per float64,
	of func(m *shrinker) (float64, error)) (calc.Figure, error) {
	down, up := math.Log(s.net.Value/s.net.Low), math.Log(s.net.High/s.net.Value)
	down, up = math.Hypot(down, math.Log(factor.V/factor.Low)), math.Hypot(up, math.Log(factor.High/factor.V))
	parts, sum := make([]float64, len(s.metals)), 0.0
	for i := range s.metals {
		v, err := of(&s.metals[i])
		if err != nil {
			return calc.Figure{}, err
		}
		parts[i], sum = v*per, sum+v*per
	}
	inputs := []calc.Input{s.net.As("q"), calc.In("t", "thickness of the thinner sheet", s.thin, "mm"),
		calc.In("k", "share of the free shrinkage", factor.V, "")}
	var less, more float64 // of the metals, weighted by their parts
	for i := range s.metals {
		m := &s.metals[i]
		lower, higher := m.band(stiff)
		less, more = less+parts[i]/sum*lower, more+parts[i]/sum*higher
		inputs = append(inputs, m.inputs(stiff)...)
	}
	form = strings.ReplaceAll(form, "{b}", shrinkForm(s.metals, stiff))
	return s.p.add(name, unit, sum, sum*math.Exp(-math.Hypot(down, less)), sum*math.Exp(math.Hypot(up, more)),
		calc.OwnBasis(form, factor.Source, inputs...)), nil
}

// along adds the pull and the widths that stay flat under it.
func (s *shrinkage) along() {
	share := tables.ShrinkageForce
	pull, err := s.put("shrinkage_force", "kN", "{k}·{b}·{q}/1000000", true, share, 1e-3,
		func(m *shrinker) (float64, error) {
			return formula.ShrinkageForce(m.share*s.net.Value, m.row.Modulus.V, m.row.Expansion.V, m.capacity.V,
				share.V)
		})
	if err != nil {
		return
	}
	s.pull = pull
	s.flat("flat_width_held", "with its outer edge held straight", tables.PlateHeld)
	s.flat("flat_width_free", "with a free edge", tables.PlateFree)
	s.judgeWidth()
}

// wideSheet is wider than any sheet that a shop brazes on one side of a seam, mm.
const wideSheet = 3000

// yields is the least width of the zone that yields on each side of the seam, mm: the pull over the force that
// a millimetre of sheet carries.
func (s *shrinkage) yields() float64 {
	return 1000 * s.pull.Value / (2 * s.mean(func(m *shrinker) float64 { return m.tensile }) * s.thin)
}

// flat adds how wide the sheet on each side of the seam may be before it waves, or says why it names no width.
func (s *shrinkage) flat(name, edge string, k tables.Datum) {
	p, t, source := s.p, s.thin, Own(k.Source)
	e := s.mean(func(m *shrinker) float64 { return m.row.Modulus.V })
	at := func(pull float64) float64 {
		b, err := formula.FlatWidth(1000*pull, t, e, tables.Poisson.V, k.V)
		if err != nil {
			return math.NaN()
		}
		return b
	}
	v, yields := at(s.pull.Value), s.yields()
	switch {
	case v < yields:
		p.Because(source, "sheet %s: no width is named, because the zone that yields, at least %.0f mm on each side, "+
			"is itself wider than what would stay flat: it waves unless it is clamped or folded", edge, yields)
		return
	case v > wideSheet:
		p.Because(source, "sheet %s stays flat in any width that a shop has", edge)
		return
	}
	p.add(name, "mm", v, at(s.pull.High), at(s.pull.Low), calc.OwnBasis(
		"2·{k}·pi²·{E}·{t}³/(12·(1 − {nu}²)·{F})",
		k.Source+"; flat, evenly compressed sheet on each side of the seam, "+edge,
		calc.In("k", "buckling coefficient", k.V, ""), calc.In("E", "modulus", e, "GPa"),
		calc.In("t", "thickness of the thinner sheet", t, "mm"), calc.In("nu", "Poisson's ratio", tables.Poisson.V, ""),
		s.pull.As("F")))
}

// across adds how far a butt closes.
func (s *shrinkage) across(card *calc.Card) {
	if share := tables.ShrinkageAcross; card.Used.Joint == "butt" {
		_, _ = s.put("shrinkage_across", "mm", "{k}·{b}/1000000·{q}/{t}", false, share, 1,
			func(m *shrinker) (float64, error) {
				return formula.ShrinkageAcross(m.share*s.net.Value, s.thin, m.row.Expansion.V, m.capacity.V, share.V)
			})
	}
}

// angle adds how far a plate bends, or says why this is not judged.
func (s *shrinkage) angle() {
	if s.p.Card.Used.Joint == "edge" {
		s.p.Because(Own(tables.AngularLimit.Source), "bend along the seam: not judged, because the formulas are of a "+
			"face that is heated, not of an edge, which shortens and bows both sheets alike. Try a test piece, tacks "+
			"and clamps")
		return
	}
	form, limit := tables.AngularChange, tables.AngularLimit
	perSquare := s.net.Value / (s.thin * s.thin)
	if perSquare > limit.V {
		s.p.Because(Own(limit.Source), "bend along the seam: not judged, because %s J/mm³ of heat over thickness "+
			"squared heats this sheet through (the formulas hold to %.0f J/mm³): it waves more than it bends. Try a "+
			"test piece, tacks and clamps", calc.Number(round2(perSquare)), limit.V)
		return
	}
	_, _ = s.put("angular_change", "deg", "180/pi·{k}·{b}/1000000·{q}/{t}²", false, form, 180/math.Pi,
		func(m *shrinker) (float64, error) {
			return formula.AngularChange(m.share*s.net.Value, s.thin, m.row.Expansion.V, m.capacity.V, form.V, limit.V)
		})
}

// remedies says what reduces distortion and, where that is computed, by how much.
func (s *shrinkage) remedies(card *calc.Card) {
	p, force := s.p, Own(tables.ShrinkageForce.Source)
	if pull := s.pull.Value; pull > 0 {
		p.Because(force, "the pull is proportional to the heat per length: a tenth less heat, a tenth less pull, a "+
			"tenth more width that stays flat; stitched over half its length the seam pulls about half (%.1f kN)",
			pull/2)
	}
	p.Because(Own(tables.PlateHeld.Source), "a fold, bead or flange beside the seam makes a free edge a held one: "+
		"more than nine times the width stays flat")
	p.Because(practice, "clamp on a copper bar until the seam is cold, tack close, lay short pieces from the middle "+
		"outward or back-stepped, both sides in turn")
	if card.Used.Joint == "tee" || card.Used.Joint == "corner" {
		p.Because(practice, "set the standing sheet a little away from where it is to end: the side with the bead "+
			"pulls it over")
	}
	p.Because(force, "narrow strips shrink instead of waving and keep less pull than this; flat sheet is assumed, and "+
		"rolling stresses may wave it sooner")
}
