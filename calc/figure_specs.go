package calc

import (
	"slices"
	"strings"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// The figures of a card, in the order in which a welder needs them. Figures whose output does not apply to the job are
// left out.

var settingSpecs = [...]figureSpec{
	{"wire_feed", oFeedMin, "m/min", "given", nil, "user"},
	{"volts", oVolts, "V", "{m}·{f}·(14 + 0.05·{I})", []term{
		of("m", inModeFactor),
		of("f", inVoltFactor), tAmps},
		"conventional load line IEC 60974-1 scaled to the mode"},
	{"travel", oTravel, "mm/s", "given", nil, "user"},
	{"arc_on", oOn, "s", "{sigma}²/(2·a)·(e^z − 1), a = {k}/{rhoc}, z = 4·pi·{k}·{t}·({T_liq} − {T0})/({eta}·{U}·{I})",
		[]term{
			tSpread, tK1, tC1, tThick1, of("T_liq", inLiquidus), tRoom, tEta, tVolts, tAmps},
		"standing Gaussian source on a sheet (Carslaw and Jaeger, memory high); a line-source estimate"},
	{"arc_off", oOff, "s", "{t_on}/(e^z − 1), z = 4·pi·{k}·{t}·({T_toe} − {T0})/({eta}·{U}·{I})", []term{
		tOn, tK1, tThick1, tToe, tRoom, tEta, tVolts, tAmps},
		"line source switched off (Carslaw and Jaeger, memory high); an estimate, neither floor nor ceiling"},
	{"spot_step", oStep, "mm", "√({sigma}² + 2·{k}/{rhoc}·{t_on})", []term{tSpread, tK1, tC1, tOn},
		"how far the spot's heat has spread: half of the puddle's length"},
}

var resultSpecs = [...]figureSpec{
	{"current", oAmps, "A",
		"2·P/({phi} + √({phi}² + 4·R·P)), P = pi/4·{d}²·{v_w}·{rho}·{H_liq}/1000, R = {rho_e}·{L}/(pi/4·{d}²)",
		[]term{tPhi, tWire, tFeed, tRho, tHLiq, tRhoE, tStick}, wireSource},
	{"deposition_rate", oDeposition, "g/min", "0.06·pi/4·{d}²·{v_w}·{rho}·{eta_d}", []term{tWire, tFeed, tRho, tDep},
		"definition; deposition efficiency as in its row"},
	{"wire_mass_per_length", oMassPerLength, "g/m", "pi/4·{d}²·{rho}", []term{tWire, tRho},
		"definition: of the wire itself"},
	{"wire_mass_per_seam", oMassPerSeam, "g/m", "pi/4·{d}²·{rho}·{v_w}/{v}", []term{tWire, tRho, tFeed, tTravel},
		"mass balance: what a metre of seam melts, spatter included"},
	{"arc_energy", oArcEnergy, "J/mm", "{U}·{I}/{v}", []term{tVolts, tAmps, tTravel},
		"AWS/ASME arc energy, no efficiency factor (memory high)"},
	{"heat_input", oHeatInput, "J/mm", "0.8·{U}·{I}/{v}", []term{tVolts, tAmps, tTravel},
		"ISO/TR 17671-1, EN 1011-1, k = 0.8 (memory high); for reports"},
	{"net_heat", oNet, "J/mm", "{eta}·{U}·{I}/{v}", []term{tEta, tVolts, tAmps, tTravel},
		"measured efficiency of gas metal arc, DuPont and Marder 1995 (abstract read)"},
	{"bead_area", oBead, "mm2", "pi/4·{d}²·{v_w}·{eta_d}/{v}", []term{tWire, tFeed, tDep, tTravel},
		"mass balance"},
	{"bead_width", oWidth, "mm", "chord from toe to toe, each toe where the sheet's peak falls to {T_toe}", []term{
		tNet, tToe, tThick1, tC1, tK1},
		bandSource},
	{"zinc_boiled_halfwidth", oBoiled1, "mm", boiledFormula, bandTerms1, bandSource},
	{"zinc_boiled_halfwidth_2", oBoiled2, "mm", boiledFormula, bandTerms2, bandSource},
	{"zinc_melted_halfwidth", oMelted1, "mm", meltedFormula, bandTerms1, bandSource},
	{"zinc_melted_halfwidth_2", oMelted2, "mm", meltedFormula, bandTerms2, bandSource},
	{"cooling_time", oCooling, "s", "", []term{tRoom, tNet}, ""},
	// coolingBasis shows which of its two forms holds
	{"pulse_frequency", oPulse, "Hz", "pi/4·{d}²·{v_w}/(pi·{d}³/6)", []term{tWire, tFeed},
		"mass balance at one drop of the wire's diameter a pulse"},
	{"effective_current", oEffective, "A", "√({Ip}²·{s} + {Ib}²·(1 − {s}))", []term{from("Ip", "peak", "A", oPeak),
		from("Ib", "base", "A", oBase), from("s", "share of the time at the peak", "", oAtPeak)},
		"definition, of a square pulse that throws one drop; it loads cable, tip and power source"},
	{"pulse_power", oPulsePower, "%", "100·(1 + {r}·({Ie}² − {I}²)/({U}·{I}))", []term{of("r", inArcSlope),
		from("Ie", "effective current", "A", oEffective), tAmps, tVolts}, pulsePowerSource},
}

const (
	pulsePowerSource = "mean of the product of volts and amps, ISO/TR 18491 (memory high), over the product of " +
		"their means"
	bandSource = "Rosenthal's moving source in thin sheet with loss from both faces (1941, memory high); not " +
		"validated on zinc"
	boiledFormula = "half-width where the peak of the sheet reaches 907 °C: {H} shared by thickness {t} and " +
		"effusivity, of conductivity {k} and heat capacity {rhoc}; travel {v}, loss {h}, from {T0}"
	meltedFormula = "half-width where the peak of the sheet reaches 419.5 °C: {H} shared by thickness {t} and " +
		"effusivity, of conductivity {k} and heat capacity {rhoc}; travel {v}, loss {h}, from {T0}"
)

var (
	bandTerms1 = []term{tNet, tTravel, tThick1, tK1, tC1, tLoss, tRoom}
	bandTerms2 = []term{tNet, tTravel, tThick2, tK2, tC2, tLoss, tRoom}
)

// Formulas that replace a spec's own where the user gave the number or the program chose it.
const (
	GivenFormula   = "given"
	suggestFormula = "weighted mean of feed and travel: chance to meet every edge, less heat and a hand's effort"
	missFormula    = "likely and easy on the hand, no suggestion: nothing that is open meets every edge by what a " +
		"hand repeats"
	usualFormula = "a setting to begin with: no verdict on wetting and melting is computed here"
)

// The formulas of the same figure differ between jobs: a figure's basis shows the one that computed it.

// travelByStep is the travel of a timed arc.
var travelByStep = figureSpec{"travel", oTravel, "mm/s", "{step}/({t_on} + {t_off})", []term{tStep, tOn, tOff},
	"definition: the mean speed along the seam"}

// byLength are the outputs per length of seam: for a timed arc they count the share of the time with the arc on.
var byLength = []out{oArcEnergy, oHeatInput, oNet, oMassPerSeam, oBead}

// pulsedSources replace the sources of a steady arc's energies: a pulsed arc's power is the mean of volts times amps
// over a pulse.
var pulsedSources = map[out]string{
	oArcEnergy: "AWS/ASME arc energy, no efficiency factor; pulses by ISO/TR 18491 (memory high)",
	oHeatInput: "ISO/TR 17671-1, EN 1011-1, k = 0.8; pulses by ISO/TR 18491 (memory high); for reports",
	oNet: "measured efficiency of gas metal arc, DuPont and Marder 1995 (abstract read); its source names no pulsed " +
		"arc, so that it is taken of the true power, which pulses raise",
}

// times is a spec whose formula has one more factor before the division by travel.
func (spec figureSpec) times(factor string, t term) *figureSpec {
	spec.formula = strings.Replace(spec.formula, "/{v}", factor+"/{v}", 1)
	spec.terms = slices.Insert(slices.Clone(spec.terms), len(spec.terms)-1, t)
	return &spec
}

// readingSpec is for the feed of a job that gives a current.
var readingSpec = figureSpec{"wire_feed", oFeedMin, "m/min",
	"60·({I}·{phi} + {I}²·R)/(pi/4·{d}²·{rho}·{H_liq}), R = {rho_e}·{L}/(pi/4·{d}²)",
	[]term{of("I", inAmps), tPhi, tWire, tRho, tHLiq, tRhoE, tStick},
	wireSource + "; the feed that the given current melts"}

// The step of a timed arc: where travel is given, and where a spot must fill an open root.
var (
	stepByTravel = figureSpec{"spot_step", oStep, "mm", "{v}·({t_on} + {t_off})", []term{of("v", inTravel), tOn, tOff},
		"definition"}
	stepInGap = figureSpec{"spot_step", oStep, "mm",
		"min(√({sigma}² + 2·{k}/{rhoc}·{t_on}), pi/4·{d}²·{v_w}·{eta_d}·{t_on}/({g}·{t}·(1 + {r})))", []term{
			tSpread, tK1, tC1, tOn, tWire, tFeed, tDep, of("g", inGap), tThick1,
			of("r", inReinforce)},
		"half of the puddle's length, or what one spot fills by mass balance"}
)

// cappedVolts is the load line beyond the current from which it is flat.
const cappedVolts = "{m}·{f}·min(44, 14 + 0.05·{I})"

// figure builds the figure of a spec with the formula that this job's chain used.
func (b *board) figure(spec *figureSpec, s *spread) (Figure, bool) {
	spec = b.specOf(spec)
	f, ok := spec.build(s, &b.inputs, &b.intervals)
	switch {
	case !ok:
	case spec.out == oAmps && b.chain.ampsGiven:
		f.Basis = givenBasis
	case spec.out == oCooling:
		b.coolingBasis(&f.Basis, s)
	case spec.out == oVolts && formula.LoadLine(s.value[oAmps]) >= tables.LoadLineCap.V:
		f.Basis.Formula = cappedVolts
	}
	return f, ok
}

// specOf is the spec that this job uses instead of the general one.
func (b *board) specOf(spec *figureSpec) *figureSpec {
	c := &b.chain
	switch {
	case spec.out == oFeedMin && c.ampsGiven:
		return &readingSpec
	case spec.out == oStep && c.travelGiven:
		return &stepByTravel
	case spec.out == oStep && b.inputs[inGap] > 0:
		return &stepInGap
	case spec.out == oTravel && c.timed:
		return &travelByStep
	case c.timed && slices.Contains(byLength, spec.out):
		return spec.times("·{s}", tShare)
	}
	if source, ok := pulsedSources[spec.out]; ok && c.pulsed {
		spec = spec.times("·{p}/100", tGain)
		spec.source = source
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
	extra := []Input{Derived("t", "thickness, the mean of the joint's heat paths", t, "mm"),
		In("F", "the joint's factor", f2, "")}
	if space*f3 > plane*f2 {
		basis.Formula, extra = coolingSpace, []Input{In("F", "the joint's factor", f3, "")}
	}
	basis.Inputs = append(extra, basis.Inputs...)
}
