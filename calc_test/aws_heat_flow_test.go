package calc_test

import (
	"testing"

	"brazebooth/calc"
)

// AWS Welding Handbook vol. 1, heat flow, worked examples (memory high).
func TestAWSPeakTemperature(t *testing.T) {
	ok := must(t)
	// 20 V, 200 A, 0.9, 5 mm/s: 720 J/mm; 5 mm sheet, 0.0044 J/mm3K, 25 C, melting 1510 C.
	net := ok(calc.NetHeat(0.9, 20, 200, 5))
	check(t, "net heat", net, 720, 0.5)
	// Printed to a degree with 4.13 in place of 4.1327, which is worth another.
	check(t, "1.5 mm", ok(calc.AdamsPeak(net, 5, 0.0044, 1510, 25, 1.5)), 1184, 1)
	check(t, "3.0 mm", ok(calc.AdamsPeak(net, 5, 0.0044, 1510, 25, 3.0)), 976, 1)
	check(t, "width to 730 C", ok(calc.AdamsDistance(net, 5, 0.0044, 1510, 25, 730)), 5.9, 0.05)
}

// Plate 6 mm, 25 V, 300 A, 0.9, k 0.028, rho c 0.0044, 30 C, cooling rate at 550 C: the handbook's example,
// its figures worked to more digits with an independent library.
func TestAWSCoolingRate(t *testing.T) {
	ok := must(t)
	for v, want := range map[float64]float64{9: 6.96595, 8: 5.50396} {
		net := ok(calc.NetHeat(0.9, 25, 300, v))
		check(t, at("%g mm/s", v), ok(calc.CoolingRateThin(net, 6, 0.028, 0.0044, 30, 550)), want, 5e-6)
	}
	net := ok(calc.NetHeat(0.9, 25, 300, 9))
	tau := ok(calc.RelativeThickness(net, 6, 0.0044, 30, 550))
	check(t, "thin", tau, 0.3, 0.3) // the example is in the thin range, under 0.6
}

// Solidification time, printed 0.94 s.
func TestAWSSolidificationTime(t *testing.T) {
	ok := must(t)
	check(t, "time", ok(calc.SolidificationTime(800, 2, 0.028, 0.0044, 25, 1510)), 0.94, 0.005)
	check(t, "worked", ok(calc.SolidificationTime(800, 2, 0.028, 0.0044, 25, 1510)), 0.937295, 5e-7)
}
