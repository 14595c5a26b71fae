package calc_test

import (
	"testing"

	"brazebooth/calc"
	"brazebooth/tables"
)

// Cold argon turns turbulent at Reynolds 2300 (textbook, memory high): flow by nozzle bore, worked with an
// independent library for 21.1 C and one atmosphere, 1.654 kg/m3 (argon tables, read).
func TestLaminarCeiling(t *testing.T) {
	ok := must(t)
	for in, want := range map[float64]float64{0.375: 13.8, 0.5: 18.5, 0.625: 23.2, 0.75: 27.8} {
		got := ok(calc.LaminarFlow(in*25.4, 1.654, tables.ArgonViscosity.V, tables.LaminarReynolds.V))
		check(t, at("%g in", in), got, want, 0.05)
	}
}

// Argon tables (read): 1.784 kg/m3 at 0 C; by the gas law at 20 C.
func TestArgonDensity(t *testing.T) {
	argon, _ := tables.GasByID("argon")
	check(t, "20 C", argon.Density.V, 1.784*273.15/293.15, 0.0005)
	check(t, "over air", argon.Density.V/1.204, tables.ArgonSpecificGravity.V, 0.005)
}
