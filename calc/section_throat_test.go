package calc

import (
	"testing"

	"brazebooth/internal/deep"
)

// The throat of a closed butt is that of its cap, beside the pull's line: less than half of the sheet. It grows with
// the opening at the same setting, without a jump, and is never more than the sheet.
func TestButtThroatGrowsWithTheOpening(t *testing.T) {
	var jobs []Job
	for _, metal := range []string{"mild-steel", "galvanized", "dp600", "stainless-304"} {
		for _, mm := range []float64{0.8, 1, 1.5, 2} {
			for _, travel := range []float64{5, 7} {
				jobs = append(jobs, Job{Metal: metal, Thickness: Some(mm), Joint: "butt", Feed: Some(3 + mm),
					Travel: Some(travel)})
			}
		}
	}
	for _, j := range deep.Of(t, jobs, 5) {
		last := 0.0
		for gap := 0.0; gap <= 0.51; gap += 0.1 {
			j.Gap = Some(gap)
			c := card(t, j)
			f, ok := c.Figure("throat")
			if !ok {
				t.Fatalf("%s %g mm, gap %g: no throat", j.Metal, j.Thickness.V, gap)
			}
			sheet := c.Setup.Members[0].Core
			switch {
			case gap == 0 && f.Value > sheet/2:
				t.Errorf("%s %g mm: a closed butt carries like %g mm", j.Metal, j.Thickness.V, f.Value)
			case f.Value > sheet+1e-9 || f.High > sheet+1e-9 || f.Low > f.Value:
				t.Errorf("%s %g mm, gap %g: throat %g, %g to %g", j.Metal, j.Thickness.V, gap, f.Value, f.Low, f.High)
			case gap > 0 && c.Section.BoiledBack[0] > sheet && (f.Value < last-0.02*sheet || f.Value > last+0.35*sheet):
				t.Errorf("%s %g mm, gap %.1f: throat %g after %g", j.Metal, j.Thickness.V, gap, f.Value, last)
			}
			last = f.Value
		}
	}
}
