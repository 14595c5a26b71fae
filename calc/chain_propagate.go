package calc

import "math"

// interval is the 95 % coverage interval of an input, and whether its value was assumed.
type interval struct {
	low, high float64
	assumed   bool // neither given by the user nor from a table
}

// spread is each output's value, interval, and sensitivity to each input and to each other output.
type spread struct {
	value, low, high [outs]float64
	byInput          [outs][inputCount]float64 // % of the value, signed for an increase of the input
	byOut            [outs][outs]float64       // % of the value, for the other output increased by half its interval
}

// propagate runs the chain at the inputs' values and once at each end of each input's interval. It adds the changes by
// root-sum-square, each side for itself and in logarithms, so that the interval of a quantity that cannot be negative
// is not negative either. Inputs are independent; each 95 % end moves the result to its own 95 % end.
func (c *chain) propagate(k *[inputCount]float64, intervals *[inputCount]interval, s *spread) error {
	if err := c.eval(k, &s.value); err != nil {
		return err
	}
	var up, down [outs]float64 // sums of squared logarithmic steps
	for i := range k {
		d := intervals[i]
		if d.low == d.high {
			continue
		}
		var at [2][outs]float64
		for side, v := range [2]float64{d.low, d.high} {
			keep := k[i]
			k[i] = v
			err := c.eval(k, &at[side])
			k[i] = keep
			if err != nil {
				return err
			}
		}
		for o := range s.value {
			v := s.value[o]
			lo, hi := math.Log(at[0][o]/v), math.Log(at[1][o]/v)
			if math.IsNaN(lo) || math.IsNaN(hi) || math.IsInf(lo, 0) || math.IsInf(hi, 0) {
				continue
			}
			most, least := max(lo, hi, 0), min(lo, hi, 0)
			up[o] += most * most
			down[o] += least * least
			s.byInput[o][i] = 100 * math.Expm1(hi)
			const even = 1 + 1e-9 // two sides as long as each other count as the upper one, whatever their last bits
			if math.Abs(lo) > math.Abs(hi)*even {
				s.byInput[o][i] = -100 * math.Expm1(lo)
			}
		}
	}
	for o, v := range s.value {
		s.low[o] = v * math.Exp(-math.Sqrt(down[o]))
		s.high[o] = v * math.Exp(math.Sqrt(up[o]))
	}
	return c.sensitivities(k, s)
}

// spread runs the board's chain over its inputs and their intervals.
func (b *board) spread() (*spread, error) {
	s := new(spread)
	return s, b.chain.propagate(&b.inputs, &b.intervals, s)
}

// Sides adds changes of a figure by root-sum-square, each side for itself.
type Sides struct{ Down, Up float64 }

// Add adds one change; a NaN makes the upper side NaN.
func (s *Sides) Add(d float64) {
	if d < 0 {
		s.Down = math.Hypot(s.Down, d)
	} else {
		s.Up = math.Hypot(s.Up, d)
	}
}

// nudge is the relative step of sensitivities: small beside every interval, large beside round-off.
const nudge = 1e-3

// sensitivities finds how each output depends on the outputs that other formulas take in.
func (c *chain) sensitivities(k *[inputCount]float64, s *spread) error {
	for _, from := range [...]out{oFeed, oAmps, oVolts, oTravel, oNet, oBead, oEffective, oPulsePower, oOn, oOff, oStep,
		oDuty} {
		half := 50 * (s.high[from] - s.low[from]) / s.value[from] // %
		if !(half > 0) {
			continue
		}
		var at [outs]float64
		c.scale[from] = 1 + nudge
		err := c.eval(k, &at)
		c.scale[from] = 1
		if err != nil {
			return err
		}
		for o, v := range s.value {
			if e := math.Log(at[o]/v) / nudge; !math.IsNaN(e) && !math.IsInf(e, 0) {
				s.byOut[o][from] = e * half
			}
		}
	}
	return nil
}
