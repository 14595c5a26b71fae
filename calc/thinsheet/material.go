package thinsheet

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// ErrRange is wrapped by every error about an input for which the solver has no answer.
var ErrRange = errors.New("outside the model's range")

// Material is a metal as a table over temperature, linear between its points and extended with the last slope.
type Material struct {
	Density           float64   // g/mm3
	Solidus, Liquidus float64   // C; both must be in T
	T                 []float64 // C, rising, at least two
	H                 []float64 // enthalpy over 20 C, J/g, rising
	K                 []float64 // conductivity, W/mmK
}

// Plain is a material of constant specific heat c, J/gK, and conductivity k, W/mmK, that takes up its latent
// heat, J/g, evenly over its melting range.
func Plain(density, k, c, latent, solidus, liquidus float64) Material {
	t := []float64{20, solidus, liquidus, liquidus + 1000}
	h := []float64{0, c * (solidus - 20), c*(liquidus-20) + latent, c*(liquidus+980) + latent}
	return Material{Density: density, Solidus: solidus, Liquidus: liquidus, T: t, H: h, K: []float64{k, k, k, k}}
}

// Diffusivity is that of the cold material, mm2/s.
func (m *Material) Diffusivity() float64 {
	return m.K[0] * (m.T[1] - m.T[0]) / (m.Density * (m.H[1] - m.H[0]))
}

func (m *Material) check() error {
	n := len(m.T)
	if n < 2 || len(m.H) != n || len(m.K) != n || !(m.Density > 0) || !(m.Liquidus > m.Solidus) {
		return fmt.Errorf("%w: material of %d points, density %g, melting %g to %g", ErrRange, n, m.Density,
			m.Solidus, m.Liquidus)
	}
	for i := range n {
		if !(m.K[i] > 0) || i > 0 && !(m.T[i] > m.T[i-1] && m.H[i] > m.H[i-1]) {
			return fmt.Errorf("%w: material's point %d: %g C, %g J/g, %g W/mmK", ErrRange, i, m.T[i], m.H[i], m.K[i])
		}
	}
	if !slices.Contains(m.T, m.Solidus) || !slices.Contains(m.T, m.Liquidus) {
		return fmt.Errorf("%w: solidus %g or liquidus %g is no point of the table", ErrRange, m.Solidus, m.Liquidus)
	}
	return nil
}

// at returns enthalpy, J/g, and conductivity, W/mmK, at t. Outside the table the enthalpy continues with its
// first or last slope, and the conductivity is constant.
func (m *Material) at(t float64) (h, k float64) {
	i := 1
	for i < len(m.T)-1 && t > m.T[i] {
		i++
	}
	x := (t - m.T[i-1]) / (m.T[i] - m.T[i-1])
	h = m.H[i-1] + x*(m.H[i]-m.H[i-1])
	x = min(max(x, 0), 1)
	return h, m.K[i-1] + x*(m.K[i]-m.K[i-1])
}

// pair is base metal and filler over one list of temperatures, from which a cell's temperature is found.
type pair struct{ points []point }

// point is one temperature of both metals' tables.
type point struct {
	t      float64 // C
	hb, hf float64 // J/g
	cb, cf float64 // J/gK from this point to the next; the last continues
	kb, sb float64 // W/mmK at the point, and its slope
	kf, sf float64 // the same for the filler, including stirring
	lb, lf float64 // least specific heat from one segment below upward; it bounds a time step
}

// join merges two tables. Liquid filler conducts stir times as much, rising linearly over its melting range.
func join(base, filler *Material, stir float64) pair {
	list := append(slices.Clone(base.T), filler.T...)
	slices.Sort(list)
	list = slices.Compact(list)
	n := len(list)
	p := make([]point, n)
	for i, t := range list {
		hb, kb := base.at(t)
		hf, kf := filler.at(t)
		liquid := min(max((t-filler.Solidus)/(filler.Liquidus-filler.Solidus), 0), 1)
		p[i] = point{t: t, hb: hb, hf: hf, kb: kb, kf: kf * (1 + (stir-1)*liquid)}
	}
	for i := range n - 1 {
		a, b := &p[i], &p[i+1]
		d := b.t - a.t
		a.cb, a.cf, a.sb, a.sf = (b.hb-a.hb)/d, (b.hf-a.hf)/d, (b.kb-a.kb)/d, (b.kf-a.kf)/d
	}
	p[n-1].cb, p[n-1].cf = p[n-2].cb, p[n-2].cf
	lb, lf := math.Inf(1), math.Inf(1)
	for i := n - 1; i >= 0; i-- {
		below := &p[max(i-1, 0)]
		lb, lf = min(lb, p[i].cb, below.cb), min(lf, p[i].cf, below.cf)
		p[i].lb, p[i].lf = lb, lf
	}
	return pair{p}
}

// settle finds segment and temperature of cells whose metal or enthalpy was changed elsewhere.
func (s *Sheet) settle(from, to int) {
	n := s.g.ny * s.g.nx
	for k := range s.pair {
		p := s.pair[k].points
		for c := max(from, k*n); c < min(to, (k+1)*n); c++ {
			s.findIn(p, c, s.e[c])
			s.t[c] = s.a[c] + s.b[c]*s.e[c]
		}
	}
}

// find stores the segment of a cell's enthalpy e.
func (s *Sheet) find(c int, e float64) { s.findIn(s.pair[c/(s.g.ny*s.g.nx)].points, c, e) }

// findIn does the same with the table of the cell's arm. An empty cell keeps the starting temperature.
func (s *Sheet) findIn(p []point, c int, e float64) {
	mb, mf := s.mb[c], s.mf[c]
	if mb == 0 && mf == 0 {
		s.a[c], s.b[c], s.lo[c], s.hi[c], s.seg[c] = s.in.Start, 0, math.Inf(-1), math.Inf(1), 0
		return
	}
	q, last := int(s.seg[c]), len(p)-1
	at, above := mb*p[q].hb+mf*p[q].hf, math.Inf(1)
	if q < last {
		above = mb*p[q+1].hb + mf*p[q+1].hf
	}
	for q < last && e >= above {
		q, at, above = q+1, above, math.Inf(1)
		if q < last {
			above = mb*p[q+1].hb + mf*p[q+1].hf
		}
	}
	for q > 0 && e < at {
		q, above = q-1, at
		at = mb*p[q].hb + mf*p[q].hf
	}
	slope := 1 / (mb*p[q].cb + mf*p[q].cf)
	s.seg[c], s.b[c], s.a[c] = int32(q), slope, p[q].t-at*slope
	s.lo[c], s.hi[c] = at, above
	if q == 0 {
		s.lo[c] = math.Inf(-1)
	}
}
