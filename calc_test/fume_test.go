package calc_test

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// TRGS 528 (memory medium): gas metal arc brazing gives off 1 to 9 mg/s of particles. The fume computed from
// the emission factors of welding wires is in this range for sheet of any metal with the suggested settings.
// Copper is the deciding element with every bronze except the one with 13 % manganese, whose limit is lower
// still.
func TestFumeIsWhatTheProcessGives(t *testing.T) {
	var jobs []calc.Job
	for _, metal := range []string{"galvanized", "mild-steel", "stainless-304", "copper"} {
		for _, filler := range []string{"cusi3", "cual8", "cusn6", "cumn13al8"} {
			for _, mm := range []float64{0.8, 1.2, 1.5, 2, 3} {
				jobs = append(jobs, calc.Job{Metal: metal, Filler: filler, Thickness: calc.Some(mm)})
			}
		}
	}
	for _, j := range deep.Of(t, jobs, 8) {
		c, err := calc.Solve(j)
		if err != nil {
			t.Fatal(err)
		}
		p, err := advice.Air(&c)
		if err != nil {
			t.Fatal(err)
		}
		fume, _ := p.Figure("fume_rate")
		copper, _ := p.Figure("fume_copper")
		if fume.Low > 9 || fume.High < 1 || !(fume.Value > 0.5 && fume.Value < 9) || !(copper.Value < fume.Value) {
			t.Errorf("%s %s %g mm: fume %g to %g mg/s, copper %g", j.Metal, j.Filler, j.Thickness.V, fume.Low,
				fume.High,
				copper.Value)
		}
		bare := j.Metal != "galvanized"
		for _, r := range p.Reasons {
			governs := strings.HasPrefix(r.Text, "the tightest is ")
			if want := map[bool]string{true: "manganese", false: "copper"}[j.Filler == "cumn13al8"]; governs && bare &&
				!strings.Contains(r.Text, want) {
				t.Errorf("%s %s: %s", j.Metal, j.Filler, r.Text)
			}
		}
	}
	if l, ok := limitFor("copper", tables.OSHA, tables.ShiftMean); !ok || l.Limit.V != 0.1 {
		t.Errorf("copper's limit %v", l.Limit)
	}
}
