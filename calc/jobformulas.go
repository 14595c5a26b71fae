package calc

import (
	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// The formulas of the same figure differ between jobs: a figure's basis shows the one that computed it.

// timedSpecs replace the specs of a steady arc: heat and metal by length count the share of the time with the arc on.
var timedSpecs = map[out]*figureSpec{
	oTravel: {"travel", oTravel, "mm/s", "{step}/({t_on} + {t_off})", []term{tStep, tOn, tOff}, "mean forward speed of the beat", OwnCalc},
	oArcEnergy: {"arc_energy", oArcEnergy, "J/mm", "{U}·{I}·{s}/{v}", []term{tVolts, tAmps, tShare, tTravel},
		"AWS/ASME arc energy, no efficiency factor (memory high)", OwnCalc},
	oHeatInput: {"heat_input", oHeatInput, "J/mm", "0.8·{U}·{I}·{s}/{v}", []term{tVolts, tAmps, tShare, tTravel},
		"ISO/TR 17671-1, EN 1011-1, k = 0.8 (memory high); for reports", OwnCalc},
	oNet: {"net_heat", oNet, "J/mm", "{eta}·{U}·{I}·{s}/{v}", []term{tEta, tVolts, tAmps, tShare, tTravel},
		"measured efficiency of gas metal arc, DuPont and Marder 1995 (abstract read)", OwnCalc},
	oBead: {"bead_area", oBead, "mm2", "pi/4·{d}²·{v_w}·{eta_d}·{s}/{v}", []term{tWire, tFeed, tDep, tShare, tTravel}, "mass balance", OwnCalc},
}

// readingSpec is the feed of a job that gives a current.
var readingSpec = figureSpec{"wire_feed", oFeedMin, "m/min", "60·({I}·{phi} + {I}²·R)/(pi/4·{d}²·{rho}·{H_liq}), R = {rho_e}·{L}/(pi/4·{d}²)",
	[]term{{"I", "current", "A", inAmps, noOut}, tPhi, tWire, tRho, tHLiq, tRhoE, tStick}, wireSource + "; the feed that the given current melts", OwnCalc}

// The step of a timed arc: where travel is given, and where a spot must fill an open root.
var (
	stepByTravel = figureSpec{"spot_step", oStep, "mm", "{v}·({t_on} + {t_off})", []term{{"v", "travel", "mm/s", inTravel, noOut}, tOn, tOff}, "definition", OwnCalc}
	stepInGap    = figureSpec{"spot_step", oStep, "mm", "min(√({sigma}² + 2·{k}/{rhoc}·{t_on}), pi/4·{d}²·{v_w}·{eta_d}·{t_on}/({g}·{t}·(1 + {r})))", []term{
		tSpread, tK1, tC1, tOn, tWire, tFeed, tDep, {"g", "root opening", "mm", inGap, noOut}, tThick1,
		{"r", "metal above the gap over metal in it", "", inReinforce, noOut}},
		"half of the puddle's length, or what one spot fills by mass balance", OwnCalc}
)

// cappedVolts is the load line beyond the current from which it is flat.
const cappedVolts = "{m}·{f}·min(44, 14 + 0.05·{I})"

// figure builds a spec's figure with the formula that this job's chain used.
func (b *board) figure(spec *figureSpec, s *spread) (Figure, bool) {
	spec = b.specOf(spec)
	f, ok := spec.build(s, &b.inputs, &b.intervals)
	switch {
	case !ok:
	case spec.out == oAmps && b.chain.ampsGiven:
		f.Basis = Basis{Formula: GivenFormula, Source: "user", Known: "given"}
	case spec.out == oCooling:
		b.coolingBasis(&f.Basis, s)
	case spec.out == oVolts && formula.LoadLine(s.value[oAmps]) >= tables.LoadLineCap.V:
		f.Basis.Formula = cappedVolts
	}
	return f, ok
}

// specOf is the spec that this job uses in place of the general one.
func (b *board) specOf(spec *figureSpec) *figureSpec {
	c := &b.chain
	switch {
	case spec.out == oFeedMin && c.ampsGiven:
		return &readingSpec
	case spec.out == oStep && c.travelGiven:
		return &stepByTravel
	case spec.out == oStep && b.inputs[inGap] > 0:
		return &stepInGap
	}
	if other, ok := timedSpecs[spec.out]; ok && c.timed {
		return other
	}
	return spec
}

// The two forms of t8/5 by EN 1011-2 Annex D.
const (
	coolingPlane  = "(4300 − 4.3·{T0})·10⁵·({H}/1000)²/{t}²·(1/(500 − {T0})² − 1/(800 − {T0})²)·{F}"
	coolingSpace  = "(6700 − 5·{T0})·{H}/1000·(1/(500 − {T0}) − 1/(800 − {T0}))·{F}"
	coolingSource = "t8/5 by EN 1011-2 Annex D (memory high), the larger of its two forms; ferritic steels only"
)

// coolingBasis shows the form that gave the time, with the joint's factor in it.
func (b *board) coolingBasis(basis *Basis, s *spread) {
	t, t0 := b.chain.meanPath(&b.inputs), b.inputs[inRoom]
	plane, space := formula.CoolingForms(s.value[oNet], t, t0)
	f2, f3 := formula.JointFactors(b.chain.joint)
	basis.Formula, basis.Source = coolingPlane, coolingSource
	extra := []Input{{Symbol: "t", Name: "thickness, the mean of the joint's heat paths", Unit: "mm", Value: t, Derived: true}, {Symbol: "F", Name: "the joint's factor", Value: f2}}
	if space*f3 > plane*f2 {
		basis.Formula, extra = coolingSpace, []Input{{Symbol: "F", Name: "the joint's factor", Value: f3}}
	}
	basis.Inputs = append(extra, basis.Inputs...)
}
