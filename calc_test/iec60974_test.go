package calc_test

import (
	"testing"

	"brazebooth/calc/formula"
)

// IEC 60974-1 (memory high): conventional load voltage 14 + 0.05·I, 44 V above 600 A; duty in a 10 min period
// goes with the square of current: 60 % at 200 A is 38.4 % at 250 A.
func TestLoadLine(t *testing.T) {
	check(t, "93 A", formula.LoadLine(93), 18.65, 5e-3)
	check(t, "114 A", formula.LoadLine(114), 19.7, 5e-3)
	check(t, "600 A", formula.LoadLine(600), 44, 0.5e-9)
	check(t, "700 A", formula.LoadLine(700), 44, 0.5e-9)
}

func TestDuty(t *testing.T) {
	ok := must(t)
	check(t, "250 A", ok(formula.DutyAt(250, 200, 60)), 38.4, 0.05)
	check(t, "150 A", ok(formula.DutyAt(150, 200, 60)), 100, 0.5e-9)
	check(t, "rms", ok(formula.EffectiveAmps(100, 0.25)), 50, 0.5e-9)
}
