package calc_test

import (
	"math"
	"testing"

	"brazebooth/calc"
)

// Rosenthal's solutions with k 0.040 W/mmK, rho c 0.0050 J/mm3K, 20 C: worked with an independent library
// (SciPy).
func TestRosenthalThinPoints(t *testing.T) {
	ok := must(t)
	for _, c := range []struct{ q, v, d, xi, y, want float64 }{
		{1000, 8, 1, 0, 2, 1695.203013}, {1000, 8, 1, -5, 2, 2428.391866}, {1000, 8, 1, -20, 0, 1578.253956},
		{1000, 8, 1, 3, 0, 209.818011}, {1500, 12, 1.5, -10, 4, 990.314814}, {1500, 12, 1.5, 0, 3, 354.396918},
	} {
		check(t, at("%g,%g", c.xi, c.y), 20+ok(calc.RosenthalThin(c.q, c.v, c.d, 0.040, 0.0050, 0, c.xi, c.y)), c.want, 5e-7)
	}
}

func TestRosenthalThickPoints(t *testing.T) {
	ok := must(t)
	check(t, "near", 20+ok(calc.RosenthalThick(2400, 6, 0.040, 0.0050, -5, 0, 3)), 1219.230706, 5e-7)
	check(t, "far", 20+ok(calc.RosenthalThick(2400, 6, 0.040, 0.0050, -20, 5, 2)), 372.967549, 5e-7)
}

// K0, worked with an independent library; printed so in Abramowitz and Stegun Table 9.8 to fewer digits. A
// source of 2 pi in a unit sheet at speed 2 has the rise K0(y) beside it.
func TestBesselK0(t *testing.T) {
	ok := must(t)
	for x, want := range map[float64]float64{0.1: 2.427069025, 0.5: 0.924419071, 1: 0.421024438, 2: 0.113893873} {
		check(t, at("%g", x), ok(calc.RosenthalThin(2*math.Pi, 2, 1, 1, 1, 0, 0, x)), want, 5e-10)
	}
	check(t, "5", ok(calc.RosenthalThin(2*math.Pi, 2, 1, 1, 1, 0, 0, 5)), 0.003691098334, 5e-13)
}

// Exact thin peak over Adams' centreline form by v·y/2a: worked with an independent library.
func TestRosenthalToAdams(t *testing.T) {
	ok := must(t)
	for u, want := range map[float64]float64{0.1: 0.323339, 0.2: 0.479411, 0.5: 0.713807, 1: 0.862134, 2: 0.949847, 5: 0.990419, 10: 0.997528} {
		check(t, at("%g", u), ok(calc.AdamsCorrection(u)), want, 5e-7)
	}
}

// A fast source with loss: worked with an independent library. H/d 125 J/mm2, rho c 0.005, k 0.040, loss time
// 50 s: in 1 mm sheet 100 W/m2K from both faces together.
func TestFastSourceWithLoss(t *testing.T) {
	rise, when, err := calc.FastPeak(125, 1, 0.005, 0.040, 100, 5)
	if err != nil {
		t.Fatal(err)
	}
	check(t, "time", when, 1.475425, 5e-7)
	check(t, "rise", rise, 1173.690364, 5e-7)
}

// Zinc half-widths of a fast source, 100 J/mm net, rho c 0.0048, k 0.040, 20 C, 60 W/m2K a side: worked with an
// independent library, whose rise to 907 C was 886.99 K: hence 1e-4 mm. A lap of equal sheets has three heat
// paths, a sheet two.
func TestZincHalfWidths(t *testing.T) {
	ok := must(t)
	for _, c := range []struct{ t, boiled, boiledLap, melted, meltedLap float64 }{
		{0.8, 6.58548, 4.56122, 12.42515, 9.14996}, {1.5, 3.73704, 2.51016, 7.92639, 5.44821},
	} {
		half := func(net, temperature float64) float64 {
			return ok(calc.FastHalfWidth(net, c.t, 0.0048, 0.040, 120, temperature-20))
		}
		check(t, at("%g boiled", c.t), half(100, 907), c.boiled, 1e-4)
		check(t, at("%g boiled lap", c.t), half(100/1.5, 907), c.boiledLap, 1e-4)
		check(t, at("%g melted", c.t), half(100, 419.53), c.melted, 1e-4)
		check(t, at("%g melted lap", c.t), half(100/1.5, 419.53), c.meltedLap, 1e-4)
	}
}
