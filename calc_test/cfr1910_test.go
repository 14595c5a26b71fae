package calc_test

import (
	"testing"

	"brazebooth/calc/advice"
	"brazebooth/tables"
)

// 29 CFR 1910.252(c)(3), exhaust hoods (read): table as printed, ft³/min and duct in inches.
func TestHoodTable(t *testing.T) {
	want := []struct{ from, to, flow, duct float64 }{{4, 6, 150, 3}, {6, 8, 275, 3.5}, {8, 10, 425, 4.5}, {10, 12,
		600, 5.5}}
	for i, h := range tables.HoodFlows {
		check(t, at("flow from %g in", want[i].from), h.Flow.V, want[i].flow, 0)
		check(t, at("duct from %g in", want[i].from), h.Duct, want[i].duct, 0)
	}
}

// 29 CFR 1910.252(c)(2): 2000 ft³/min for each welder, rooms under 10,000 ft³ and 16 ft.
func TestGeneralVentilation(t *testing.T) {
	const cubicFoot = 0.3048 * 0.3048 * 0.3048
	check(t, "each welder, m3/min", tables.VentilationFlow.V, 2000*cubicFoot, 0.5)
	check(t, "room, m3", tables.VentilationVolume.V, 10000*cubicFoot, 1)
	check(t, "ceiling, m", tables.VentilationCeiling.Low, 16*0.3048, 0.005)
}

// Zinc oxide over zinc: molar masses 81.38 and 65.38 (IUPAC). Clean air: by the definition of a concentration.
func TestZincOxideAndAir(t *testing.T) {
	check(t, "ratio", tables.ZincOxideRatio.V, 81.38/65.38, 0.0005)
	check(t, "10 g/h to 5 mg/m3", advice.CleanAir(10, 5), 2000, 1e-9)
}
