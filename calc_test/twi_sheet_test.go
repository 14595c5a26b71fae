package calc_test

import (
	"slices"
	"testing"

	"brazebooth/calc"
)

// TWI Job Knowledge 134 (read): arc brazing suits sheet of about 0.2 to 3 mm. In that range butts and tees have
// a good setting, and laps as long as the upper sheet's edge is low; a butt in 6 mm plate gets a warning
// because its bronze is too weak.
func TestSheetHasAWindow(t *testing.T) {
	for joint, thicks := range map[string][]float64{"lap": {0.5, 0.8, 1, 1.5, 2}, "butt": {0.6, 0.8, 1, 1.5, 2, 2.5,
		3}, "tee": {0.6, 1, 2, 3}} {
		for _, thick := range thicks {
			c, err := calc.Solve(calc.Job{Metal: "mild-steel", Thickness: calc.Some(thick), Joint: joint})
			if err != nil {
				t.Fatal(err)
			}
			check(t, at("%s of %g mm", joint, thick), truth(c.Zone == "good"), 1, 0)
		}
	}
	c, err := calc.Solve(calc.Job{Metal: "mild-steel", Thickness: calc.Some(6), Joint: "butt"})
	if err != nil {
		t.Fatal(err)
	}
	warned := slices.ContainsFunc(c.Warnings, func(w calc.Warning) bool { return w.Code == "thick-sheet" })
	check(t, "butt of 6 mm", truth(warned), 1, 0)
}

func truth(b bool) float64 {
	if b {
		return 1
	}
	return 0
}
