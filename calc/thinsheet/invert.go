package thinsheet

import "math"

// invert renews the temperatures from the enthalpies.
func (s *Sheet) invert() {
	e, t, a, b, lo, hi := s.e, s.t, s.a, s.b, s.lo, s.hi
	n := len(e)
	t, a, b, lo, hi = t[:n], a[:n], b[:n], lo[:n], hi[:n]
	for i, v := range e {
		if v < lo[i] || v >= hi[i] {
			s.find(i)
		}
		t[i] = a[i] + b[i]*v
	}
}

// settle finds segment and temperature of cells whose metal or enthalpy was changed from outside.
func (s *Sheet) settle(from, to int) {
	for c := from; c < to; c++ {
		s.find(c)
		s.t[c] = s.a[c] + s.b[c]*s.e[c]
	}
}

// find puts the segment of a cell's enthalpy in place. An empty cell keeps the starting temperature.
func (s *Sheet) find(c int) {
	mb, mf, e := s.mb[c], s.mf[c], s.e[c]
	if mb == 0 && mf == 0 {
		s.a[c], s.b[c], s.lo[c], s.hi[c], s.seg[c] = s.in.Start, 0, math.Inf(-1), math.Inf(1), 0
		return
	}
	p := &s.pair[c/(s.g.ny*s.g.nx)]
	q := int(s.seg[c])
	last := len(p.t) - 1
	for q < last && e >= mb*p.hb[q+1]+mf*p.hf[q+1] {
		q++
	}
	for q > 0 && e < mb*p.hb[q]+mf*p.hf[q] {
		q--
	}
	at := mb*p.hb[q] + mf*p.hf[q]
	slope := 1 / (mb*p.cb[q] + mf*p.cf[q])
	s.seg[c], s.b[c], s.a[c] = int32(q), slope, p.t[q]-at*slope
	s.lo[c], s.hi[c] = at, math.Inf(1)
	if q == 0 {
		s.lo[c] = math.Inf(-1)
	}
	if q < last {
		s.hi[c] = mb*p.hb[q+1] + mf*p.hf[q+1]
	}
}
