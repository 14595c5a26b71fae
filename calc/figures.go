package calc

import (
	"math"
	"slices"
)

// term is one symbol of a figure's formula: a knob, or another output where knob is noKnob.
type term struct {
	symbol, name, unit string
	knob               knob
	out                out
}

const (
	noKnob knob = -1
	noOut  out  = -1
)

// figureSpec says how an output is shown and why it is what it is.
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
	tWire   = term{"d", "wire diameter", "mm", kWire, noOut}
	tFeed   = term{"v_w", "wire feed", "mm/s", noKnob, oFeed}
	tRho    = term{"rho", "filler density", "g/cm3", kDensity, noOut}
	tHLiq   = term{"H_liq", "heat to melt the filler", "J/g", kHLiq, noOut}
	tRhoE   = term{"rho_e", "resistivity over the extension", "ohm mm", kRhoE, noOut}
	tPhi    = term{"phi", "calibration voltage", "V", kPhi, noOut}
	tStick  = term{"L", "stick-out, tip to arc", "mm", kStick, noOut}
	tDep    = term{"eta_d", "deposition efficiency", "", kDeposit, noOut}
	tAmps   = term{"I", "current", "A", noKnob, oAmps}
	tVolts  = term{"U", "arc voltage", "V", noKnob, oVolts}
	tTravel = term{"v", "travel", "mm/s", noKnob, oTravel}
	tNet    = term{"H", "net heat", "J/mm", noKnob, oNet}
	tRoom   = term{"T0", "temperature of the parts before the arc", "C", kRoom, noOut}
	tThick1 = term{"t", "first member, metal alone", "mm", kThick1, noOut}
	tThick2 = term{"t", "second member, metal alone", "mm", kThick2, noOut}
	tK1     = term{"k", "conductivity of the first member", "W/mmK", kConduct1, noOut}
	tK2     = term{"k", "conductivity of the second member", "W/mmK", kConduct2, noOut}
	tC1     = term{"rhoc", "heat capacity of the first member", "J/mm3K", kHeatCap1, noOut}
	tC2     = term{"rhoc", "heat capacity of the second member", "J/mm3K", kHeatCap2, noOut}
	tLoss   = term{"h", "loss from each face", "W/m2K", kLoss, noOut}
	tOn     = term{"t_on", "arc on", "s", noKnob, oOn}
	tOff    = term{"t_off", "arc off", "s", noKnob, oOff}
	tStep   = term{"step", "spot step", "mm", noKnob, oStep}
	tShare  = term{"s", ArcShare, "", noKnob, oDuty}
	tEta    = term{"eta", "arc efficiency", "", kEta, noOut}
	tSpread = term{"sigma", "arc's half-width (sigma)", "mm", kSpread, noOut}
	tToe    = term{"T_toe", "temperature at which the bead's edge freezes", "C", kToe, noOut}
)

// build makes the figure of one spec from the propagation, or reports that it does not apply.
func (spec *figureSpec) build(s *spread, k *[knobs]float64, doubts *[knobs]doubt) (Figure, bool) {
	v := s.value[spec.out]
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return Figure{}, false
	}
	f := Figure{Name: spec.name, Value: v, Low: s.low[spec.out], High: s.high[spec.out], Unit: spec.unit}
	f.Basis = Basis{Formula: spec.formula, Source: spec.source, Known: spec.known,
		Inputs: spec.inputs(s, k, doubts)}
	return f, true
}

// inputs lists the formula's symbols and then every other knob that moves the figure by 0.5 % or more.
func (spec *figureSpec) inputs(s *spread, k *[knobs]float64, doubts *[knobs]doubt) []Input {
	var rest [knobs]knob
	n := 0
	for i := range knobs {
		if math.Abs(s.byKnob[spec.out][i]) >= 0.5 && !spec.has(i) {
			rest[n] = i
			n++
		}
	}
	list := make([]Input, 0, len(spec.terms)+n)
	for _, t := range spec.terms {
		in := Input{Symbol: t.symbol, Name: t.name, Unit: t.unit}
		if t.knob != noKnob {
			in.Value, in.Assumed = k[t.knob], doubts[t.knob].assumed
			in.Sensitivity = s.byKnob[spec.out][t.knob]
		} else {
			in.Value, in.Derived = s.value[t.out], true
			in.Sensitivity = s.byOut[spec.out][t.out]
		}
		list = append(list, in)
	}
	others := rest[:n]
	slices.SortFunc(others, func(a, b knob) int {
		return cmpMagnitude(s.byKnob[spec.out][b], s.byKnob[spec.out][a])
	})
	for _, i := range others {
		list = append(list, Input{Name: knobNames[i].name, Unit: knobNames[i].unit, Value: k[i],
			Assumed: doubts[i].assumed, Sensitivity: s.byKnob[spec.out][i]})
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

func (spec *figureSpec) has(i knob) bool {
	for _, t := range spec.terms {
		if t.knob == i {
			return true
		}
	}
	return false
}

// knobNames names each knob for the list of what a figure rests on.
var knobNames = [knobs]struct{ name, unit string }{
	kWire: {"wire diameter", "mm"}, kFeed: {"wire feed", "mm/s"}, kAmps: {"current", "A"},
	kStick: {"stick-out, tip to arc", "mm"}, kDensity: {"filler density", "g/cm3"},
	kHLiq: {"heat to melt the filler", "J/g"}, kRhoE: {"resistivity over the extension", "ohm mm"},
	kPhi: {"calibration voltage", "V"}, kForm: {"what the energy balance leaves out", ""},
	kDeposit: {"deposition efficiency", ""}, kVolts: {"arc voltage", "V"},
	kVoltBias: {"how power sources differ in volts", "V"}, kVoltFactor: {"volts read over volts modelled", ""},
	kModeFactor: {"the mode's volts over the load line", ""},
	kEta:        {"arc efficiency", ""}, kTravel: {"travel", "mm/s"}, kRoom: {"temperature of the parts before the arc", "C"},
	kThick1: {"first member, metal alone", "mm"}, kThick2: {"second member, metal alone", "mm"},
	kConduct1: {"conductivity of the first member", "W/mmK"}, kConduct2: {"conductivity of the second member", "W/mmK"},
	kHeatCap1: {"heat capacity of the first member", "J/mm3K"}, kHeatCap2: {"heat capacity of the second member", "J/mm3K"},
	kLoss: {"loss from each face", "W/m2K"}, kGap: {"root opening", "mm"},
	kToe: {"temperature at which the bead's edge freezes", "C"}, kLiquidus: {"filler liquidus", "C"},
	kSpread: {"arc's half-width (sigma)", "mm"}, kOn: {"arc on", "s"}, kOff: {"arc off", "s"}, kStep: {"spot step", "mm"},
	kReinforce: {"metal above the gap over metal in it", ""}, kZoneForm: {"what the closed form leaves out", ""},
	kTimedForm: {"what the line source leaves out", ""},
}

// ArcShare is what the share of the time is called that a timed arc is on, of 1.
const ArcShare = "share of the time that the arc is on"
