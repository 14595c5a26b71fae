package thinsheet

import (
	"math"
	"testing"
)

// More closed forms of sources are in calc_test. These were worked out independently of this code, with k 0.040
// W/mmK, ρc 0.0050 J/mm3K, a 8 mm2/s, in an unbounded sheet. Rises in K.
const (
	k0, rc0 = 0.040, 0.005
)

// constantMetal is a metal with constant properties that never melts, at 0 C.
func constantMetal() Material {
	return Plain(0.005, k0, 1, 0, 8000, 8001) // 0.005 g/mm3 times 1 J/gK
}

func dryInput(sigma, cell, far float64) Input {
	return Input{Arms: []Arm{{Base: constantMetal(), Thick: 1, Lit: true, Sigma: sigma}}, Mirror: true,
		Filler: Plain(0.0085, 0.05, 0.4, 200, 970, 1025), Stir: 2, Sigma: sigma,
		Start: 0, Cell: cell, Ahead: far, Behind: far, Aside: far}
}

func near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s: %.6f, want %.6f within %.2g %%: off by %.2f %%", what, got, want, rel*100, 100*(got/want-1))
	}
}

func march(s *Sheet, time, dt float64, on bool) {
	n := int(math.Round(time / dt))
	for range n {
		s.Step(time/float64(n), on)
	}
}

// Gaussian source at rest: centre q/4πk·ln(1+2at/σ²); source: Carslaw and Jaeger, memory high; worked by hand.
func TestGaussianCentre(t *testing.T) {
	in := dryInput(1.8, 0.25, 60)
	in.Power = 1000
	s, err := New(in)
	if err != nil {
		t.Fatal(err)
	}
	march(s, 0.25, 0.005, true)
	near(t, "centre at .25 s", s.At(0, 0, 0), 1599.602426, 0.004)
	march(s, 0.25, 0.005, true)
	near(t, "centre at .5 s", s.At(0, 0, 0), 2474.671392, 0.004)
	near(t, "3 mm aside at .5 s", s.At(0, 0, 3), 1161.013246, 0.004)
	march(s, 0.5, 0.005, false)
	near(t, "centre .5 s after", s.At(0, 0, 0), 1069.347342, 0.004)
}
