package thinsheet

// Travel carries a burning arc along at a speed, mm/s, for a time, in steps of at most dt. stop, if not nil, is asked
// now and then; Travel reports whether it came to the end.
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
