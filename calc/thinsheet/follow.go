package thinsheet

import "math"

// Advance moves the arc along the seam. The grid's window follows by whole cells, so that nothing is smeared
// where cells are uniform; heat and filler that leave it at the rear are counted.
func (s *Sheet) Advance(by float64) {
	s.arcX += by
	n := int(math.Floor(s.arcX/s.g.d + 0.5))
	if n <= 0 {
		return
	}
	shift := float64(n) * s.g.d
	s.arcX -= shift
	s.moved += shift
	s.shift(shift)
}

// shift carries every row's content backward by a distance, conserving it.
func (s *Sheet) shift(by float64) {
	g := s.g
	energy, filler := s.Energy(), s.Filler()
	for r := range s.rows {
		c := r * g.nx
		arm := r / g.ny
		fresh := 0.0 // content of the cells that enter ahead, J/mm2
		if s.mb[c] > 0 {
			h, _ := s.in.Arms[arm].Base.at(s.in.Start)
			fresh = s.mb[c] * h
		}
		s.carry(s.e[c:c+g.nx], by, fresh)
		s.carry(s.mf[c:c+g.nx], by, 0)
	}
	s.left += energy - s.Energy()
	s.gone += filler - s.Filler()
	s.settle(0, len(s.e))
}

// carry writes into each cell the mean of the content that lay a distance ahead of it.
func (s *Sheet) carry(v []float64, by, fresh float64) {
	g := s.g
	old := s.flux[:g.nx]
	copy(old, v)
	k := 0
	for i := range v {
		from, to := g.xf[i]+by, g.xf[i+1]+by
		for k < g.nx && g.xf[k+1] <= from+1e-9*g.d {
			k++
		}
		if k < g.nx && math.Abs(g.xf[k]-from) < 1e-9*g.d && math.Abs(g.xf[k+1]-to) < 1e-9*g.d {
			v[i] = old[k] // a whole cell: exact
			continue
		}
		sum := 0.0
		for m := k; m < g.nx && g.xf[m] < to; m++ {
			sum += old[m] * (min(g.xf[m+1], to) - max(g.xf[m], from))
		}
		if end := g.xf[g.nx]; to > end {
			sum += fresh * (to - max(end, from))
		}
		v[i] = sum * g.ix[i]
	}
}

// Travel moves a burning arc at a speed, mm/s, for a time, in steps of at most dt. stop, if not nil, is called
// now and then; Travel reports whether it was not stopped.
func (s *Sheet) Travel(speed, time, dt float64, stop func() bool) bool {
	n := int(time/dt + 0.999999)
	dt = time / float64(n)
	for k := range n {
		if stop != nil && k%16 == 0 && stop() {
			return false
		}
		s.Advance(speed * dt / 2)
		s.Step(dt, true)
		s.Advance(speed * dt / 2)
	}
	return true
}

// Clone is an independent copy.
func (s *Sheet) Clone() *Sheet {
	c := *s
	for _, f := range []*[]float64{&c.e, &c.mb, &c.mf, &c.t, &c.a, &c.b, &c.lo, &c.hi, &c.kh, &c.gx, &c.gy, &c.gj,
		&c.rate, &c.rate0, &c.old, &c.e0, &c.spare, &c.flux, &c.jt, &c.fx} {
		*f = append([]float64(nil), *f...)
	}
	c.seg = append([]int32(nil), c.seg...)
	return &c
}
