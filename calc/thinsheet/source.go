package thinsheet

// arrive adds the heat of the arc and the filler while the arc burns.
func (s *Sheet) arrive(dt float64, on bool) {
	if !on {
		return
	}
	s.aim()
	s.heat(dt)
	for _, r := range s.lit {
		s.settle(r.row*s.g.nx+s.col0, r.row*s.g.nx+s.col1)
	}
}

// aim finds the share of the Gaussian on each column.
func (s *Sheet) aim() {
	if s.arcFor == s.arcX {
		return
	}
	g := s.g
	sigma := s.in.Sigma // a slanted face widens the arc across the seam, not along it
	s.arcFor = s.arcX
	s.col0, s.col1 = g.nx, 0
	sum := 0.0
	for i := range g.nx {
		s.fx[i] = 0
		if g.xf[i+1] < s.arcX-4.5*sigma || g.xf[i] > s.arcX+4.5*sigma {
			continue
		}
		s.col0, s.col1 = min(s.col0, i), i+1
		s.fx[i] = normal(g.xf[i]-s.arcX, g.xf[i+1]-s.arcX, sigma)
		sum += s.fx[i]
	}
	for i := s.col0; i < s.col1; i++ {
		s.fx[i] /= sum
	}
}

// heat adds filler and heat. The arc's own heat lands on metal only: its Gaussian is weighted by the share of
// the sheet's thickness that is there, and scaled to its full power.
func (s *Sheet) heat(dt float64) {
	sum := s.landing()
	if !(sum > 0) {
		return // nothing to land on: an open gap wider than the arc
	}
	half := 1 / s.sides()
	mass := s.in.Feed * dt * half
	arc := (s.in.Power - s.in.Feed*s.in.Droplet) * dt * half / sum
	for _, r := range s.lit {
		c := r.row * s.g.nx
		for i := s.col0; i < s.col1; i++ {
			f := r.share * s.fx[i]
			dm := mass * f / s.cell[c+i]
			heat := arc*s.spare[c+i]/s.cell[c+i] + dm*s.in.Droplet
			s.mf[c+i] += dm
			s.e[c+i] += heat
		}
	}
	s.laid += s.in.Feed * dt
	s.added += s.in.Power * dt
}

// landing weights the arc's shares by the metal there, puts them into spare and returns their sum.
func (s *Sheet) landing() float64 {
	rf := 1 / s.in.Filler.Density
	sum := 0.0
	for _, r := range s.lit {
		arm := r.row / s.g.ny
		rb, full := 1/s.in.Arms[arm].Base.Density, 1/s.in.Arms[arm].Thick
		c := r.row * s.g.nx
		for i := s.col0; i < s.col1; i++ {
			thick := (s.mb[c+i]*rb + s.mf[c+i]*rf) * full
			w := r.share * s.fx[i] * min(1, thick)
			s.spare[c+i] = w
			sum += w
		}
	}
	return sum
}

// lose removes the heat that both faces lose to the air, in proportion to the metal there, so that a film does
// not lose more than it holds; an empty cell loses nothing.
func (s *Sheet) lose(dt float64) {
	if s.in.Loss == 0 && s.in.Radiates == 0 {
		return
	}
	n := s.g.ny * s.g.nx
	sum := 0.0
	for k := range s.in.Arms {
		sum += s.loseArm(k, k*n, (k+1)*n, dt)
	}
	s.lost += sum * s.sides()
}

// loseArm does this for the cells of an arm and returns the heat, J, of the half that is computed.
func (s *Sheet) loseArm(k, from, to int, dt float64) (sum float64) {
	in := &s.in
	air := in.Start
	kelvin := air + 273.15
	still := kelvin * kelvin * kelvin * kelvin
	rb, rf := 1/(in.Arms[k].Base.Density*in.Arms[k].Thick), 1/(in.Filler.Density*in.Arms[k].Thick)
	e := s.e[from:to]
	n := len(e)
	t, mb, mf, cell := s.t[from:to][:n], s.mb[from:to][:n], s.mf[from:to][:n], s.cell[from:to][:n]
	a, b, lo, hi := s.a[from:to][:n], s.b[from:to][:n], s.lo[from:to][:n], s.hi[from:to][:n]
	for i, here := range t {
		if here == air {
			continue
		}
		abs := here + 273.15
		sq := abs * abs
		cover := mb[i]*rb + mf[i]*rf
		if cover > 1 {
			cover = 1
		}
		cover *= dt
		q := 2 * cover * (in.Loss*(here-air) + in.Radiates*(sq*sq-still))
		q /= 1 + cover*b[i]*(in.Loss+4*in.Radiates*sq*abs) // as if evaluated in the middle of the step
		v := e[i] - q
		e[i] = v
		sum += q * cell[i]
		if v < lo[i] || v >= hi[i] {
			s.find(from+i, v)
		}
		t[i] = a[i] + b[i]*v
	}
	return sum
}
