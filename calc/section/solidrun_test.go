package section

import "math"

// run lets the arc travel for some seconds in steps of dt.
func (s *solid) run(seconds, dt float64) {
	for range int(seconds / dt) {
		s.shift()
		total := 0.0
		for i := range s.along {
			x := (float64(i)+1.5)*s.slabs[0].dx - s.ahead + s.moved // positive behind the arc
			s.along[i] = math.Exp(-x * x / (2 * s.in.Sigma * s.in.Sigma))
			total += s.along[i]
		}
		for i := range s.along {
			s.along[i] /= total
		}
		for _, p := range s.slabs {
			p.temperatures(&s.filler)
		}
		for _, p := range s.slabs {
			s.conduct(p)
		}
		if len(s.slabs) == 2 {
			s.join()
		}
		for _, p := range s.slabs {
			s.pour(p, dt)
			for c := range p.e {
				p.e[c] += p.q[c] * dt
			}
		}
		s.moved += s.in.Travel * dt
	}
	for _, p := range s.slabs {
		p.temperatures(&s.filler)
	}
}

// shift moves the window by whole cells: x grows backward, and the cells that enter at the front are cold.
func (s *solid) shift() {
	for s.moved >= 0 {
		s.moved -= s.slabs[0].dx
		for _, p := range s.slabs {
			n := p.ny * p.nz
			copy(p.e[n:], p.e)
			copy(p.t[n:], p.t)
			copy(p.filler[p.ny:], p.filler)
			clear(p.filler[:p.ny])
			for c := range n {
				p.start(c, s.in.Start)
			}
		}
	}
}

func (p *slab) temperatures(filler *curve) {
	for c := range p.e {
		metal := 0.0
		if c%p.nz == 0 {
			metal = p.filler[c/p.nz] * p.dx * p.dy[c/p.nz%p.ny]
		}
		p.t[c], _ = invert(p.e[c], p.t[c], p.volume(c), metal, &p.base, filler)
		p.k[c] = p.base.conductivity(p.t[c])
		p.q[c] = 0
	}
}

// conduct adds up the flows between neighbours and from the faces.
func (s *solid) conduct(p *slab) {
	flow := func(a, b int, g float64) {
		f := g * (p.t[a] - p.t[b])
		p.q[a] -= f
		p.q[b] += f
	}
	bead := func(a, b int) float64 { // conductivity by mean height between two columns
		h := p.filler[a] * p.filler[b]
		if h == 0 {
			return 0
		}
		return s.w.fillerConductivity((p.t[a*p.nz]+p.t[b*p.nz])/2) * 2 * h / (p.filler[a] + p.filler[b])
	}
	for i := range p.nx {
		for j := range p.ny {
			col := i*p.ny + j
			c := col * p.nz
			air := s.in.Loss * p.dx * p.dy[j]
			p.q[c] -= air * (p.t[c] - s.in.Start)
			p.q[c+p.nz-1] -= air * (p.t[c+p.nz-1] - s.in.Start)
			onX, onY := 0.0, 0.0
			if i+1 < p.nx {
				onX = bead(col, col+p.ny)
			}
			if j+1 < p.ny {
				onY = bead(col, col+1)
			}
			for l := range p.nz {
				a := c + l
				if i+1 < p.nx {
					b := a + p.ny*p.nz
					flow(a, b, ((p.k[a]+p.k[b])/2*p.dz[l]+onX)*p.dy[j]/p.dx)
				}
				if j+1 < p.ny {
					b := a + p.nz
					flow(a, b, ((p.k[a]+p.k[b])/2*p.dz[l]+onY)*p.dx/((p.dy[j]+p.dy[j+1])/2))
				}
				if l+1 < p.nz {
					flow(a, a+1, (p.k[a]+p.k[a+1])/2*p.dx*p.dy[j]/((p.dz[l]+p.dz[l+1])/2))
				}
				onX, onY = 0, 0
			}
		}
	}
}

// join connects a lap's upper sheet to the filler on the lower one that touches its edge.
func (s *solid) join() {
	p, u := s.slabs[0], s.slabs[1]
	for i := range p.nx {
		pc, uc := (i*p.ny+s.row)*p.nz, i*u.ny*u.nz
		high := p.filler[i*p.ny+s.row]
		kf := s.w.fillerConductivity((p.t[pc] + u.t[uc]) / 2)
		below := 0.0
		for l := u.nz - 1; l >= 0; l-- {
			g := 0.0
			if wet := min(high-below, u.dz[l]); wet > 0 {
				g = wet / (u.dy[0]/2/u.k[uc+l] + p.dy[s.row]/2/kf)
			}
			if l == 0 {
				g += kf * max(0, min(u.filler[i*u.ny], high-s.in.Thick[0])) / (u.dy[0]/2 + p.dy[s.row]/2)
			}
			f := g * p.dx * (u.t[uc+l] - p.t[pc])
			u.q[uc+l] -= f
			p.q[pc] += f
			below += u.dz[l]
		}
	}
}

// pour lays the metal and the heat of one step.
func (s *solid) pour(p *slab, dt float64) {
	for i, along := range s.along {
		if along < 1e-9 {
			continue
		}
		for j, share := range p.share {
			col := i*p.ny + j
			metal := s.in.Bead * s.in.Travel * dt * along * share
			p.filler[col] += metal / (p.dx * p.dy[j])
			p.e[col*p.nz] += s.in.Heat * s.in.Travel * dt * along * share
		}
	}
}

// peaks are the highest temperatures of a layer at each y: in a steady field, the highest along x, on a
// parabola through three cells.
func (p *slab) peaks(layer int) (peak []float64) {
	for j := range p.ny {
		t := func(i int) float64 { return p.t[(i*p.ny+j)*p.nz+layer] }
		hot := 1
		for i := range p.nx - 1 {
			if i > 0 && t(i) > t(hot) {
				hot = i
			}
		}
		slope, bend := t(hot+1)-t(hot-1), t(hot+1)-2*t(hot)+t(hot-1)
		most := t(hot)
		if bend < 0 {
			most -= slope * slope / (8 * bend)
		}
		peak = append(peak, most)
	}
	return peak
}

// reach is how far out a falling row of peaks reaches a temperature, starting at a column.
func reach(y, peak []float64, from int, level float64) float64 {
	for j := len(peak) - 2; j >= from; j-- {
		if peak[j] >= level {
			return y[j] + (peak[j]-level)/(peak[j]-peak[j+1])*(y[j+1]-y[j])
		}
	}
	return 0
}

// conductivity at t, W/mmK.
func (m *curve) conductivity(t float64) float64 {
	if !m.steel {
		return m.k
	}
	return SteelConductivity(t, m.k)
}
