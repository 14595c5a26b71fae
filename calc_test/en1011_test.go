package calc_test

import (
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/quantity"
)

// EN 1011-2 Annex D (memory high): 1 kJ/mm on bead-on-sheet, 20 C, worked with an independent library. At 10 mm
// the two-dimensional time applies, at 20 mm the three-dimensional one.
func TestCoolingTime(t *testing.T) {
	ok := must(t)
	check(t, "10 mm", ok(formula.CoolingTime(1000, 10, 20, "overlay")), 11.363566, 5e-7)
	check(t, "20 mm", ok(formula.CoolingTime(1000, 20, 20, "overlay")), 5.288462, 5e-7)
	// The factors of Table D.1: F2 and F3 are 0.9 and 0.9 for a butt, 0.45 and 0.67 for a fillet in a T or lap.
	check(t, "butt", ok(formula.CoolingTime(1000, 10, 20, "butt")), 0.9*11.363566, 1e-6)
	check(t, "lap", ok(formula.CoolingTime(1000, 10, 20, "lap")), 0.45*11.363566, 1e-6)
	check(t, "thick tee", ok(formula.CoolingTime(1000, 40, 20, "tee")), 0.67*5.288462, 1e-6)
}

// EN 1011-1 and ISO/TR 17671-1: heat input with k 0.8 (memory high); ASME and AWS arc energy in kJ/in. On a
// card at 20 in/min; worked with an independent library.
func TestHeatInput(t *testing.T) {
	solve := func(volts, amps float64) *calc.Card {
		card, err := calc.Solve(calc.Job{Metal: "mild-steel", Thickness: calc.Some(1.5), Volts: calc.Some(volts),
			Amps: calc.Some(amps), Travel: calc.Some(20 * 25.4 / 60)})
		if err != nil {
			t.Fatal(err)
		}
		return &card
	}
	check(t, "reports", figure(t, solve(18.65, 93), "heat_input"), 163.885039, 5e-7)
	energy := figure(t, solve(20, 100), "arc_energy")
	check(t, "kJ/mm", energy/1000, 0.236220, 5e-7)
	inch, unit := quantity.Convert(energy, "J/mm", quantity.Inch)
	check(t, unit, inch, 6, 5e-7)
}
