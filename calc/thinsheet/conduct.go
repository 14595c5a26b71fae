package thinsheet

// conduct puts dE/dt by conduction, W/mm2, of every cell into out.
func (s *Sheet) conduct(out []float64) {
	g := s.g
	nx := g.nx
	s.joint()
	for k := range s.in.Arms {
		fd := s.flux
		for i := range fd {
			fd[i] = 0
		}
		if !s.in.Mirror {
			// what the joint gives the first row comes from below: negative of a flux upward
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
				up = c // its face has no conductance
			}
			conductRow(out[c:c+nx], s.t[c:c+nx], s.t[up:up+nx], s.gx[c:c+nx], s.gy[c:c+nx], fd, g.ix, g.iy[j])
		}
	}
}

// conductRow is the hot loop: it computes the fluxes to the right and upward; those from the left and below are kept
// from the cells before. fd is the heat that flowed down across the row's lower face; it leaves with the upper one's.
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

// faces renews what the faces conduct and how long an explicit step may be.
func (s *Sheet) faces() {
	g := s.g
	nx := g.nx
	for k := range s.in.Arms {
		s.conductivity(k)
		for j := range g.ny {
			c := (k*g.ny + j) * nx
			kh := s.kh[c : c+nx]
			s.facesX(c, kh, g.dy[j])
			if j == 0 {
				for i := range kh {
					s.gj[k*nx+i] = kh[i] * 2 * g.dx[i] * g.iy[0]
				}
			}
			if j == g.ny-1 {
				continue
			}
			up := s.kh[c+nx : c+2*nx]
			gy := s.gy[c : c+nx]
			dy, du := g.dy[j], g.dy[j+1]
			for i := range gy {
				if d := kh[i]*du + up[i]*dy; d > 0 {
					gy[i] = 2 * kh[i] * up[i] * g.dx[i] / d
				} else {
					gy[i] = 0
				}
			}
		}
	}
	s.bound()
}

func (s *Sheet) facesX(c int, kh []float64, dy float64) {
	g := s.g
	gx := s.gx[c : c+g.nx]
	for i := 0; i < g.nx-1; i++ {
		if d := kh[i]*g.dx[i+1] + kh[i+1]*g.dx[i]; d > 0 {
			gx[i] = 2 * kh[i] * kh[i+1] * dy / d
		} else {
			gx[i] = 0
		}
	}
}

// conductivity renews κ of an arm's cells from their segment.
func (s *Sheet) conductivity(arm int) {
	p := &s.pair[arm]
	rb, rf := 1/s.in.Arms[arm].Base.Density, 1/s.in.Filler.Density
	n := s.g.ny * s.g.nx
	for c := arm * n; c < (arm+1)*n; c++ {
		q := s.seg[c]
		dt := max(s.t[c]-p.t[q], 0)
		s.kh[c] = (p.kb[q]+p.sb[q]*dt)*s.mb[c]*rb + (p.kf[q]+p.sf[q]*dt)*s.mf[c]*rf
	}
}

// bound finds the longest explicit step: one over the largest sum of a cell's conductances by its least heat
// capacity, which bounds the spectrum by Gershgorin's circles.
func (s *Sheet) bound() {
	g := s.g
	nx := g.nx
	worst := 0.0
	for k := range s.in.Arms {
		p := &s.pair[k]
		for j := range g.ny {
			c := (k*g.ny + j) * nx
			for i := range nx {
				q := s.seg[c]
				if heat := s.mb[c]*p.lb[q] + s.mf[c]*p.lf[q]; heat > 0 {
					sum := s.gx[c] + s.gy[c]
					if i > 0 {
						sum += s.gx[c-1]
					}
					if j > 0 {
						sum += s.gy[c-nx]
					} else if !s.in.Mirror {
						sum += s.gj[k*nx+i]
					}
					if w := sum * g.ix[i] * g.iy[j]; w > worst*heat {
						worst = w / heat
					}
				}
				c++
			}
		}
	}
	s.stable = 1 / max(worst, 1e-12)
}
