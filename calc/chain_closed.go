package calc

import (
	"math"

	"brazebooth/calc/formula"
	"brazebooth/calc/section"
	"brazebooth/tables"
)

// Paths returns how many heat paths each member of a joint offers the arc: the sheet that ends at the joint has one,
// the sheet that runs through has two.
func Paths(joint string) [2]float64 {
	switch joint {
	case "lap", "tee":
		return [2]float64{1, 2}
	case "overlay":
		return [2]float64{2, 0}
	}
	return [2]float64{1, 1} // butt, corner, edge
}

// Draws is how much heat a sheet leads away, for comparison with others: thickness, mm, times thermal effusivity.
func Draws(thick, conductivity, capacity float64) float64 {
	return thick * math.Sqrt(conductivity*capacity)
}

// pathHeat returns, for each member, the heat that a plate with two sides must get so that one side gets what one path
// of the member gets. Paths draw heat as b = t·√(k·ρc), the effusivity of a sheet.
func (c *chain) pathHeat(net float64, k *[inputCount]float64) (h1, h2 float64) {
	b1 := Draws(k[inThick1], k[inConduct1], k[inHeatCap1])
	b2 := Draws(k[inThick2], k[inConduct2], k[inHeatCap2])
	sum := c.arms[0] * b1
	if c.arms[1] > 0 {
		sum += c.arms[1] * b2
	}
	return 2 * net * b1 / sum, 2 * net * b2 / sum
}

// bands computes the half-widths within which the sheet was wetted, its zinc boiled or its zinc melted.
func (c *chain) bands(k *[inputCount]float64, o *[outs]float64) error {
	h1, h2 := c.pathHeat(o[oNet], k)
	isotherms := [...]struct {
		half [2]out
		at   float64
		zinc bool
	}{
		{[2]out{oWet1, oWet2}, k[inToe], false},
		{[2]out{oBoiled1, oBoiled2}, tables.ZincBoils.V, true},
		{[2]out{oMelted1, oMelted2}, tables.ZincMelts.V, true},
	}
	for _, iso := range isotherms {
		form := 1.0
		if iso.zinc {
			form = k[inZoneForm]
		}
		for i, heat := range [2]float64{h1, h2} {
			if c.arms[i] == 0 || iso.zinc && !c.zinc[i] {
				continue
			}
			own := ofMember[i]
			w, err := formula.MovingHalfWidth(heat, o[oTravel], k[own.thick], k[own.capacity], k[own.conduct],
				2*k[inLoss], iso.at-k[inRoom])
			if err != nil {
				return err
			}
			o[iso.half[i]] = w * form
		}
	}
	o[oWidth] = c.width(k, o[oWet1], o[oWet2])
	return nil
}

// width is the chord from toe to toe of the joint's section.
func (c *chain) width(k *[inputCount]float64, w1, w2 float64) float64 {
	switch c.joint {
	case "lap":
		return math.Hypot(w1+w2, k[inThick1])
	case "tee":
		return math.Hypot(w1, w2)
	case "corner":
		return math.Hypot(w1+k[inThick2], w2+k[inThick1])
	case "edge":
		return section.EdgeWidth(w1, k[inThick1]) + section.EdgeWidth(w2, k[inThick2]) + k[inGap]
	case "overlay":
		return 2 * w1
	}
	return w1 + w2 + k[inGap]
}

// meanPath is the mean thickness of the joint's heat paths, mm: the standard's factors are for equal sheets.
func (c *chain) meanPath(k *[inputCount]float64) float64 {
	return (c.arms[0]*k[inThick1] + c.arms[1]*k[inThick2]) / (c.arms[0] + c.arms[1])
}

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
