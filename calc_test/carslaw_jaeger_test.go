package calc_test

import (
	"math"
	"testing"

	"brazebooth/calc/formula"
	"brazebooth/calc/thinsheet"
)

// Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed., chapter 10: sources in the plane (memory high).
// The figures were worked with an independent library; the half per cent is for the 0.1 mm cells of the
// program's plane.

// Continuous line source, 1000 W/mm, 3 mm away: −q/4πk·Ei(−r²/4at), then switched off.
func TestContinuousLine(t *testing.T) {
	got := line(t, 4, 1000, 0, 50, 50, 50, func(s *thinsheet.Sheet) []float64 {
		hold(s, 0.5, 0.005, true)
		half := s.At(0, 0, 3)
		hold(s, 0.5, 0.005, true)
		one := s.At(0, 0, 3)
		hold(s, 1, 0.01, false)
		return []float64{half, one, s.At(0, 0, 3)}
	})
	check(t, "half a second", got[0], 975.776507, 4)
	check(t, "one second", got[1], 1897.811042, 6)
	check(t, "one second on, one off", got[2], 1126.678987, 4)
}

// Instantaneous line source, 100 J/mm, 3 mm away: H/4πkt·exp(−r²/4at), with its peak at r²/4a. The program runs
// a burst of 2 ms, whose centre is 1 ms after its start.
func TestInstantaneousLine(t *testing.T) {
	got := line(t, 6, 50000, 0, 50, 50, 50, func(s *thinsheet.Sheet) []float64 {
		s.Step(0.002, true)
		hold(s, 0.28125-0.001, 0.004, false)
		peak := s.At(0, 0, 3)
		hold(s, 1-0.28125, 0.005, false)
		return []float64{peak, s.At(0, 0, 3)}
	})
	check(t, "at its peak", got[0], 260.221473, 1)
	check(t, "after a second", got[1], 150.170567, 0.7)
}

// Line source of 1000 W/mm pulsed half a second on, half off, 3 and 5 mm away: a sum of exponential integrals.
func TestPulsedLineSource(t *testing.T) {
	got := line(t, 6, 1000, 0, 70, 70, 70, func(s *thinsheet.Sheet) []float64 {
		var list []float64
		for range 6 {
			for _, on := range []bool{true, false} {
				hold(s, 0.5, 0.01, on)
				list = append(list, s.At(0, 0, 3), s.At(0, 0, 5))
			}
		}
		return list
	})
	for i, want := range map[int]float64{0: 975.776507, 2: 922.034535, 20: 2687.659399, 22: 2344.394128,
		1: 181.412548, 3: 457.900985, 21: 1519.044081, 23: 1639.173638} {
		check(t, at("%.1f s", float64(i/2+1)/2)+at(", %g mm", float64(3+2*(i%2))), got[i], want, 0.004*want)
	}
}

// On the line itself at the end of off after N cycles: q/4πk·ln[N!·Γ(φ)/Γ(N + φ)], where φ is the share of off.
// It is the mean of a harmonic series; the gamma function is the standard library's.
func TestPulsesOnTheLine(t *testing.T) {
	type after struct {
		n         int
		want, tol float64
	}
	for _, c := range []struct {
		on, off float64
		after   []after
	}{{0.5, 0.5, []after{{5, 2789.275363, 30}, {10, 3453.965250, 40}}}, {0.4, 0.6, []after{{5, 2120.365888, 25}}}} {
		got := line(t, 3, 1000, 0, 60, 60, 60, func(s *thinsheet.Sheet) (list []float64) {
			n := 0
			for _, x := range c.after {
				for ; n < x.n; n++ {
					hold(s, c.on, 0.01, true)
					hold(s, c.off, 0.01, false)
				}
				list = append(list, s.Centre())
			}
			return list
		})
		for i, x := range c.after {
			a, _ := math.Lgamma(float64(x.n) + 1)
			b, _ := math.Lgamma(c.off)
			d, _ := math.Lgamma(float64(x.n) + c.off)
			if closed := 1000 / (4 * math.Pi * 0.040) * (a + b - d); math.Abs(closed-x.want) > 1e-5 {
				t.Errorf("the closed form gives %.9g, not %.9g", closed, x.want)
			}
			check(t, at("%g on, in the plane", c.on)+at(" after %d", x.n), got[i], x.want, x.tol)
		}
	}
}

// Standing Gaussian source, σ 1.8 mm, 1000 W on 1 mm: its middle is at q/4πk·ln(1 + 2at/σ²).
func TestStandingGaussian(t *testing.T) {
	in := dullSheet(1.8, 1000, 0, 50, 50, 50)
	in.Cell, in.Near = 0.2, 8
	s, err := thinsheet.New(in)
	if err != nil {
		t.Fatal(err)
	}
	hold(s, 0.25, 0.005, true)
	check(t, "middle after .25 s", s.Centre(), 1599.602426, 0.002*2474)
	hold(s, 0.25, 0.005, true)
	check(t, "middle after .5 s", s.Centre(), 2474.671392, 0.002*2474)
	check(t, "3 mm away", s.At(0, 0, 3), 1161.013246, 0.002*2474)
	hold(s, 0.5, 0.005, false)
	check(t, "middle half a second after", s.Centre(), 1069.347342, 0.002*2474)
}

// Ch. 2.2: a rod that is hot over |x| < a and cold elsewhere. The mean over the hot length after a time t is
// T/T0 = erf(u) − (1 − exp(−u²))/(u·√π) with u = a/√(at), by integration of the printed erf solution. Half
// length 20 mm, diffusivity 8 mm2/s, 25 s; the half per cent is for the grid.
func TestHeatedRod(t *testing.T) {
	b := formula.Bar{Half: 20, Beyond: 200, K: 0.04, RhoC: 0.005, Area: 100, Surface: 0.1, Air: 0}
	if err := b.Start(0); err != nil {
		t.Fatal(err)
	}
	b.Run(1e-3, 2*20*100*0.005*100/1e-3, 1e9) // 100 K at once
	b.Run(25, 0, 1e9)
	u := 20 / math.Sqrt(8*25.0)
	want := 100 * (math.Erf(u) - (1-math.Exp(-u*u))/(u*math.Sqrt(math.Pi)))
	check(t, "mean, K", b.Mean(), want, 0.5)
}
