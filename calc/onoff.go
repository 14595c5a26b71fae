package calc

import (
	"brazebooth/calc/formula"
	"math"
)

// onOff estimates arc on, arc off and step of a timed arc from the line source, and with them the mean travel. Where
// the arc never melts the filler the outputs stay empty and no error is returned: the card says why.
//
// Standing Gaussian source of standard deviation σ on a sheet: ΔT = q/(4πkd)·ln(1 + 2at/σ²) at its centre; switched
// off it cools as t_off = t_on/(e^z − 1), z = 4πkd·ΔT/q. Source: Carslaw and Jaeger, memory high. Valid for sheet up
// to about 3 mm; within a factor of two for a puddle.
func (c *chain) onOff(k *[inputCount]float64, o *[outs]float64) error {
	q := k[inEta] * o[oVolts] * o[oAmps] / k[inTimedForm]
	resist := 4 * math.Pi * k[inConduct1] * k[inThick1] / q // per K
	a := k[inConduct1] / k[inHeatCap1]
	variance := k[inSpread] * k[inSpread]
	on := k[inOn]
	if !c.timesGiven[0] {
		on = variance / (2 * a) * math.Expm1(resist*(k[inLiquidus]-k[inRoom]))
	}
	off := k[inOff]
	if !c.timesGiven[1] {
		off = on / math.Expm1(resist*(k[inToe]-k[inRoom]))
	}
	if on > LongestOnOff || off > LongestOnOff {
		return nil
	}
	c.set(o, oOn, on)
	c.set(o, oOff, off)
	step := k[inStep]
	switch {
	case c.timesGiven[2]:
	case c.travelGiven:
		step = k[inTravel] * (o[oOn] + o[oOff])
	default:
		step = math.Sqrt(variance + 2*a*o[oOn]) // half the puddle: how far the spot's heat has spread
		if k[inGap] > 0 {
			spot := formula.WireArea(k[inWire]) * o[oFeed] * k[inDeposit] * o[oOn]
			step = min(step, spot/(k[inGap]*k[inThick1]*(1+k[inReinforce])))
		}
	}
	c.set(o, oStep, step)
	c.set(o, oDuty, o[oOn]/(o[oOn]+o[oOff]))
	if !c.travelGiven {
		c.set(o, oTravel, o[oStep]/(o[oOn]+o[oOff]))
	}
	return nil
}

// LongestOnOff is the longest on or off time that a welder can still keep in rhythm, s.
const LongestOnOff = 10
