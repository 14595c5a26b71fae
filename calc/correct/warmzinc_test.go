package correct

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// For cold beads on zinc, on every joint and thickness, no answer warms the parts.
func TestNoAnswerWarmsZinc(t *testing.T) {
	var jobs []calc.Job
	for _, metal := range []string{"galvanized", "galvannealed", "electro-zinc"} {
		for _, other := range []string{"", "copper", "mild-steel"} {
			for _, mm := range []float64{1, 3, 8, 12, 25} {
				for _, joint := range []string{"lap", "butt", "tee", "corner", "edge"} {
					jobs = append(jobs, calc.Job{Metal: metal, Metal2: other, Thickness: calc.Some(mm), Joint: joint})
				}
			}
		}
	}
	for _, j := range deep.Of(t, jobs, 4) {
		p, err := Next(t.Context(), []Try{{j, "rolled-edge"}})
		if err != nil {
			t.Errorf("%+v: %v", j, err)
			continue
		}
		c := p.Correction
		if c.Change != nil && c.Change.What == "preheat" || strings.Contains(c.Do, "preheat") ||
			strings.Contains(c.Do, "warmer parts") && !strings.Contains(c.Do, "for warmer parts strip the zinc back") {
			t.Errorf("%s on %s %g mm %s: %+v, %s", j.Metal, j.Metal2, j.Thickness.V, j.Joint, c.Change, c.Do)
		}
	}
}

// The levers for more heat include preheat on bare plate, but not with zinc.
func TestPreheatIsNoLeverOnZinc(t *testing.T) {
	for _, x := range []struct {
		metal, other string
		want         bool
	}{{"galvanized", "", false}, {"copper", "galvanized", false}, {"galvanized", "grey-iron", false}, {"mild-steel",
		"", true},
		{"copper", "", true}, {"grey-iron", "", true}} {
		used, err := calc.Answer(t.Context(), calc.Job{Metal: x.metal, Metal2: x.other, Thickness: calc.Some(8),
			Joint: "butt",
			Feed:  calc.Some(6), Travel: calc.Some(8)}, nil)
		if err != nil {
			t.Fatal(err)
		}
		v := posterior{card: used}
		has := false
		for _, l := range v.warmer(nil) {
			has = has || l == leverPreheat
		}
		if has != x.want {
			t.Errorf("%s on %s: preheat is a lever: %v", x.metal, x.other, has)
		}
	}
}

// The alternatives name nothing that the job already has: no pulsed mode twice, and a bar only behind a butt
// without one.
func TestAlternativesAreNew(t *testing.T) {
	for _, j := range []calc.Job{{}, {Mode: "pulsed"}, {Joint: "lap"}, {Joint: "butt"}, {Joint: "tee", Mode: "pulsed"},
		{Joint: "butt", Gap: calc.Some(1), Backing: "copper-bar"}} {
		j.Metal, j.Thickness = "mild-steel", calc.Some(1.5)
		c, err := calc.Solve(j)
		if err != nil {
			t.Fatal(err)
		}
		cold, hot := insteadOf(tables.CauseCold, &c), insteadOf(tables.CauseMelts, &c)
		if strings.Contains(cold, "pulsed") != (c.Used.Mode != "pulsed") {
			t.Errorf("%+v: %s", j, cold)
		}
		if strings.Contains(hot, "backing bar") != (j.Joint == "butt" && j.Backing == "") {
			t.Errorf("%+v: %s", j, hot)
		}
	}
}
