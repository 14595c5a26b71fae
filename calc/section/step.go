package section

import "math"

// step moves the section on by dt s. It is linearly implicit, so that no step is too long for the finest cell, and
// conservative, since what the linear system says a cell gains goes into its enthalpy. A cell that would begin or end
// melting within the step gets the mean heat capacity along its way, and the system is solved again: with the
// capacity at the start it would draw far too much heat or too little.
func (w *Workspace) step(dt float64) {
	var from [maxArms]int // of each arm, the outermost column whose equations are new; -1 where none is
	for i := range w.n {
		a := &w.arms[i]
		a.thermometer(&w.filler)
		w.receive(a)
		w.conduct(a)
		from[i] = a.columns - 1
	}
	w.couple()
	for try := range tries {
		for i := range w.n {
			if a := &w.arms[i]; from[i] >= 0 {
				w.inward(a, dt, from[i])
				w.work += a.work(from[i] + 1)
			}
		}
		w.meet()
		again := false
		for i := range w.n {
			a := &w.arms[i]
			a.outward()
			from[i] = -1
			if try < tries-1 {
				from[i] = w.crossing(a)
			}
			again = again || from[i] >= 0
		}
		if !again {
			break
		}
	}
	for i := range w.n {
		if w.audited {
			w.account(&w.arms[i], dt)
		}
	}
	w.watch(dt)
	w.heat, w.metal = 0, 0
}

// crossing gives every cell that passes a melting or freezing point in this step the mean capacity along its way, if that
// differs much from the one used, and returns the outermost column where it does: from there on the step must be solved
// again. -1 for none.
func (w *Workspace) crossing(a *arm) (outermost int) {
	n := min(a.layers, maxLayers)
	outermost = -1
	first := a.first
	for j := range a.hot + 1 {
		p := &a.col[j]
		for l := range n {
			from, to := p.t[l], p.next[l]
			if from <= first && to <= first {
				continue
			}
			metal := 0.0
			if l == 0 {
				metal = p.filler * p.dy
			}
			if !(metal > 0 && w.filler.phase(from) != w.filler.phase(to)) && a.base.phase(from) == a.base.phase(to) {
				continue
			}
			if math.Abs(to-from) < 0.1 {
				continue
			}
			mean := w.gain(a, metal, p.body[l], from, to) / (to - from)
			if math.Abs(mean-p.cap[l]) > worthAgain*p.cap[l] {
				outermost = j
				p.cap[l] = mean
			}
		}
	}
	return outermost
}

// worthAgain is by how much a capacity may be off, relative.
const worthAgain = 0.2
const tries = 3

// gain is the heat that a cell of so much metal and base takes up from one temperature to another, J/mm.
func (w *Workspace) gain(a *arm, metal, base, from, to float64) float64 {
	h0, _ := a.base.heat(from)
	h1, _ := a.base.heat(to)
	gain := base * (h1 - h0)
	if metal > 0 {
		f0, _ := w.filler.heat(from)
		f1, _ := w.filler.heat(to)
		gain += metal * (f1 - f0)
	}
	return gain
}

// receive takes in what the arc brings. The metal takes the skin's temperature at once; what that costs comes off the
// heat. The heat goes into the linear system: put straight into the cells it would show a peak that conduction has
// not seen yet and that grows with the step.
func (w *Workspace) receive(a *arm) {
	if !a.heated || w.heat == 0 && w.metal == 0 {
		for j := range a.in() {
			a.col[j].source = 0
		}
		return
	}
	for j := range a.in() {
		p := &a.col[j]
		metal := w.metal * p.share
		p.source = w.heat * p.share
		if metal > 0 {
			h, slope := w.filler.c*(p.t[0]-20), w.filler.c
			if p.t[0] > w.filler.solidus {
				h, slope = w.filler.melting(p.t[0], h, slope)
			}
			p.filler += metal / p.dy
			p.cap[0] += metal * slope
			p.e[0] += metal * h
			p.source -= metal * h
		}
	}
}

