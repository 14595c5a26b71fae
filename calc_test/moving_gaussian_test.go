package calc_test

import (
	"math"
	"testing"

	"brazebooth/calc/section/plate"
)

// Peak rise beside a Gaussian source of 1000 W and σ 1.8 mm that moves over a plate of finite thickness: the
// point sources of Carslaw and Jaeger 10.2, spread over the Gaussian, with images in both faces (14.10), as in
// Eagar and Tsai, Welding Journal 1983 (memory high). Worked with an independent general-purpose library.
func TestMovingGaussian(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct{ k, rhoC, d, v, y, want, tolerance float64 }{
		{.35, .0038, 3, 8, 0, 511.339, .0005}, {.35, .0038, 3, 8, 4, 306.946, .0005}, {.35, .0038, 8, 6, 3, 214.280,
			.0005},
		{.35, .0038, 12, 5, 0, 332.798, .0005}, {.35, .0038, 12, 5, 4, 146.967, .0005}, {.35, .0038, inf, 5, 4,
			119.489, .0005},
		{.030, .0056, 6, 7.5, 0, 2147.92, .005}, {.030, .0056, 6, 7.5, 3, 827.023, .0005},
		{.040, .0043, 8, 7, 3, 836.848, .0005}, {.021, .0042, 6, 9, 3, 1030.109, .0005},
	} {
		check(t, at("k %g, %g mm at %g mm/s, y %g", c.k, c.d, c.v, c.y), plate.Rise(1000, 1.8, c.k, c.rhoC, c.v, c.d,
			c.y), c.want, c.tolerance)
	}
	// A standing source, which here still moves a little: q/(kσ√8π).
	check(t, "standing", plate.Moving(1e-6, inf, 0, 0, plate.Front)*1000/(.35*1.8), 316.6209, 0.0005)
	// The ratio of the moving source's peak to that of a fast one whose heat is spread in time: variance S²/v²,
	// mm2.
	for _, c := range []struct{ d, v, y, s2, want float64 }{{3, 8, 0, 41.3167, 1.4131}, {8, 6, 3, 64.0241, 1.5025},
		{12, 5, 4, 85.7954, 1.4841}} {
		const a, sigma = .35 / .0038, 1.8
		p, m := c.v*sigma/(2*a), c.s2*a*a/(c.v*c.v*sigma*sigma*sigma*sigma)
		got := 2 * p * plate.MovingPeak(p, c.d/sigma, c.y/sigma, plate.Front) / plate.FastPeak(m, c.d/sigma,
			c.y/sigma, plate.Front)
		check(t, at("ratio, %g mm at %g mm/s, y %g", c.d, c.v, c.y), got, c.want, 0.00005)
	}
}
