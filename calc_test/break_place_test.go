package calc_test

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
)

func strength(t *testing.T, j calc.Job) advice.Page {
	t.Helper()
	c, err := calc.Solve(j)
	if err != nil {
		t.Fatalf("%+v: %v", j, err)
	}
	p, err := advice.Strength(&c)
	if err != nil {
		t.Fatalf("%+v: %v", j, err)
	}
	return p
}

// Where published seams broke. Li, Yu and Qi 2006 (read: abstract): laps of thin galvanized sheet brazed with
// CuSi3 broke in the base sheet. Laps of DP600 broke in the bead, and butts of DP600 whose bronze reached 404
// MPa broke in the bronze (both as reported, papers not at hand). These are categories without numbers.
func TestSeamsBreakWhereTheyDid(t *testing.T) {
	for _, x := range []struct {
		metal, joint string
		mm, gap      float64
		in, not      string
	}{
		{"galvanized", "lap", 0.8, 0, advice.InSheet, ""}, {"galvanized", "lap", 1, 0, advice.InSheet, ""},
		{"galvanized", "lap", 1.2, 0, advice.InSheet, ""},
		{"dp600", "lap", 0.8, 0, "", advice.InSheet}, {"dp600", "lap", 1, 0, "", advice.InSheet},
		{"dp600", "lap", 1.5, 0, "", advice.InSheet},
		{"dp600", "butt", 1, 0.7, advice.InBronze, ""}, {"dp600", "butt", 1.2, 0.8, advice.InBronze, ""},
	} {
		p := strength(t, calc.Job{Metal: x.metal, Thickness: calc.Some(x.mm), Joint: x.joint, Gap: calc.Some(x.gap)})
		said := p.Reasons[0].Text
		if !strings.Contains(said, "breaks "+x.in) || x.not != "" && strings.Contains(said, "breaks "+x.not) {
			t.Errorf("%s %g mm %s: %s, published %q", x.metal, x.mm, x.joint, said, x.in+" not "+x.not)
		}
	}
}
