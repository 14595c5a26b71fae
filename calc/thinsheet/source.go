package thinsheet

// give lets the faces lose heat and arc and filler arrive for dt seconds.
func (s *Sheet) give(dt float64, on bool) {
	s.lose(dt)
	s.arrive(dt, on)
}

// giveBack is give in reverse order: a step that reads the same from both ends is of second order.
func (s *Sheet) giveBack(dt float64, on bool) {
	s.arrive(dt, on)
	s.lose(dt)
}

// arrive lets arc and filler come, where the arc burns.
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

// aim finds which share of the Gaussian falls on each column.
func (s *Sheet) aim() {
	if s.arcFor == s.arcX {
		return
	}
	g := s.g
	sigma := s.in.Sigma // along the seam the spread is the arc's own; a slanted face widens it across only
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

// heat lets filler and arc arrive. The arc's own heat lands on metal only: its Gaussian is weighted by how much of
// the sheet's thickness is there, and gives its full power.
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

// lose takes what both faces give to the air, in proportion to the metal there, so that a film does not lose more
// than it holds; an empty cell loses nothing.
func (s *Sheet) lose(dt float64) {
	if s.in.Loss == 0 && s.in.Radiates == 0 {
		return
	}
	air := s.in.Start
	kelvin := air + 273.15
	still := kelvin * kelvin * kelvin * kelvin
	n := s.g.ny * s.g.nx
	sum := 0.0
	for k := range s.in.Arms {
		rb, full := 1/s.in.Arms[k].Base.Density, 1/s.in.Arms[k].Thick
		rf := 1 / s.in.Filler.Density
		for c := k * n; c < (k+1)*n; c++ {
			t := s.t[c]
			if t == air {
				continue
			}
			abs := t + 273.15
			sq := abs * abs
			cover := 2 * dt * min(1, (s.mb[c]*rb+s.mf[c]*rf)*full)
			q := cover * (s.in.Loss*(t-air) + s.in.Radiates*(sq*sq-still))
			q /= 1 + cover/2*s.b[c]*(s.in.Loss+4*s.in.Radiates*sq*abs) // as if from the middle of the step
			s.e[c] -= q
			sum += q * s.cell[c]
		}
	}
	s.lost += sum * s.sides()
	s.invert()
}
