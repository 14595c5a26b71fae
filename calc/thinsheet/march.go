package thinsheet

import "math"

// flow lets heat flow for dt seconds with the present faces, in one step of second order: two stages where an
// explicit step would be enough, otherwise an odd number of them, which keeps temperatures from overshooting.
func (s *Sheet) flow(dt float64) {
	n := dt / s.stable
	s.stages = 2
	if n > 1 {
		s.stages = int(math.Ceil((math.Sqrt(9+16*n) - 1) / 2))
		s.stages += 1 - s.stages%2
	}
	s.legendre(dt, s.stages)
	if s.in.count != nil {
		s.in.count.Add(int64(len(s.e) * s.stages))
	}
}

// legendre is one super-time-step of second order in two stages or more: stable up to a quarter of stages² +
// stages − 2 explicit steps. Source: Meyer, Balsara and Aslam, J. Comput. Phys. 257 (2014) 594, eqs. 16 to 20,
// memory high.
func (s *Sheet) legendre(dt float64, stages int) {
	weight := func(j int) float64 {
		if j < 2 {
			j = 2
		}
		x := float64(j)
		return (x*x + x - 2) / (2 * x * (x + 1))
	}
	w := 4 / (float64(stages)*float64(stages) + float64(stages) - 2)
	first := weight(1) * w * dt
	s.conduct(s.rate0, func(from, to int) { s.begin(from, to, first) })
	for j := 2; j <= stages; j++ {
		x := float64(j)
		mu := (2*x - 1) / x * weight(j) / weight(j-1)
		nu := -(x - 1) / x * weight(j) / weight(j-2)
		ahead, start := mu*w*dt, -(1-weight(j-1))*mu*w*dt
		s.conduct(s.rate, func(from, to int) { s.stage(from, to, mu, nu, ahead, start) })
		s.e, s.old = s.old, s.e
	}
}

// begin is the first stage of a row whose rates are known. Its temperatures are no longer needed, so they are
// renewed at once, while the row is in the cache.
func (s *Sheet) begin(from, to int, by float64) {
	e := s.e[from:to]
	n := len(e)
	e0, old, rate := s.e0[from:to][:n], s.old[from:to][:n], s.rate0[from:to][:n]
	t, a, b, lo, hi := s.t[from:to][:n], s.a[from:to][:n], s.b[from:to][:n], s.lo[from:to][:n], s.hi[from:to][:n]
	for i, v := range e {
		e0[i], old[i] = v, v
		v += by * rate[i]
		e[i] = v
		if v < lo[i] || v >= hi[i] {
			s.find(from+i, v)
		}
		t[i] = a[i] + b[i]*v
	}
}

// stage writes a row's next stage over the one before the last and renews its temperatures.
func (s *Sheet) stage(from, to int, mu, nu, ahead, start float64) {
	e := s.e[from:to]
	n := len(e)
	old, e0, rate, rate0 := s.old[from:to][:n], s.e0[from:to][:n], s.rate[from:to][:n], s.rate0[from:to][:n]
	t, a, b, lo, hi := s.t[from:to][:n], s.a[from:to][:n], s.b[from:to][:n], s.lo[from:to][:n], s.hi[from:to][:n]
	rest := 1 - mu - nu
	for i, v := range e {
		v = mu*v + nu*old[i] + rest*e0[i] + ahead*rate[i] + start*rate0[i]
		old[i] = v
		if v < lo[i] || v >= hi[i] {
			s.find(from+i, v)
		}
		t[i] = a[i] + b[i]*v
	}
}

// Step advances by dt with the arc on or off: half of the sources and losses, conduction, the other half. A
// symmetrical step is of second order; with the losses taken only once it would be of first order.
func (s *Sheet) Step(dt float64, on bool) {
	s.lose(dt / 2)
	s.arrive(dt/2, on)
	s.faces()
	s.flow(dt)
	s.arrive(dt/2, on)
	s.lose(dt / 2)
	s.now += dt
}
