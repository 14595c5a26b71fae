package calc

import (
	"math"
	"slices"
	"strings"
)

// inputs are what a figure depends on: the toe's temperature where its formula names it, the heat that the section
// got, and then whatever moves it by half a per cent or more, strongest first.
func (l *sectionList) inputs(effects []effect, r *reading, v float64, formula string) []Input {
	moves := func(step float64) float64 {
		switch {
		case r.difference && v == 0:
			return 0 // there is no per cent of nothing
		case r.difference:
			return 100 * step / v
		}
		return 100 * math.Expm1(step)
	}
	var list, rest []Input
	if strings.Contains(formula, "{T_toe}") {
		list = append(list, l.input(inToe, 0))
		list[0].Symbol = "T_toe"
	}
	for _, x := range effects {
		moved := telling(x.low, x.high, moves)
		switch {
		case x.input == byHeat:
			list = append(list, Input{Name: "net heat", Unit: "J/mm", Value: l.s.value[oNet], Derived: true, Sensitivity: moved})
			rest = append(rest, l.throughHeat(x.high/math.Log(l.s.high[oNet]/l.s.value[oNet]), moves)...)
		case x.input == byBead:
			rest = append(rest, Input{Name: "bead area", Unit: "mm2", Value: l.s.value[oBead], Derived: true, Sensitivity: moved})
		case x.input == byAim:
			rest = append(rest, Input{Name: "how the bead shares itself between the members", Value: 1, Sensitivity: moved})
		case x.input == byModel:
			rest = append(rest, Input{Name: "what the cross-section leaves out", Value: 1, Sensitivity: moved})
		case x.input == inToe && len(list) > 0 && list[0].Symbol != "":
			list[0].Sensitivity = moved
		default:
			rest = append(rest, l.input(x.input, moved))
		}
	}
	rest = slices.DeleteFunc(rest, func(in Input) bool { return !(math.Abs(in.Sensitivity) >= 0.5) || math.IsInf(in.Sensitivity, 0) })
	slices.SortStableFunc(rest, func(a, b Input) int { return cmpMagnitude(b.Sensitivity, a.Sensitivity) })
	return append(list, rest...)
}

func (l *sectionList) input(k input, moved float64) Input {
	return Input{Name: inputNames[k].name, Unit: inputNames[k].unit, Value: l.b.inputs[k], Assumed: l.b.intervals[k].assumed, Sensitivity: moved}
}

// throughHeat is what moves a figure by way of the heat; slope is the reading's step by the heat's logarithmic step.
func (l *sectionList) throughHeat(slope float64, moves func(step float64) float64) []Input {
	if math.IsInf(slope, 0) || math.IsNaN(slope) {
		return nil
	}
	var list []Input
	for k := range inputCount {
		if by := l.s.byInput[oNet][k]; by != 0 {
			list = append(list, l.input(k, moves(slope*math.Log1p(by/100))))
		}
	}
	return list
}

// telling is the larger side of an effect in per cent of the figure, signed for an increase of the input.
func telling(low, high float64, moves func(step float64) float64) float64 {
	if math.Abs(low) > math.Abs(high) {
		return -moves(low)
	}
	return moves(high)
}
