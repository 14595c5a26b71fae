package calc_test

import (
	"math"
	"testing"

	"brazebooth/calc/thinsheet"
)

// dullSheet is 1 mm of a metal with constant properties that never melts, k 0.040 W/mmK and ρc 0.0050 J/mm3K,
// under an arc of the given width, without heat loss.
func dullSheet(sigma, power, start, ahead, behind, aside float64) thinsheet.Input {
	return thinsheet.Input{
		Arms: []thinsheet.Arm{{Base: thinsheet.Plain(0.005, 0.040, 1, 0, 8000, 8001), Thick: 1, Lit: true,
			Sigma: sigma}},
		Mirror: true, Filler: thinsheet.Plain(0.0085, 0.05, 0.4, 200, 970, 1025), Stir: 2, Sigma: sigma, Power: power,
		Start: start, Cell: 0.1, Near: 6, Ahead: ahead, Behind: behind, Aside: aside}
}

// line runs a sheet under two narrow arcs and extrapolates its figures to an arc of no width: away from the
// line they are linear in σ². Cells are small up to the distance near.
func line(t *testing.T, near, power, start, ahead, behind, aside float64,
	run func(*thinsheet.Sheet) []float64) []float64 {
	t.Helper()
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	var list [2][]float64
	for i, sigma := range []float64{0.3, 0.3 * math.Sqrt2} {
		in := dullSheet(sigma, power, start, ahead, behind, aside)
		in.Near = near
		s, err := thinsheet.New(in)
		if err != nil {
			t.Fatal(err)
		}
		list[i] = run(s)
	}
	for i := range list[0] {
		list[0][i] = 2*list[0][i] - list[1][i]
	}
	return list[0]
}

func hold(s *thinsheet.Sheet, seconds, dt float64, on bool) {
	n := int(math.Round(seconds / dt))
	for range n {
		s.Step(seconds/float64(n), on)
	}
}
