package thinsheet

// conduct writes dE/dt by conduction, W/mm2, of every cell into out. Once a row is known, after is called with
// its range of cells; it may change their temperatures, because no later row needs them.
func (s *Sheet) conduct(out []float64, after func(from, to int)) {
	g := s.g
	nx := g.nx
	s.joint()
	for k := range s.in.Arms {
		fd := s.flux
		for i := range fd {
			fd[i] = 0
		}
		if !s.in.Mirror {
			// the joint's heat enters the first row from below: the negative of an upward flux
			t := s.t[k*g.ny*nx:][:nx]
			gj := s.gj[k*nx:][:nx]
			for i := range fd {
				fd[i] = gj[i] * (t[i] - s.jt[i])
			}
		}
		for j := range g.ny {
			c := (k*g.ny + j) * nx
			up := c + nx
			if j == g.ny-1 {
				up = c // the last row's upper face has no conductance
			}
			conductRow(out[c:c+nx], s.t[c:c+nx], s.t[up:up+nx], s.gx[c:c+nx], s.gy[c:c+nx], fd, g.ix, g.iy[j])
			after(c, c+nx)
		}
	}
}

// conductRow is the hot loop: it computes the fluxes to the right and upward; those from the left and from
// below are kept from the cells before. fd holds the fluxes across the row's lower faces, and on return those
// across its upper ones.
func conductRow(out, t, up, gx, gy, fd, ix []float64, iy float64) {
	n := len(t) - 1
	if n < 0 {
		return
	}
	out, up, gx, gy, fd, ix = out[:n+1], up[:n+1], gx[:n+1], gy[:n+1], fd[:n+1], ix[:n+1]
	fl, here := 0.0, t[0]
	for i := 0; i < n; i++ {
		next := t[i+1]
		fr := gx[i] * (next - here)
		fu := gy[i] * (up[i] - here)
		out[i] = (fr - fl + fu - fd[i]) * (ix[i] * iy)
		fd[i] = fu
		fl, here = fr, next
	}
	fu := gy[n] * (up[n] - here)
	out[n] = (fu - fl - fd[n]) * (ix[n] * iy)
	fd[n] = fu
}

// joint finds the temperature of the line where the arms meet; the line has no heat capacity.
func (s *Sheet) joint() {
	if s.in.Mirror {
		return
	}
	nx, ny := s.g.nx, s.g.ny
	for i := range nx {
		sum, heat := 0.0, 0.0
		for k := range s.in.Arms {
			g := s.gj[k*nx+i]
			sum += g
			heat += g * s.t[k*ny*nx+i]
		}
		if sum > 0 {
			s.jt[i] = heat / sum
		} else {
			s.jt[i] = s.in.Start
		}
	}
}

// faces renews the conductances of the faces and the longest explicit step: one over the largest sum of a cell's
// conductances over its least heat capacity, which bounds the spectrum by Gershgorin's circles.
func (s *Sheet) faces() {
	g := s.g
	nx := g.nx
	worst := 0.0
	for k := range s.in.Arms {
		c := k * g.ny * nx
		s.metal(k, c, c+nx)
		below := s.gj[k*nx : (k+1)*nx]
		for i := range below {
			below[i] = s.kh[c+i] * 2 * g.dx[i] * g.iy[0]
		}
		if s.in.Mirror {
			below = s.flux[:nx]
			clear(below)
		}
		for j := range g.ny {
			up, du := c, 0.0
			if j < g.ny-1 {
				up, du = c+nx, g.dy[j+1]
				s.metal(k, up, up+nx)
			}
			worst = s.faceRow(c, up, g.dy[j], du, g.iy[j], below, worst)
			below = s.gy[c : c+nx]
			c += nx
		}
	}
	s.stable = 1 / max(worst, 1e-12)
}

// faceRow renews the faces to the right of and above a row's cells, as harmonic means, and returns the largest
// sum of conductances over heat capacity so far. du is the height of the row above, 0 for the last row.
func (s *Sheet) faceRow(c, up int, dy, du, iy float64, below []float64, worst float64) float64 {
	nx := s.g.nx
	dx, ix := s.g.dx[:nx], s.g.ix[:nx]
	kh, ku, below, least := s.kh[c:][:nx], s.kh[up:][:nx], below[:nx], s.spare[c:][:nx]
	gx, gy := s.gx[c:][:nx], s.gy[c:][:nx]
	left := 0.0
	for i, k := range kh {
		right, over := 0.0, 0.0
		if i < nx-1 {
			if d := k*dx[i+1] + kh[i+1]*dx[i]; d > 0 {
				right = 2 * k * kh[i+1] * dy / d
			}
		}
		if d := k*du + ku[i]*dy; d > 0 && du > 0 {
			over = 2 * k * ku[i] * dx[i] / d
		}
		if w := (right + left + over + below[i]) * ix[i] * iy; least[i] > 0 && w > worst*least[i] {
			worst = w / least[i]
		}
		gx[i], gy[i] = right, over
		left = right
	}
	return worst
}

// metal renews κ of a row's cells from their segments, and puts their least heat capacities, J/mm2K, into
// spare.
func (s *Sheet) metal(arm, from, to int) {
	points := s.pair[arm].points
	rb, rf := 1/s.in.Arms[arm].Base.Density, 1/s.in.Filler.Density
	seg := s.seg[from:to]
	n := len(seg)
	t, mb, mf := s.t[from:to][:n], s.mb[from:to][:n], s.mf[from:to][:n]
	kh, least := s.kh[from:to][:n], s.spare[from:to][:n]
	for i, q := range seg {
		p := &points[q]
		dt := t[i] - p.t
		if dt < 0 {
			dt = 0
		}
		kh[i] = (p.kb+p.sb*dt)*mb[i]*rb + (p.kf+p.sf*dt)*mf[i]*rf
		least[i] = mb[i]*p.lb + mf[i]*p.lf
	}
}
