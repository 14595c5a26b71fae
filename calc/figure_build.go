package calc

import (
	"cmp"
	"math"
	"slices"
)

// term is one symbol of a figure's formula: an input, or another output if input is noInput.
type term struct {
	symbol, name, unit string
	input              input
	out                out
}

const (
	noInput input = -1
	noOut   out   = -1
)

// of is an input by its symbol in a formula.
func of(symbol string, k input) term {
	return term{symbol, inputNames[k].name, inputNames[k].unit, k, noOut}
}

// from is another output by its symbol in a formula.
func from(symbol, name, unit string, o out) term { return term{symbol, name, unit, noInput, o} }

// figureSpec says how an output is shown and what its basis is.
type figureSpec struct {
	name    string
	out     out
	unit    string
	formula string
	terms   []term
	source  string
}

// Sources that several figures share.
const (
	OwnCalc    = "own computation"
	wireSource = "energy balance on the wire, after Lesnewich 1958 and Halmoy; the calibration voltage is fitted"
)

var (
	tWire   = of("d", inWire)
	tFeed   = from("v_w", "wire feed", "mm/s", oFeed)
	tRho    = of("rho", inDensity)
	tHLiq   = of("H_liq", inHLiq)
	tRhoE   = of("rho_e", inRhoE)
	tPhi    = of("phi", inPhi)
	tStick  = of("L", inStick)
	tDep    = of("eta_d", inDeposit)
	tAmps   = from("I", "current", "A", oAmps)
	tVolts  = from("U", "arc voltage", "V", oVolts)
	tTravel = from("v", "travel", "mm/s", oTravel)
	tNet    = from("H", "net heat", "J/mm", oNet)
	tRoom   = of("T0", inRoom)
	tThick1 = of("t", inThick1)
	tThick2 = of("t", inThick2)
	tK1     = of("k", inConduct1)
	tK2     = of("k", inConduct2)
	tC1     = of("rhoc", inHeatCap1)
	tC2     = of("rhoc", inHeatCap2)
	tLoss   = of("h", inLoss)
	tOn     = from("t_on", "arc on", "s", oOn)
	tOff    = from("t_off", "arc off", "s", oOff)
	tStep   = from("step", "spot step", "mm", oStep)
	tShare  = from("s", ArcShare, "", oDuty)
	tGain   = from("p", "true power of the pulses", "%", oPulsePower)
	tEta    = of("eta", inEta)
	tSpread = of("sigma", inSpread)
	tToe    = of("T_toe", inToe)
)

// build makes the figure of a spec from the propagation; false where it does not apply to the job.
func (spec *figureSpec) build(s *spread, k *[inputCount]float64, intervals *[inputCount]interval) (Figure, bool) {
	v := s.value[spec.out]
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return Figure{}, false
	}
	f := Figure{Name: spec.name, Value: v, Low: s.low[spec.out], High: s.high[spec.out], Unit: spec.unit}
	f.Basis = Basis{Formula: spec.formula, Source: spec.source, Known: OwnCalc,
		Inputs: spec.inputs(s, k, intervals)}
	return f, true
}

// inputs lists the formula's symbols, and then every other input that moves the figure by 0.5 % or more.
func (spec *figureSpec) inputs(s *spread, k *[inputCount]float64, intervals *[inputCount]interval) []Input {
	var rest [inputCount]input
	n := 0
	for i := range inputCount {
		if math.Abs(s.byInput[spec.out][i]) >= 0.5 && !spec.has(i) {
			rest[n] = i
			n++
		}
	}
	list := make([]Input, 0, len(spec.terms)+n)
	for _, t := range spec.terms {
		in := Input{Symbol: t.symbol, Name: t.name, Unit: t.unit}
		if t.input != noInput {
			in.Value, in.Assumed = k[t.input], intervals[t.input].assumed
			in.Sensitivity = s.byInput[spec.out][t.input]
		} else {
			in.Value, in.Derived = s.value[t.out], true
			in.Sensitivity = s.byOut[spec.out][t.out]
		}
		list = append(list, in)
	}
	others := rest[:n]
	slices.SortFunc(others, func(a, b input) int {
		return cmpMagnitude(s.byInput[spec.out][b], s.byInput[spec.out][a])
	})
	for _, i := range others {
		list = append(list, inputOf(i, k, intervals, s.byInput[spec.out][i]))
	}
	return list
}

// inputOf is an input with how far it moves a figure, %.
func inputOf(i input, k *[inputCount]float64, intervals *[inputCount]interval, moved float64) Input {
	return Input{Name: inputNames[i].name, Unit: inputNames[i].unit, Value: k[i], Assumed: intervals[i].assumed,
		Sensitivity: moved}
}

func cmpMagnitude(a, b float64) int { return cmp.Compare(math.Abs(a), math.Abs(b)) }

func (spec *figureSpec) has(i input) bool {
	return slices.ContainsFunc(spec.terms, func(t term) bool { return t.input == i })
}

// inputNames names each input in the list of what a figure rests on.
var inputNames = [inputCount]struct{ name, unit string }{
	inWire: {"wire diameter", "mm"}, inFeed: {"wire feed", "mm/s"}, inAmps: {"current", "A"},
	inStick: {"stick-out, tip to arc", "mm"}, inDensity: {"filler density", "g/cm3"},
	inHLiq: {"heat to melt the filler", "J/g"}, inRhoE: {"resistivity over the extension", "ohm mm"},
	inPhi: {"calibration voltage", "V"}, inForm: {"what the energy balance leaves out", ""},
	inDeposit: {"deposition efficiency", ""}, inVolts: {"arc voltage", "V"},
	inVoltBias: {"how power sources differ in volts", "V"}, inVoltFactor: {"volts read over volts modelled", ""},
	inModeFactor: {"the mode's volts over the load line", ""},
	inEta:        {"arc efficiency", ""}, inTravel: {"travel", "mm/s"},
	inRoom:   {"temperature of the parts before the arc", "C"},
	inThick1: {"first member, metal alone", "mm"}, inThick2: {"second member, metal alone", "mm"},
	inConduct1: {"conductivity of the first member", "W/mmK"},
	inConduct2: {"conductivity of the second member", "W/mmK"},
	inHeatCap1: {"heat capacity of the first member", "J/mm3K"},
	inHeatCap2: {"heat capacity of the second member", "J/mm3K"},
	inLoss:     {"loss from each face", "W/m2K"}, inGap: {"root opening", "mm"},
	inBarDry: {"heat transfer from the sheet into the bar", "W/m2K"},
	inBarWet: {"heat transfer from liquid filler into the bar", "W/m2K"},
	inToe:    {"temperature at which the bead's edge freezes", "C"}, inLiquidus: {"filler liquidus", "C"},
	inSpread: {"arc's half-width (sigma)", "mm"}, inOn: {"arc on", "s"}, inOff: {"arc off", "s"},
	inStep:      {"spot step", "mm"},
	inReinforce: {"metal above the gap over metal in it", ""}, inZoneForm: {"what the closed form leaves out", ""},
	inTimedForm: {"what the line source leaves out", ""},
	inDetach:    {"what throws one drop from this wire", "A2s"},
	inArcSlope:  {"rise of the arc's volts with current", "V/A"},
}

// ArcShare names the share of the time, 0 to 1, that a timed arc is on.
const ArcShare = "share of the time that the arc is on"
