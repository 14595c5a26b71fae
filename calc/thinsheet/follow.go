package thinsheet

import "math"

// Advance moves the arc along the seam. The grid's window follows by whole cells, so that nothing smears where cells
// are uniform; what leaves it behind is counted.
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
		fresh := 0.0 // what comes in ahead, J/mm2
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

// carry writes into each cell the mean of what lay a distance ahead of it.
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
			v[i] = old[k] // whole cell: exact
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
