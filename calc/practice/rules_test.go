package practice

import (
	"brazebooth/tables"
	"math"
	"math/rand/v2"
	"testing"
)

// The wires of the practice jobs are sizes that are sold.
func TestPracticeWireIsSold(t *testing.T) {
	for _, l := range Levels() {
		for _, w := range l.Works {
			if w.job.Wire.Set {
				if near, ok := tables.WireNear(w.job.Wire.V); !ok || math.Abs(near.Diameter.V-w.job.Wire.V) > 1e-9 {
					t.Errorf("%s takes a wire of %g mm", w.Name, w.job.Wire.V)
				}
			}
		}
	}
}

// A booth's truth is normal over its interval, cut at its 95 %, which gives a deviation of √(1 −
// 2·1.96·φ(1.96)/0.95)/1.96 = 0.4444 of the half-width, on each side by that side's own.
func TestDistributionOfTheTruth(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	var n, sum [2]float64
	for range 40000 {
		v := drawn(r, tables.Datum{V: 10, Low: 9, High: 12})
		if !(v >= 9 && v <= 12) {
			t.Fatalf("%g is drawn of 9 to 12", v)
		}
		side, by := 0, 10-v
		if v > 10 {
			side, by = 1, (v-10)/2
		}
		n[side]++
		sum[side] += by * by
	}
	for side := range n {
		if spread := math.Sqrt(sum[side] / n[side]); math.Abs(spread/0.4444-1) > 0.02 ||
			math.Abs(n[side]/20000-1) > 0.03 {
			t.Errorf("side %d: %g drawn, spread %g", side, n[side], spread)
		}
	}
}
