package advice_test

import (
	"slices"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/deep"
)

// Past the thickness at which an end of the bands leaves a member dry no load is allowed and none is compared, and the
// allowable load never rises by more than a tenth as the sheet gets 2 % thicker and the bead colder.
func TestNoLoadWhereAnEndOfTheBandsIsDry(t *testing.T) {
	deep.Turn(t)
	var jobs []calc.Job
	for _, metal := range []string{"mild-steel", "galvanized", "stainless-304", "hsla"} {
		for _, joint := range []string{"lap", "tee", "butt"} {
			for _, travel := range []float64{5, 7, 9} {
				jobs = append(jobs, calc.Job{Metal: metal, Joint: joint, Feed: calc.Some(5.5),
					Travel: calc.Some(travel), Load: calc.Some(0.5), Length: calc.Some(200)})
			}
		}
	}
	dry := 0
	for _, j := range append([]calc.Job{jobs[1]}, deep.Of(t, jobs, 4)...) { // the cold end of that lap is known
		last := 0.0
		for mm := 1.0; mm < 3; mm *= 1.02 {
			j.Thickness = calc.Some(mm)
			card := mustSolve(t, j)
			p, err := advice.Strength(&card)
			if err != nil {
				t.Fatalf("%s %s %.2f mm: %v", j.Metal, j.Joint, mm, err)
			}
			allowed, ok := p.Figure("allowable_load")
			throat, throated := p.Figure("throat")
			if throated && throat.Low == 0 {
				dry++
				if f, err := advice.Fit(&card); ok || length(&p) > 0 || err != nil || f.Verdict == advice.Suits {
					t.Errorf("%s %s %.2f mm: %g kN allowed on a throat from nothing, %s", j.Metal, j.Joint, mm,
						allowed.Value, f.Verdict)
				}
			}
			if last > 0 && allowed.Value > 1.1*last {
				t.Errorf("%s %s %.2f mm: %g kN after %g", j.Metal, j.Joint, mm, allowed.Value, last)
			}
			last = allowed.Value
		}
	}
	if dry == 0 {
		t.Error("no throat begins at nothing: the test proves nothing")
	}
}

// length is the seam that the page says would be enough; 0 if it names none.
func length(p *advice.Page) float64 {
	mm, _ := adviceOf(p)
	return mm
}

// A seam under 30 mm or six throats is not counted on, and no load is said to need a shorter one.
func TestShortSeamsAreNotCountedOn(t *testing.T) {
	for _, joint := range []string{"lap", "tee", "butt"} {
		for _, long := range []float64{1, 5, 10, 20, 29, 29.9, 30, 31, 60, 100} {
			for _, throat := range []float64{0.3, 2, 4.9, 5.1, 9} {
				j := calc.Job{Metal: "mild-steel", Thickness: calc.Some(10), Joint: joint, Feed: calc.Some(6),
					Travel: calc.Some(6), Throat: calc.Some(throat), Length: calc.Some(long), Load: calc.Some(0.01)}
				card := mustSolve(t, j)
				p, err := advice.Strength(&card)
				if err != nil {
					t.Fatal(err)
				}
				least := max(30, 6*throat)
				short := slices.ContainsFunc(p.Warnings, func(w calc.Warning) bool { return w.Code == "short-seam" })
				if seam, _ := adviceOf(&p); short != (long < least) || seam < least {
					t.Errorf("%s, %g mm with a throat of %g mm: cautioned %v, advised %g mm", joint, long, throat,
						short, seam)
				}
			}
		}
	}
}
