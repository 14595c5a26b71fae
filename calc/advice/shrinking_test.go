package advice

import (
	"math"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// twoSheets is a job of two sheets with feed and travel given.
func twoSheets(a, b, joint string, t1, t2 float64) calc.Job {
	return calc.Job{Metal: a, Thickness: calc.Some(t1), Coating: "none", Metal2: b, Thickness2: calc.Some(t2),
		Coating2: "none", Joint: joint, Filler: "cusi3", Feed: calc.Some(5), Travel: calc.Some(8)}
}

// figuresOf are the figures of a job's page by name, nil if the job has no card.
func figuresOf(t *testing.T, of func(*calc.Card) (Page, error), j calc.Job) map[string]calc.Figure {
	t.Helper()
	c, err := calc.Solve(j)
	if err != nil {
		return nil
	}
	p, err := of(&c)
	if err != nil {
		t.Fatalf("%+v: %v", j, err)
	}
	list := map[string]calc.Figure{}
	for _, f := range p.Figures {
		list[f.Name] = f
	}
	return list
}

// alike reports whether two figures agree within a relative part.
func alike(a, b calc.Figure, part float64) bool {
	for _, v := range [...][2]float64{{a.Value, b.Value}, {a.Low, b.Low}, {a.High, b.High}} {
		if math.Abs(v[0]-v[1]) > part*max(math.Abs(v[0]), math.Abs(v[1])) {
			return false
		}
	}
	return true
}

// A butt, a corner and an edge are symmetrical: distortion, the wait between passes and their number do not
// depend on which sheet comes first.
func TestTheOrderOfTheSheetsChangesNothing(t *testing.T) {
	var jobs []calc.Job
	for _, a := range tables.Metals {
		for _, b := range tables.Metals {
			for _, thick := range [...][2]float64{{1.5, 1.5}, {1, 2}, {5, 5}} {
				for _, joint := range []string{"butt", "corner", "edge"} {
					jobs = append(jobs, twoSheets(a.ID, b.ID, joint, thick[0], thick[1]))
				}
			}
		}
	}
	for _, j := range deep.Of(t, jobs, 12) {
		swapped := twoSheets(j.Metal2, j.Metal, j.Joint, j.Thickness2.V, j.Thickness.V)
		for name, of := range map[string]func(*calc.Card) (Page, error){"distortion": Distortion, "passes": Passes} {
			one, two := figuresOf(t, of, j), figuresOf(t, of, swapped)
			for figure, f := range one {
				if g, ok := two[figure]; !ok || !alike(f, g, 1e-6) {
					t.Errorf("%s and %s, %s %g and %g mm: %s %s is %g (%g to %g), and the other way round %g (%g to "+
						"%g)",
						j.Metal, j.Metal2, j.Joint, j.Thickness.V, j.Thickness2.V, name, figure, f.Value, f.Low,
						f.High, g.Value,
						g.Low, g.High)
				}
			}
			if len(one) != len(two) {
				t.Errorf("%s and %s, %s: %s has %d figures, and the other way round %d", j.Metal, j.Metal2, j.Joint,
					name,
					len(one), len(two))
			}
		}
	}
}

// Nothing jumps where the thinner sheet becomes the thicker one: 1 % of thickness changes the figures by a few
// per cent.
func TestNothingJumpsWhereTheThinnerSheetChanges(t *testing.T) {
	var jobs []calc.Job
	for _, a := range []string{"mild-steel", "stainless-304", "copper", "silicon-bronze"} {
		for _, b := range []string{"mild-steel", "stainless-304", "copper", "aluminium-bronze"} {
			for _, joint := range []string{"butt", "lap", "tee", "corner", "edge"} {
				jobs = append(jobs, twoSheets(a, b, joint, 1.5, 1.5))
			}
		}
	}
	for _, j := range deep.Of(t, jobs, 5) {
		var last map[string]calc.Figure
		for i := range 5 {
			k := j
			k.Thickness2 = calc.Some(1.5 * math.Pow(1.01, float64(i-2)))
			now := figuresOf(t, Distortion, k)
			for name, f := range now {
				if was, ok := last[name]; ok && !alike(f, was, 0.06) {
					t.Errorf("%s onto %s, %s at %.3f mm: %s goes from %g to %g", j.Metal, j.Metal2, j.Joint,
						k.Thickness2.V,
						name, was.Value, f.Value)
				}
			}
			last = now
		}
	}
}
