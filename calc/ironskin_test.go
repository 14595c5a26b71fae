package calc

import (
	"math"
	"testing"

	"brazebooth/internal/deep"
)

// The peak of cast iron's skin moves bit by bit with the feed. A skin that melts within a step of the section, under a
// filler that melts 100 K below it, has one heat capacity, not two that lead to each other.
func TestIronsSkinMovesBitByBit(t *testing.T) {
	deep.Turn(t)
	r := deep.Rand(t)
	steps, jumps := 0, 0
	for range deep.Many(5, 400) {
		j := Job{Metal: []string{"ductile-iron", "grey-iron"}[r.IntN(2)],
			Thickness: Some(0.6 * math.Exp(2.3*r.Float64())),
			Joint:     []string{"lap", "butt", "tee", "corner"}[r.IntN(4)], Wire: Some(0.9 + 0.3*float64(r.IntN(2)))}
		feed := 3 * math.Exp(1.2*r.Float64())
		j.Travel = Some(3 * math.Exp(1.3*r.Float64()))
		last := 0.0
		for k := range 6 {
			j.Feed = Some(feed * math.Pow(1.005, float64(k)))
			c, err := Solve(j)
			if err != nil {
				break
			}
			f, ok := c.Figure("base_peak_temperature")
			if ok && last > 0 {
				steps++
				if by := math.Abs(math.Log(f.Value / last)); by > 0.12 {
					t.Errorf("%s %s %.2f mm, %.2f mm/s: at %.3f m/min the peak moves by %.0f %%", j.Metal, j.Joint,
						j.Thickness.V, j.Travel.V, j.Feed.V, 100*by)
				} else if by > 0.03 {
					jumps++
				}
			}
			last = 0
			if ok {
				last = f.Value
			}
		}
	}
	if steps == 0 || jumps > 1+steps/100 {
		t.Errorf("%d of %d steps of half a per cent of feed move the peak by more than 3 %%", jumps, steps)
	}
}
