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
		w.advance(&w.arms[i], dt)
	}
	w.watch(dt)
	w.heat, w.metal = 0, 0
}

// crossing gives every cell that passes a melting or freezing point in this step the mean capacity along its way, if that
// differs much from the one used, and returns the outermost column where it does: from there on the step must be solved
// again. -1 for none.
func (w *Workspace) crossing(a *arm) (outermost int) {
	n := a.layers
	outermost = -1
	first := min(a.base.solidus, w.filler.solidus)
	for j := range a.columns {
		for l := range n {
			c := j*n + l
			from, to := a.t[c], a.next[c]
			if from <= first && to <= first {
				continue
			}
			metal := 0.0
			if l == 0 {
				metal = a.filler[j] * a.dy[j]
			}
			if !(metal > 0 && w.filler.phase(from) != w.filler.phase(to)) && a.base.phase(from) == a.base.phase(to) {
				continue
			}
			if math.Abs(to-from) < 0.1 {
				continue
			}
			mean := w.gain(a, metal, a.depth[l]*a.dy[j], from, to) / (to - from)
			if math.Abs(mean-a.cap[c]) > worthAgain*a.cap[c] {
				outermost = j
				a.cap[c] = mean
			}
		}
	}
	return outermost
}

// worthAgain is by how much a capacity may be off, relative. With three tries a skin that melted within a step was off by up
// to 100 K for that step, which counted as its peak: from one job to the next it jumped by half of that.
const (
	worthAgain = 0.2
	tries      = 8
)

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
		clear(a.source[:a.columns])
		return
	}
	for j := range a.columns {
		c := j * a.layers
		metal := w.metal * a.share[j]
		a.source[j] = w.heat * a.share[j]
		if metal > 0 {
			h, slope := w.filler.heat(a.t[c])
			a.filler[j] += metal / a.dy[j]
			a.cap[c] += metal * slope
			a.e[c] += metal * h
			a.source[j] -= metal * h
		}
	}
}

// thermometer finds each cell's temperature from its enthalpy and keeps the highest. A cell that is still on the straight
// stretch of its enthalpy where the step began has the temperature that the linear system gave it. The enthalpy of two metals that
// melt over ranges is piecewise smooth and grows everywhere: Newton's rule from the last temperature needs two or
// three steps, and bisection helps where it would swing.
func (a *arm) thermometer(filler *curve) {
	n := a.layers
	bend := min(a.base.solidus, filler.solidus)
	for j := range a.columns {
		for l := range n {
			c := j*n + l
			t := a.t[c]
			stretch := int32(-1)
			if t < bend {
				stretch = a.base.stretch(t)
			}
			if stretch < 0 || stretch != a.stretch[c] {
				base, metal := a.depth[l]*a.dy[j], 0.0
				if l == 0 {
					metal = a.filler[j] * a.dy[j]
				}
				t, a.cap[c] = invert(a.e[c], t, base, metal, &a.base, filler)
				a.t[c], a.stretch[c] = t, stretch
			}
			if t > a.peak[c] {
				a.peak[c] = t
			}
		}
	}
}

// invert solves base·h_base(t) + metal·h_filler(t) = e from a first estimate, and returns the temperature with the
// heat capacity there, J/mmK.
func invert(e, t, base, metal float64, b, f *curve) (temperature, capacity float64) {
	low, high := -1e4, 1e6
	for range 60 {
		h, slope := b.heat(t)
		h, slope = h*base, slope*base
		if metal > 0 {
			hf, sf := f.heat(t)
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

// advance adds the heat behind the solved temperatures to the enthalpies.
func (w *Workspace) advance(a *arm, dt float64) {
	n := a.layers
	for c := range a.columns * n {
		a.e[c] += a.cap[c] * (a.next[c] - a.t[c])
		a.t[c] = a.next[c]
	}
	w.lost += dt * a.wet * (a.next[0] - w.start)
	for j := range a.columns {
		w.lost += dt * (w.loss*a.dy[j]*(a.next[j*n]-w.start) + a.behind[j]*(a.next[j*n+n-1]-w.start))
	}
}
