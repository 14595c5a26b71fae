package calc_test

import (
	"math"
	"testing"

	"brazebooth/calc/formula"
)

// Christensen, Davies and Gjermundsen, British Welding Journal 1965 (memory high): half-width ψ over the operating
// number n of a point source on a thick plate. Values worked from the two parametric equations.
func TestChristensen(t *testing.T) {
	const k, rhoC, travel, rise = 0.040, 0.0050, 8.0, 900.0
	a := k / rhoC
	for _, c := range []struct{ n, psi float64 }{{.1, .0916}, {.3, .2414}, {1, .6134}, {3, 1.2715}, {10, 2.5595},
		{100, 8.5207}} {
		net := c.n * 4 * math.Pi * a * a * rhoC * rise / (travel * travel)
		y := must(t)(formula.MovingThickHalfWidth(net, travel, rhoC, k, rise))
		check(t, at("n %g", c.n), y*travel/(2*a), c.psi, 0.00005)
	}
	// An instantaneous line source: 2·H/(πe·ρc·y²) at y 3 mm is 520.443 K.
	y := must(t)(formula.MovingThickHalfWidth(100, 1e4, rhoC, k, 520.443))
	check(t, "fast line", y, 3, 0.001) // the travel is fast, not infinite
}
