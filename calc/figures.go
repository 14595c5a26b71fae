package calc

import (
	"math"
	"slices"
)

// term is one symbol of a figure's formula: an input, or another output where input is noInput.
type term struct {
	symbol, name, unit string
	input              input
	out                out
}

const (
	noInput input = -1
	noOut   out   = -1
)

// figureSpec says how an output is shown and what its basis is.
type figureSpec struct {
	name    string
	out     out
	unit    string
	formula string
	terms   []term
	source  string
	known   string
}

// Sources that several figures share.
const (
	OwnCalc    = "own computation"
	wireSource = "energy balance on the wire, after Lesnewich 1958 and Halmoy; the calibration voltage is fitted"
)

var (
	tWire   = term{"d", "wire diameter", "mm", inWire, noOut}
	tFeed   = term{"v_w", "wire feed", "mm/s", noInput, oFeed}
	tRho    = term{"rho", "filler density", "g/cm3", inDensity, noOut}
	tHLiq   = term{"H_liq", "heat to melt the filler", "J/g", inHLiq, noOut}
	tRhoE   = term{"rho_e", "resistivity over the extension", "ohm mm", inRhoE, noOut}
	tPhi    = term{"phi", "calibration voltage", "V", inPhi, noOut}
	tStick  = term{"L", "stick-out, tip to arc", "mm", inStick, noOut}
	tDep    = term{"eta_d", "deposition efficiency", "", inDeposit, noOut}
	tAmps   = term{"I", "current", "A", noInput, oAmps}
	tVolts  = term{"U", "arc voltage", "V", noInput, oVolts}
	tTravel = term{"v", "travel", "mm/s", noInput, oTravel}
	tNet    = term{"H", "net heat", "J/mm", noInput, oNet}
	tRoom   = term{"T0", "temperature of the parts before the arc", "C", inRoom, noOut}
	tThick1 = term{"t", "first member, metal alone", "mm", inThick1, noOut}
	tThick2 = term{"t", "second member, metal alone", "mm", inThick2, noOut}
	tK1     = term{"k", "conductivity of the first member", "W/mmK", inConduct1, noOut}
	tK2     = term{"k", "conductivity of the second member", "W/mmK", inConduct2, noOut}
	tC1     = term{"rhoc", "heat capacity of the first member", "J/mm3K", inHeatCap1, noOut}
	tC2     = term{"rhoc", "heat capacity of the second member", "J/mm3K", inHeatCap2, noOut}
	tLoss   = term{"h", "loss from each face", "W/m2K", inLoss, noOut}
	tOn     = term{"t_on", "arc on", "s", noInput, oOn}
	tOff    = term{"t_off", "arc off", "s", noInput, oOff}
	tStep   = term{"step", "spot step", "mm", noInput, oStep}
	tShare  = term{"s", ArcShare, "", noInput, oDuty}
	tEta    = term{"eta", "arc efficiency", "", inEta, noOut}
	tSpread = term{"sigma", "arc's half-width (sigma)", "mm", inSpread, noOut}
	tToe    = term{"T_toe", "temperature at which the bead's edge freezes", "C", inToe, noOut}
)

// build makes the figure of one spec from the propagation, or reports that it does not apply.
func (spec *figureSpec) build(s *spread, k *[inputCount]float64, intervals *[inputCount]interval) (Figure, bool) {
	v := s.value[spec.out]
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return Figure{}, false
	}
	f := Figure{Name: spec.name, Value: v, Low: s.low[spec.out], High: s.high[spec.out], Unit: spec.unit}
	f.Basis = Basis{Formula: spec.formula, Source: spec.source, Known: spec.known,
		Inputs: spec.inputs(s, k, intervals)}
	return f, true
}

// inputs lists the formula's symbols and then every other input that moves the figure by 0.5 % or more.
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
		list = append(list, Input{Name: inputNames[i].name, Unit: inputNames[i].unit, Value: k[i],
			Assumed: intervals[i].assumed, Sensitivity: s.byInput[spec.out][i]})
	}
	return list
}

func cmpMagnitude(a, b float64) int {
	switch a, b = math.Abs(a), math.Abs(b); {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

func (spec *figureSpec) has(i input) bool {
	for _, t := range spec.terms {
		if t.input == i {
			return true
		}
	}
	return false
}

// inputNames names each input for the list of what a figure rests on.
var inputNames = [inputCount]struct{ name, unit string }{
	inWire: {"wire diameter", "mm"}, inFeed: {"wire feed", "mm/s"}, inAmps: {"current", "A"},
	inStick: {"stick-out, tip to arc", "mm"}, inDensity: {"filler density", "g/cm3"},
	inHLiq: {"heat to melt the filler", "J/g"}, inRhoE: {"resistivity over the extension", "ohm mm"},
	inPhi: {"calibration voltage", "V"}, inForm: {"what the energy balance leaves out", ""},
	inDeposit: {"deposition efficiency", ""}, inVolts: {"arc voltage", "V"},
	inVoltBias: {"how power sources differ in volts", "V"}, inVoltFactor: {"volts read over volts modelled", ""},
	inModeFactor: {"the mode's volts over the load line", ""},
	inEta:        {"arc efficiency", ""}, inTravel: {"travel", "mm/s"}, inRoom: {"temperature of the parts before the arc", "C"},
	inThick1: {"first member, metal alone", "mm"}, inThick2: {"second member, metal alone", "mm"},
	inConduct1: {"conductivity of the first member", "W/mmK"}, inConduct2: {"conductivity of the second member", "W/mmK"},
	inHeatCap1: {"heat capacity of the first member", "J/mm3K"}, inHeatCap2: {"heat capacity of the second member", "J/mm3K"},
	inLoss: {"loss from each face", "W/m2K"}, inGap: {"root opening", "mm"},
	inToe: {"temperature at which the bead's edge freezes", "C"}, inLiquidus: {"filler liquidus", "C"},
	inSpread: {"arc's half-width (sigma)", "mm"}, inOn: {"arc on", "s"}, inOff: {"arc off", "s"}, inStep: {"spot step", "mm"},
	inReinforce: {"metal above the gap over metal in it", ""}, inZoneForm: {"what the closed form leaves out", ""},
	inTimedForm: {"what the line source leaves out", ""},
}

// ArcShare is the name of the share of the time, of 1, that a timed arc is on.
const ArcShare = "share of the time that the arc is on"
