package calc

import (
	"brazebooth/calc/formula"
	"math"
)

// beat estimates arc on, arc off and step of a timed arc from the line source, and with them the
// mean travel. An arc that never melts the filler leaves its outputs empty rather than failing: the
// card says why.
//
// Standing Gaussian source of standard deviation σ on a sheet: ΔT = q/(4πkd)·ln(1 + 2at/σ²) at its
// centre; switched off it cools as t_off = t_on/(e^z − 1), z = 4πkd·ΔT/q. Source: Carslaw and Jaeger,
// memory high. Valid for sheet up to about 3 mm; within a factor of two for a puddle.
func (c *chain) beat(k *[knobs]float64, o *[outs]float64) error {
	q := k[kEta] * o[oVolts] * o[oAmps] / k[kTimedForm]
	resist := 4 * math.Pi * k[kConduct1] * k[kThick1] / q // per K
	a := k[kConduct1] / k[kHeatCap1]
	variance := k[kSpread] * k[kSpread]
	on := k[kOn]
	if !c.timesGiven[0] {
		on = variance / (2 * a) * math.Expm1(resist*(k[kLiquidus]-k[kRoom]))
	}
	off := k[kOff]
	if !c.timesGiven[1] {
		off = on / math.Expm1(resist*(k[kToe]-k[kRoom]))
	}
	if on > LongestTime || off > LongestTime {
		return nil
	}
	c.set(o, oOn, on)
	c.set(o, oOff, off)
	step := k[kStep]
	switch {
	case c.timesGiven[2]:
	case c.travelGiven:
		step = k[kTravel] * (o[oOn] + o[oOff])
	default:
		step = math.Sqrt(variance + 2*a*o[oOn]) // half the puddle: how far the spot's heat has spread
		if k[kGap] > 0 {
			spot := formula.WireArea(k[kWire]) * o[oFeed] * k[kDeposit] * o[oOn]
			step = min(step, spot/(k[kGap]*k[kThick1]*(1+k[kReinforce])))
		}
	}
	c.set(o, oStep, step)
	c.set(o, oDuty, o[oOn]/(o[oOn]+o[oOff]))
	if !c.travelGiven {
		c.set(o, oTravel, o[oStep]/(o[oOn]+o[oOff]))
	}
	return nil
}

// LongestTime is the longest on or off time that is still a rhythm a hand can follow, s.
const LongestTime = 10
