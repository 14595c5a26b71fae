package calc_test

import (
	"testing"

	"brazebooth/calc"
)

// Welding handbooks of copper under gas metal arc in argon at 250 to 400 A (memory medium): preheat 200 °C at 10 mm,
// 315 °C at 13 mm. They weld where this brazes, and their plates are bevelled; ours is the least at which the strongest
// pulsed arc of 1.6 mm wire, 270 A, wets: within 100 K. Beyond 13 mm practice goes on rising and a flat plate does not.
func TestCopperPreheat(t *testing.T) {
	for mm, book := range map[float64]float64{10: 200, 13: 315} {
		c, err := calc.Solve(calc.Job{Metal: "copper", Thickness: calc.Some(mm), Joint: "butt", Filler: "cusi3",
			Wire: calc.Some(1.6), Mode: "pulsed"})
		if err != nil {
			t.Fatal(err)
		}
		f, _ := c.Figure("least_preheat")
		check(t, at("%g mm", mm), f.Value, book, 100)
	}
}
