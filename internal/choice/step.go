package choice

import (
	"math"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// Turned is the job with a setting moved by one step up (up > 0) or down from where it stands, in Unit: to the next
// full step, as a knob is turned.
func (c *Choice) Turned(j calc.Job, from float64, up int, sys quantity.System) calc.Job {
	size := c.step[0]
	if sys == quantity.Inch {
		size = c.step[1]
	}
	n := math.Floor(from/size+0.001) + 1
	if up <= 0 {
		n = math.Ceil(from/size-0.001) - 1
	}
	*c.At(&j) = calc.Some(n * size)
	return j
}
