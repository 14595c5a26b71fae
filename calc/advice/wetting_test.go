package advice

import (
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// Over jobs of every metal, joint, thickness and position, a filler that does not wet never ranks above one
// that does, unless the trade rules that one out; and the page says that it does not wet.
func TestAFillerThatWetsGoesFirst(t *testing.T) {
	metals, joints, positions := tables.Metals, tables.Joints, tables.Positions
	rng := deep.Rand(t)
	cold := 0
	for range deep.Many(2, 120) {
		job := calc.Job{Metal: metals[rng.IntN(len(metals))].ID, Joint: joints[rng.IntN(len(joints))].ID,
			Thickness: calc.Some(0.5 + 2.5*rng.Float64()), Position: positions[rng.IntN(len(positions))].ID}
		if rng.IntN(2) == 0 { // often not wetted
			job.Metal, job.Thickness = "copper", calc.Some(2+rng.Float64())
		}
		c, err := calc.Solve(job)
		if err != nil {
			continue // such as zinc under an overlay
		}
		p, err := Fillers(t.Context(), &c)
		if err != nil {
			t.Fatal(err)
		}
		for i := range p.Ranking {
			r := &p.Ranking[i]
			if r.CannotWet {
				cold++
			}
			for k := range p.Ranking[:i] {
				if b := &p.Ranking[k]; b.CannotWet && !r.CannotWet && r.RuledOut == b.RuledOut {
					t.Errorf("%+v: %s does not wet and stands before %s", job, b.ID, r.ID)
				}
			}
			said := false
			for _, x := range r.Against {
				said = said || x.Weight == 3
			}
			if r.CannotWet && !said {
				t.Errorf("%+v: %s does not wet, and nothing says so: %+v", job, r.ID, r.Against)
			}
		}
	}
	t.Logf("%d that do not wet", cold)
}