// thermometer adds the heat that the last step brought to each cell's enthalpy, finds the cell's temperature and keeps
// the highest. A cell that is still on the straight stretch of its enthalpy where the step began has the temperature
// that the linear system gave it. Solid steel on another stretch takes the first step of invert on the spot, which
// mostly is the last.
func (a *arm) thermometer(filler *curve) {
	n, base, steel := min(a.layers, maxLayers), &a.base, a.base.steel
	first, c, cf := a.first, a.base.c, filler.c
	a.hot = -1
	for j := range a.in() {
		p := &a.col[j]
		for l := range n {
			t := p.next[l]
			e := p.e[l] + p.cap[l]*(t-p.t[l])
			p.e[l], p.t[l] = e, t
			if !(t < first) {
				p.stretch[l] = -1
				a.search(p, l, filler)
			} else if i := base.stretch(t); i != p.stretch[l] {
				p.stretch[l] = i
				s := &steelTable[i]
				h, slope := s.at(t)*c*p.body[l], s.slope*c*p.body[l]
				if l == 0 && p.filler > 0 {
					metal := p.filler * p.dy
					h += cf * (t - 20) * metal
					slope += cf * metal
				}
				off := h - e
				if near := 0.5 * slope; steel && off < near && off > -near { // no division before the branch
					p.t[l], p.cap[l] = t-off/slope, slope
				} else {
					a.search(p, l, filler)
				}
			}
			t = p.t[l]
			if t > first {
				a.hot = j
			}
			if t > p.peak[l] {
				p.peak[l] = t
			}
			if steel {
				p.k[l] = base.conductivity(t)
			}
		}
	}
}

// search finds a cell's temperature and heat capacity from a first estimate of the temperature.
func (a *arm) search(p *column, l int, filler *curve) {
	metal := 0.0
	if l == 0 {
		metal = p.filler * p.dy
	}
	p.t[l], p.cap[l] = invert(p.e[l], p.t[l], p.body[l], metal, &a.base, filler)
}

// invert solves base·h_base(t) + metal·h_filler(t) = e from a first estimate, and returns the temperature with the
// heat capacity there, J/mmK.
//
// The enthalpy of two metals that melt over ranges is piecewise smooth and grows everywhere: Newton's rule from the
// last temperature needs two or three steps, and bisection helps where it would swing.
func invert(e, t, base, metal float64, b, f *curve) (temperature, capacity float64) {
	low, high := -1e4, 1e6
	for range 60 {
		h, slope := b.c*(t-20), b.c
		if b.steel {
			s := &steelTable[steelStretch(t)]
			h, slope = s.at(t)*b.c, s.slope*b.c
		}
		if t > b.solidus {
			h, slope = b.melting(t, h, slope)
		}
		h, slope = h*base, slope*base
		if metal > 0 {
			hf, sf := f.c*(t-20), f.c
			if t > f.solidus {
				hf, sf = f.melting(t, hf, sf)
			}
			h += hf * metal
			slope += sf * metal
		}
		off := h - e
		if near := 0.5 * slope; off < near && off > -near { // no division before the branch: cells run side by side
			return t - off/slope, slope
		}
		step := off / slope
		if off > 0 {
			high = t
		} else {
			low = t
		}
		t -= step
		if t <= low || t >= high {
			t = (max(low, -300) + min(high, 8000)) / 2
		}
		capacity = slope
	}
	return t, capacity
}

// liquidShare is the liquid share of filler at t.
func (w *Workspace) liquidShare(t float64) float64 {
	switch {
	case t <= w.filler.solidus:
		return 0
	case t >= w.filler.liquidus:
		return 1
	}
	return (t - w.filler.solidus) / (w.filler.liquidus - w.filler.solidus)
}

// fillerConductivity is the filler's conductivity at t, W/mmK; stirring raises the liquid's.
func (w *Workspace) fillerConductivity(t float64) float64 {
	return w.filler.k * (1 + (w.stir-1)*w.liquidShare(t))
}

// account adds up what goes off the faces in a step.
func (w *Workspace) account(a *arm, dt float64) {
	n := a.layers
	w.lost += dt * a.wet * (a.col[0].next[0] - w.start)
	for j := range a.in() {
		p := &a.col[j]
		w.lost += dt * (p.face*(p.next[0]-w.start) + p.behind*(p.next[n-1]-w.start))
	}
}
