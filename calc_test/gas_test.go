package calc_test

import (
	"testing"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// Cold argon turns turbulent at Reynolds 2300 (textbook, memory high): flow by nozzle bore, worked with an
// independent library, L/min as printed.
func TestLaminarCeiling(t *testing.T) {
	ok := must(t)
	argon, _ := tables.Gases.ByID("argon")
	for _, c := range []struct{ in, want, half float64 }{{0.5, 18.5, 0.05}, {0.625, 23, 0.5}, {0.75, 28, 0.5}} {
		got := ok(formula.LaminarFlow(c.in*25.4, argon.Density.V, tables.ArgonViscosity.V, tables.LaminarReynolds.V))
		check(t, at("%g in", c.in), got, c.want, c.half)
	}
}

// Argon tables (read): 1.784 kg/m3 at 0 C; by the gas law at 20 C.
func TestArgonDensity(t *testing.T) {
	argon, _ := tables.Gases.ByID("argon")
	check(t, "20 C", argon.Density.V, 1.784*273.15/293.15, 0.0005)
	check(t, "over air", argon.Density.V/1.204, tables.ArgonSpecificGravity.V, 0.005)
}
