package calc_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"brazebooth/calc/formula"
)

// Rosenthal's thin source in the program's form: how far beside the arc its peak reaches
// (formula.MovingHalfWidth). Figures worked with an independent library (SciPy).

// fast is a travel in mm/s at which a moving source equals an instantaneous line source to the digits printed
// here.
const fast = 1e4

// adamsFactor is √(2πe) in Adams' peak-temperature equation.
var adamsFactor = math.Sqrt(2 * math.Pi * math.E)

// Ratio of the exact thin peak to Adams' centreline form H/(√(2πe)·ρc·t·y), by v·y/2a: for the rise that is
// this share of Adams' rise at 1 mm, the half-width is 1 mm.
func TestRosenthalToAdams(t *testing.T) {
	ok := must(t)
	for u, share := range map[float64]float64{0.1: 0.323339, 0.2: 0.479411, 0.5: 0.713807, 1: 0.862134, 2: 0.949847,
		5: 0.990419, 10: 0.997528} {
		// In units where H, t, ρc, k and y are 1: v = 2u. The share is printed to 5e-7, so the width is
		// accurate to three times that.
		check(t, at("%g", u), ok(formula.MovingHalfWidth(1, 2*u, 1, 1, 1, 0, share/adamsFactor)), 1, 1.5e-6)
	}
}

// K0, which Abramowitz and Stegun Table 9.8 has to fewer digits. A source at rest of 2π W in a sheet of k and t
// 1 that loses 1 W/mm2K has the rise K0(y) beside it. The tolerance is half of the last digit over the slope
// K1.
func TestBesselK0(t *testing.T) {
	ok := must(t)
	const still = 1e-9 // mm/s
	for _, c := range []struct{ x, k0, half float64 }{
		{0.1, 2.427069025, 5.1e-11}, {0.5, 0.924419071, 3.1e-10}, {1, 0.421024438, 8.4e-10}, {2, 0.113893873, 3.6e-9},
		{5, 0.003691098334, 1.3e-10},
	} {
		check(t, at("%g", c.x), ok(formula.MovingHalfWidth(2*math.Pi/still, still, 1, 1, 1, 1e6, c.k0)), c.x, c.half)
	}
}

// A fast source with loss: H/d 125 J/mm2, rho c 0.005, k 0.040, loss time 50 s: in 1 mm sheet 100 W/m2K from
// both faces together. Its peak at a distance of 5 mm.
func TestFastSourceWithLoss(t *testing.T) {
	check(t, "1173.690364 K", must(t)(formula.MovingHalfWidth(125, fast, 1, 0.005, 0.040, 100, 1173.690364)), 5, 5e-7)
}

// Zinc half-widths of a fast source, 100 J/mm net, rho c 0.0048, k 0.040, 20 C, 60 W/m2K a side: worked with an
// independent library, which had a rise of 886.99 K to 907 C, so the tolerance is 1e-4 mm. A lap of equal
// sheets has three heat paths, a single sheet two.
func TestZincHalfWidths(t *testing.T) {
	ok := must(t)
	for _, c := range []struct{ t, boiled, boiledLap, melted, meltedLap float64 }{
		{0.8, 6.58548, 4.56122, 12.42515, 9.14996}, {1.5, 3.73704, 2.51016, 7.92639, 5.44821},
	} {
		half := func(net, temperature float64) float64 {
			return ok(formula.MovingHalfWidth(net, fast, c.t, 0.0048, 0.040, 120, temperature-20))
		}
		check(t, at("%g boiled", c.t), half(100, 907), c.boiled, 1e-4)
		check(t, at("%g boiled lap", c.t), half(100/1.5, 907), c.boiledLap, 1e-4)
		check(t, at("%g melted", c.t), half(100, 419.53), c.melted, 1e-4)
		check(t, at("%g melted lap", c.t), half(100/1.5, 419.53), c.meltedLap, 1e-4)
	}
}

// The half-width for a rise is where the reference's highest rise along the path equals it, at any speed, in
// any metal, with and without loss.
func TestHalfWidthIsWhereThePeakIs(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		net := rapid.Float64Range(20, 400).Draw(r, "net")
		v := rapid.Float64Range(1, 30).Draw(r, "v")
		thick := rapid.Float64Range(0.4, 4).Draw(r, "t")
		k := rapid.Float64Range(0.015, 0.4).Draw(r, "k")
		loss := rapid.SampledFrom([]float64{0, 120, 400}).Draw(r, "loss")
		rise := rapid.Float64Range(100, 1500).Draw(r, "rise")
		y, err := formula.MovingHalfWidth(net, v, thick, 0.005, k, loss, rise)
		if err != nil {
			r.Fatal(err)
		}
		if y < 1e-6 {
			return // the sheet never gets as hot beside the line
		}
		if got := hottest(net*v, v, thick, k, 0.005, loss, y); !(math.Abs(got-rise) <= 1e-6*rise) {
			r.Fatalf("at %g mm the peak is %g, want %g", y, got, rise)
		}
	})
}
