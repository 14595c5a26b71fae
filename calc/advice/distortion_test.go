package advice

import (
	"math"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// More heat pulls more and leaves less width flat; thicker sheet under the same heat stays flat further. Every figure
// lies inside its band, and every job has a figure or a reason.
func TestDistortionFollowsHeatAndThickness(t *testing.T) {
	steps := deep.Many(4, 60)
	page := func(metal string, thick, travel float64) Page {
		t.Helper()
		card, err := calc.Solve(calc.Job{Metal: metal, Coating: "none", Thickness: calc.Some(thick), Joint: "butt", Feed: calc.Some(4), Travel: calc.Some(travel)})
		if err != nil {
			t.Fatal(err)
		}
		p, err := Distortion(&card)
		if err != nil || len(p.Reasons) == 0 {
			t.Fatal(metal, err)
		}
		for _, f := range p.Figures {
			if !(f.Low <= f.Value && f.Value <= f.High) || math.IsInf(f.High, 0) {
				t.Errorf("%s %.3g mm %.3g mm/s: %s %g (%g to %g)", metal, thick, travel, f.Name, f.Value, f.Low, f.High)
			}
		}
		return p
	}
	for _, metal := range []string{"mild-steel", "stainless-304", "brass"} {
		was := math.Inf(1)
		for i := range steps + 1 { // faster is colder
			p := page(metal, 1.5, 4*math.Pow(4, float64(i)/float64(steps)))
			pull, _ := p.Figure("shrinkage_force")
			if !(pull.Value < was) {
				t.Errorf("%s: the pull goes from %g to %g as travel grows", metal, was, pull.Value)
			}
			was = pull.Value
		}
		last := 0.0
		for i := range steps + 1 {
			p := page(metal, 0.6*math.Pow(12, float64(i)/float64(steps)), 8)
			if b, ok := p.Figure("flat_width_held"); ok {
				if b.Value < last {
					t.Errorf("%s: thicker sheet stays flat over %g mm, less than %g", metal, b.Value, last)
				}
				last = b.Value
			}
		}
	}
}

// Every metal and joint has a figure or a reason why not.
func TestEveryMetalDistorts(t *testing.T) {
	for _, m := range deep.Of(t, tables.Metals(), 8) {
		for _, joint := range []string{"lap", "tee", "butt", "corner", "overlay", "plug"} {
			card, err := calc.Solve(calc.Job{Metal: m.ID, Thickness: calc.Some(2), Joint: joint, Feed: calc.Some(5), Travel: calc.Some(8)})
			if err != nil {
				continue
			}
			if p, err := Distortion(&card); err != nil || len(p.Reasons) == 0 {
				t.Errorf("%s %s: %v", m.ID, joint, err)
			}
		}
	}
}
