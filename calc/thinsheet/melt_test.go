package thinsheet

import (
	"fmt"
	"math"
	"testing"

	"brazebooth/internal/deep"
)

// Temperatures of base and filler that share a cell, worked out by hand from the same segments.
func TestInversion(t *testing.T) {
	base := Plain(1, 1, 0.71, 260, 1470, 1520)
	filler := Plain(1, 1, 0.43, 210, 970, 1025)
	s, err := New(Input{Arms: []Arm{{Base: base, Thick: 1, Lit: true, Sigma: 1}}, Mirror: true, Filler: filler,
		Stir: 1, Sigma: 1, Start: 20})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ mb, mf, e, want float64 }{
		{0.010, 0.008, 5, 494.383302}, {0.010, 0.008, 11, 994.023100}, {0.010, 0.008, 14, 1188.880455},
		{0.010, 0.008, 18.5, 1494.576271}, {0.010, 0.008, 22, 1701.214421},
		{0, 0.0128, 8, 1020.962979}, {0.011775, 0, 14, 1496.981330},
	} {
		s.mb[0], s.mf[0], s.e[0] = c.mb, c.mf, c.e
		s.settle(0, 1)
		if math.Abs(s.t[0]-c.want) > 1e-5 {
			t.Errorf("%g + %g g/mm2 with %g J/mm2: %.6f C, want %.6f", c.mb, c.mf, c.e, s.t[0], c.want)
		}
	}
}

// One phase of Stefan's problem: metal at its melting point, its face held hotter, St = c·ΔT/L. The front moves
// as 2λ√(at); λ·exp(λ²)·erf λ = St/√π. Carslaw and Jaeger 11.2, memory high; λ worked out by hand.
func TestStefan(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	for _, c := range []struct{ st, lambda float64 }{{0.1, 0.22001627}, {0.5, 0.46478592}, {1, 0.62006263}} {
		const heat = 0.0043 // J/mm3K
		rise := 400.0
		latent := heat * rise / c.st
		// at the melting point, a hundredth of a kelvin wide
		m := Plain(1, 0.05, heat, latent, 1000, 1000.01)
		front := frozenWall(t, m, 999.999, 1000.01+rise, 1000.005, 1)
		want := 2 * c.lambda * math.Sqrt(0.05/heat*1)
		near(t, fmt.Sprintf("St %g front", c.st), front, want, 0.02)
	}
}

// frozenWall holds the joint's line at wall for a time and returns how far from it the temperature passes a
// level.
func frozenWall(t *testing.T, m Material, start, wall, level, time float64) float64 {
	t.Helper()
	s := wallSheet(m, start)
	holdWall(s, wall, time)
	for j := 1; j < s.g.ny; j++ {
		a, b := s.t[s.index(0, j-1, 3)], s.t[s.index(0, j, 3)]
		if (a-level)*(b-level) <= 0 && a != b {
			return s.g.yc[j-1] + (s.g.yc[j]-s.g.yc[j-1])*(a-level)/(a-b)
		}
	}
	t.Fatal("the front is nowhere")
	return 0
}

// strip is a sheet of six equal columns: one dimension, rows of side d up to a distance.
func strip(in Input, d, far float64) *Sheet {
	g := &grid{d: 1, xf: []float64{-3, -2, -1, 0, 1, 2, 3}}
	for j := 0; float64(j)*d < far+d/2; j++ {
		g.yf = append(g.yf, float64(j)*d)
	}
	g.xc, g.dx, g.ix = middles(g.xf)
	g.yc, g.dy, g.iy = middles(g.yf)
	g.nx, g.ny = len(g.dx), len(g.dy)
	return lay(in, g)
}

func wallSheet(m Material, start float64) *Sheet {
	return strip(Input{Arms: []Arm{{Base: m, Thick: 1, Lit: true, Sigma: 1}}, Mirror: true, Filler: bronze(), Stir: 1,
		Sigma: 1,
		Start: start}, 0.05, 9)
}

// holdWall holds the first face of every column at a temperature.
func holdWall(s *Sheet, wall, time float64) {
	g := s.g
	end := s.now + time
	for s.now < end {
		s.faces()
		// a half cell at the wall conducts twice as well, which needs shorter steps
		dt := min(s.stable/2, end-s.now)
		s.conduct(s.rate, func(int, int) {})
		for i := range g.nx {
			s.rate[i] += s.kh[i] * 2 * g.iy[0] * (wall - s.t[i]) * g.iy[0]
		}
		for c := range s.e {
			s.e[c] += dt * s.rate[c]
		}
		s.invert()
		s.now += dt
	}
}

// A melt that freezes over a range, with the heat of melting spread evenly over it: two diffusivities, one
// front. CuSi3, 0.036 W/mmK, from 1025 C with its face at 600; front and temperature worked out by hand.
func TestFreezingRange(t *testing.T) {
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	s := wallSheet(Plain(8.53e-3, 0.036, 0.43, 210, 970, 1025), 1025)
	holdWall(s, 600, 0.5)
	near(t, "solidus at the front", s.At(0, 0, 2.208522), 970, 0.001)
	near(t, "half way", s.At(0, 0, 1.104261), 796.359362, 0.001)
}

// An insulated strip of ±20 mm with 100 J per mm² of section laid on the line in its middle: images; worked by
// hand.
func TestStrip(t *testing.T) {
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	s := strip(dryInput(0.3, 0.1, 10), 0.1, 20)
	g := s.g
	for i := range g.nx {
		s.e[i] += 50 / g.dy[0] // half of it on each side
	}
	s.settle(0, len(s.e))
	march(s, 2, 0.002, false)
	near(t, "y 5, 2 s", s.At(0, 0, 5), 954.374427, 0.004)
	march(s, 8, 0.01, false)
	near(t, "y 15, 10 s", s.At(0, 0, 15), 401.775009, 0.01)
}

// A sheet that only loses heat from its faces cools as exp(−t/τ), τ = ρcd/2h.
func TestLossTau(t *testing.T) {
	in := dryInput(1, 0.5, 10)
	in.Loss, in.Start = 50e-6, 0
	s := strip(in, 0.5, 10)
	for c := range s.e {
		s.e[c] += 100 * 0.005
	}
	s.settle(0, len(s.e))
	march(s, 10, 0.01, false)
	near(t, "after 10 s", s.At(0, 0, 3), 100*math.Exp(-10*2*50e-6/0.005), 2e-5)
}
