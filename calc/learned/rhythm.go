package learned

import (
	"math"
	"strconv"

	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// Rhythm is what was learned from trials of a timed arc at a booth with a filler and a wire: a normal distribution of
// the logarithms of stirring, spread and power. The three change the same ends of on and off, so trials narrow their
// combined effect, but hardly each one alone; this is in the covariances.
type Rhythm struct {
	Stir   float64    `json:"stir"`   // factor on the conductivity of liquid filler
	Spread float64    `json:"spread"` // of arc and filler, sigma, mm
	Power  float64    `json:"power"`  // into the work, relative to that by the job's current, volts and efficiency
	Cov    [6]float64 `json:"cov"`    // of the logarithms: lower triangle, row by row
	Trials int        `json:"trials"`
	For    string     `json:"for"` // filler and wire
}

// Set reports whether anything was learned.
func (r *Rhythm) Set() bool { return r.Trials > 0 }

// CovOf is the covariance of two of the three logarithms.
func (r *Rhythm) CovOf(i, k int) float64 {
	if i < k {
		i, k = k, i
	}
	return r.Cov[i*(i+1)/2+k]
}

// Ends95 are the 95 % intervals of stirring, spread (mm) and power, each alone.
func (r *Rhythm) Ends95() (low, high [3]float64) {
	for i, v := range [...]float64{r.Stir, r.Spread, r.Power} {
		two := 2 * math.Sqrt(r.CovOf(i, i))
		low[i], high[i] = v*math.Exp(-two), v*math.Exp(two)
	}
	return low, high
}

// slopes are the slopes of the logarithm of an end, numbered as in Ends, over those of stirring, spread and power.
func slopes(end int) [3]float64 {
	return [3]float64{tables.SlopesOfStirring[end].V, tables.SlopesOfSpread[end].V, tables.SlopesOfPower[end].V}
}

// Doubt is one standard deviation of the logarithm of an end, numbered as in Ends: the uncertainty that the trials
// left, and the part that stirring, spread and power do not explain.
func (r *Rhythm) Doubt(end int) float64 {
	s := slopes(end)
	sum := tables.RhythmDoubt.V * tables.RhythmDoubt.V
	for i := range s {
		for k := range s {
			sum += s[i] * s[k] * r.CovOf(i, k)
		}
	}
	return math.Sqrt(sum)
}

// Check returns an error for values that cannot be the result of trials.
func (r *Rhythm) Check() error {
	if *r == (Rhythm{}) {
		return nil
	}
	for _, c := range [...]struct {
		name         string
		v, low, high float64
	}{
		{"stir", r.Stir, 0.2, 20}, {"spread", r.Spread, 0.8, 4}, {"power", r.Power, 0.3, 3},
		{"trials", float64(r.Trials), 1, 1e6}, {"cov", r.Cov[0], 0, 1}, {"cov", r.Cov[2], 0, 1},
		{"cov", r.Cov[5], 0, 1},
		{"cov", r.Cov[1] * r.Cov[1], 0, r.Cov[0] * r.Cov[2] * more},
		{"cov", r.Cov[3] * r.Cov[3], 0, r.Cov[0] * r.Cov[5] * more},
		{"cov", r.Cov[4] * r.Cov[4], 0, r.Cov[2] * r.Cov[5] * more},
	} {
		if !(c.v >= c.low && c.v <= c.high) {
			return mistake.In("rhythm", "its "+c.name+" of "+strconv.FormatFloat(c.v, 'g', 4, 64)+" was taught by no "+
				"trial", "leave rhythm out; trials in the book teach it")
		}
	}
	for end := range 4 {
		if d := r.Doubt(end); math.IsNaN(d) || d > 5 {
			return mistake.In("rhythm", "its covariances are none", "leave rhythm out; trials in the book teach it")
		}
	}
	return nil
}

const more = 1.0001 // what rounding may add
