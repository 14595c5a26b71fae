package calc

import (
	"regexp"
	"slices"
	"testing"

	"brazebooth/internal/deep"
)

var rulesOut = regexp.MustCompile(`“([^”]+)” and “([^”]+)” rule each other out`)

// Of two edges that are said to rule each other out, one wants more heat and the other less.
func TestEdgesThatRuleEachOtherOutOppose(t *testing.T) {
	deep.Turn(t)
	alike := [...][]string{
		{"wets", "joint filled"}, {"base stays solid", "no burn-through", "zinc band", "metal stays up"},
	}
	var jobs []Job
	for _, metal := range [...]string{"mild-steel", "copper", "galvannealed", "galvanized", "stainless-304",
		"silicon-bronze", "brass", "grey-iron"} {
		for _, thick := range [...]float64{0.3, 0.5, 0.7, 1, 1.5, 3, 6} {
			for _, joint := range [...]string{"lap", "butt", "tee", "corner", "edge"} {
				for _, mode := range [...]string{"dip", "pulsed"} {
					for _, wire := range [...]float64{0, 0.76, 1.2} {
						j := Job{Metal: metal, Thickness: Some(thick), Joint: joint, Mode: mode}
						if wire > 0 {
							j.Wire = Some(wire)
						}
						jobs = append(jobs, j)
					}
				}
			}
		}
	}
	named := 0
	for _, j := range deep.Of(t, jobs, 16) {
		c, err := Solve(j)
		if err != nil {
			continue
		}
		for _, w := range c.Warnings {
			pair := rulesOut.FindStringSubmatch(w.Text)
			if pair == nil {
				continue
			}
			named++
			for _, side := range alike {
				if slices.Contains(side, pair[1]) && slices.Contains(side, pair[2]) {
					t.Errorf("%s %s %.1f mm %s wire %.2f: %s", j.Metal, j.Joint, j.Thickness.V, j.Mode, j.Wire.V,
						w.Text)
				}
			}
		}
	}
	if named == 0 {
		t.Error("no card of the sample names two edges")
	}
}
