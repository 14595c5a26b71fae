package thinsheet

import "math"

// flow lets heat flow for dt seconds with the faces as they are, in one step of second order: two stages where an
// explicit step would do, else an odd number of them, which keeps temperatures from overshooting.
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

// legendre is one super-time-step of second order in two stages or more: stable to stages² + stages − 2 quarters of an
// explicit step. Source: Meyer, Balsara and Aslam, J. Comput. Phys. 257 (2014) 594, eqs. 16 to 20, memory high.
func (s *Sheet) legendre(dt float64, stages int) {
	weight := func(j int) float64 {
		if j < 2 {
			j = 2
		}
		x := float64(j)
		return (x*x + x - 2) / (2 * x * (x + 1))
	}
	w := 4 / (float64(stages)*float64(stages) + float64(stages) - 2)
	copy(s.e0, s.e)
	copy(s.old, s.e)
	s.conduct(s.rate0)
	first := weight(1) * w * dt
	for i, r := range s.rate0 {
		s.e[i] += first * r
	}
	s.invert()
	for j := 2; j <= stages; j++ {
		x := float64(j)
		mu := (2*x - 1) / x * weight(j) / weight(j-1)
		nu := -(x - 1) / x * weight(j) / weight(j-2)
		s.conduct(s.rate)
		s.stage(mu, nu, mu*w*dt, -(1-weight(j-1))*mu*w*dt)
		s.e, s.old = s.old, s.e
		s.invert()
	}
}

// stage writes the next stage over the one before the last.
func (s *Sheet) stage(mu, nu, ahead, start float64) {
	n := len(s.e)
	e, old, e0, rate, rate0 := s.e, s.old[:n], s.e0[:n], s.rate[:n], s.rate0[:n]
	rest := 1 - mu - nu
	for i, v := range e {
		old[i] = mu*v + nu*old[i] + rest*e0[i] + ahead*rate[i] + start*rate0[i]
	}
}

// Step goes on by dt with the arc on or off: half of what comes and goes, conduction, the other half.
func (s *Sheet) Step(dt float64, on bool) {
	s.give(dt/2, on)
	s.faces()
	s.flow(dt)
	s.giveBack(dt/2, on)
	s.now += dt
}
