package thinsheet

import (
	"fmt"
	"math"
	"testing"
)

// The closed forms are worked independently of this code, k 0.040 W/mmK, ρc 0.0050 J/mm3K, a 8 mm2/s, in
// an unbounded sheet. Rises in K.
const (
	k0, rc0 = 0.040, 0.005
)

// dull is a metal of constants that never melts, at 0 C.
func dull() Material {
	return Plain(0.005, k0, 1, 0, 8000, 8001) // 0.005 g/mm3 times 1 J/gK
}

func dry(sigma, cell, far float64) Input {
	return Input{Arms: []Arm{{Base: dull(), Thick: 1, Lit: true, Sigma: sigma}}, Mirror: true,
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

// Gaussian source at rest: centre q/4πk·ln(1+2at/σ²); source: Carslaw and Jaeger, memory high; worked.
func TestGaussianCentre(t *testing.T) {
	in := dry(1.8, 0.25, 60)
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

// toLine runs a thing under two narrow Gaussians and carries its figures on to no width at all: for
// r well beyond σ they are linear in σ².
func toLine(t *testing.T, far float64, alter func(*Input), run func(*Sheet) []float64) []float64 {
	t.Helper()
	var list [2][]float64
	for i, sigma := range []float64{0.3, 0.3 * math.Sqrt2} {
		in := dry(sigma, 0.1, far)
		in.Near = 6
		alter(&in)
		s, err := New(in)
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

// Line source, r 3 mm: 100 J/mm at once, and 1000 W/mm lasting, then off; worked.
func TestLineSources(t *testing.T) {
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	got := toLine(t, 50, func(in *Input) { in.Power = 1000 }, func(s *Sheet) []float64 {
		march(s, 0.5, 0.005, true)
		half := s.At(0, 0, 3)
		march(s, 0.5, 0.005, true)
		one := s.At(0, 0, 3)
		march(s, 1, 0.01, false)
		return []float64{half, one, s.At(0, 0, 3)}
	})
	for i, want := range []float64{975.776507, 1897.811042, 1126.678987} {
		near(t, "lasting .5 s, 1 s, 1 s after", got[i], want, 0.003)
	}
	got = toLine(t, 50, func(in *Input) { in.Power = 50000 }, func(s *Sheet) []float64 {
		s.give(2e-3, true) // 100 J/mm
		march(s, 0.28125, 0.005, false)
		peak := s.At(0, 3, 0)
		march(s, 1-0.28125, 0.005, false)
		return []float64{peak, s.At(0, 3, 0)}
	})
	near(t, "at once, .28125 s", got[0], 260.221473, 0.003)
	near(t, "at once, 1 s", got[1], 150.170567, 0.003)
}

// A pulsed line source, .5 s on and .5 s off; worked.
func TestPulsedLine(t *testing.T) {
	if testing.Short() {
		t.Skip("long")
	}
	got := toLine(t, 70, func(in *Input) { in.Power = 1000 }, func(s *Sheet) []float64 {
		var list []float64
		take := func() { list = append(list, s.At(0, 0, 3), s.At(0, 0, 5)) }
		for range 6 {
			march(s, 0.5, 0.01, true)
			take()
			march(s, 0.5, 0.01, false)
			take()
		}
		return list
	})
	for i, want := range map[int]float64{0: 975.776507, 2: 922.034535, 20: 2687.659399, 22: 2344.394128,
		1: 181.412548, 3: 457.900985, 21: 1519.044081, 23: 1639.173638} {
		near(t, fmt.Sprintf("figure %d", i), got[i], want, 0.004)
	}
}

// Rosenthal's thin plate, q 1000 W, v 8 mm/s, 1 mm, from 20 C; worked with Bessel functions.
func TestRosenthalThin(t *testing.T) {
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	points := []struct{ x, y, want float64 }{{0, 2, 1695.203013}, {-5, 2, 2428.391866}, {-20, 0, 1578.253956}, {3, 0, 209.818011}}
	got := toLine(t, 0, func(in *Input) {
		in.Power, in.Start, in.Ahead, in.Behind, in.Aside = 1000, 20, 12, 70, 40
	}, func(s *Sheet) []float64 {
		s.Travel(8, 8, 0.005, nil)
		var list []float64
		for _, c := range points {
			list = append(list, s.At(0, c.x, c.y)-20)
		}
		return list
	})
	for i, c := range points {
		near(t, fmt.Sprintf("%g, %g", c.x, c.y), got[i], c.want-20, 0.015)
	}
}
