package calc_test

import (
	"testing"

	"brazebooth/calc/thinsheet"
)

// Rosenthal 1941, moving line source in a thin plate (memory high): the plane's solver under an arc that
// travels until the temperatures around it are steady. Figures worked with Bessel functions of an independent
// library, sheet at 20 C.
func TestPlaneMovesAsRosenthal(t *testing.T) {
	near := []struct{ x, y, want float64 }{{0, 2, 1695.203013}, {-5, 2, 2428.391866}, {3, 0, 209.818011}}
	got := line(t, 6, 1000, 20, 12, 70, 40, func(s *thinsheet.Sheet) []float64 {
		s.Travel(8, 8, 0.01, nil)
		var list []float64
		for _, p := range near {
			list = append(list, s.At(0, p.x, p.y))
		}
		return list
	})
	for i, p := range near {
		check(t, at("%g mm ahead", p.x)+at(", %g aside", p.y), got[i], p.want, 0.01*p.want)
	}
	// Far behind the arc a wider arc and wider cells are enough.
	in := dullSheet(0.8, 1000, 20, 12, 70, 40)
	in.Cell, in.Near = 0.4, 24
	s, err := thinsheet.New(in)
	if err != nil {
		t.Fatal(err)
	}
	s.Travel(8, 9, 0.01, nil)
	check(t, "20 mm behind", s.At(0, -20, 0), 1578.253956, 0.01*1578)
}
