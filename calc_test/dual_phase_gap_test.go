package calc_test

import (
	"testing"

	"brazebooth/calc"
)

// A gap of 0.6 mm in a butt of thin dual-phase sheet is bridged by an arc without pauses (published trend,
// memory medium; only the direction is known): there is a steady setting that wets, fills and melts nothing.
func TestNarrowGapNeedsNoPause(t *testing.T) {
	for _, thick := range []float64{0.8, 1, 1.2} {
		c, err := calc.Solve(calc.Job{Metal: "dp600", Thickness: calc.Some(thick), Joint: "butt", Gap: calc.Some(0.6)})
		if err != nil {
			t.Fatal(err)
		}
		met := true
		for _, e := range c.Edges {
			met = met && e.Met
		}
		check(t, at("%g mm", thick), truth(c.Zone == "good" && met), 1, 0)
	}
}
