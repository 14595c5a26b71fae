package correct

import (
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// Whatever a bead shows, a correction leaves no gap unbridged that was bridged, and lets no metal run that
// stayed up.
func TestCorrectionsKeepTheMetalInPlace(t *testing.T) {
	rng := deep.Rand(t)
	positions, joints := tables.Positions, []string{"lap", "butt", "tee"}
	changed := 0
	for range deep.Many(6, 200) {
		job := calc.Job{Metal: "mild-steel", Thickness: calc.Some(1 + 1.5*rng.Float64()), Joint: joints[rng.IntN(3)],
			Position: positions[rng.IntN(len(positions))].ID}
		if rng.IntN(2) == 0 {
			job.Gap = calc.Some(0.2 + 0.6*rng.Float64())
		}
		before := card(t, job)
		seen := []string{"rolled-edge", "thin-wide"}[rng.IntN(2)]
		p, err := Next(t.Context(), []Try{{calc.Laid(before), seen}})
		if err != nil {
			t.Fatalf("%+v: %v", job, err)
		}
		if p.Correction.Change == nil || p.Correction.Next.Mode == "timed" {
			continue
		}
		changed++
		after := card(t, p.Correction.Next)
		for _, name := range []string{"gap bridged", "metal stays up"} {
			if missed(before, name) || !missed(after, name) {
				continue
			}
			c := p.Correction.Change
			t.Errorf("%+v, %s: after %s to %g “%s” is not met", job, seen, c.What, c.To, name)
		}
	}
	if changed == 0 {
		t.Error("nothing was changed")
	}
}

func missed(c *calc.Card, edge string) bool {
	for _, e := range c.Edges {
		if e.Name == edge {
			return !e.Met
		}
	}
	return false
}
