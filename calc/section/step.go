package section

import "math"

// step moves the section on by dt s. It is linearly implicit, so that no step is too long for the finest cell, and
// conservative, since what the linear system says a cell gains goes into its enthalpy. A cell that would begin or end
// melting within the step gets the mean heat capacity along its way, and the system is solved again: with the
// capacity at the start it would draw far too much heat or too little.
func (w *Workspace) step(dt float64) {
	for i := range w.n {
		w.arms[i].thermometer(&w.filler)
		w.receive(i)
	}
	for try := range 3 {
		for i := range w.n {
			w.inwardArm(i, dt, try == 0)
		}
		w.meet()
		again := false
		for i := range w.n {
			w.outwardArm(i)
			again = try < 2 && w.crossing(i) || again
			w.work += w.arms[i].work()
		}
		if !again {
			break
		}
	}
	for i := range w.n {
		w.advance(i, dt)
	}
	w.heat, w.metal = 0, 0
}

// inwardArm reduces an arm's system to what the joint sees of it.
func (w *Workspace) inwardArm(i int, dt float64, first bool) {
	a, m := &w.arms[i], &w.band[i]
	if a.layers != 2 {
		w.assemble(i, dt)
		m.eliminate()
		return
	}
	if first {
		w.conduct(a)
	}
	w.inward(a, m, dt)
}

// outwardArm solves the rest of the arm.
func (w *Workspace) outwardArm(i int) {
	a, m := &w.arms[i], &w.band[i]
	if a.layers != 2 {
		m.substitute()
		return
	}
	a.outward(m)
}

// crossing gives every cell that passes a melting or freezing point in this step the mean capacity along its way, and
// reports whether that differs by more than a fifth from the one used.
func (w *Workspace) crossing(i int) bool {
	a, m := &w.arms[i], &w.band[i]
	n, again := a.layers, false
	first := min(a.base.solidus, w.filler.solidus)
	for j := range a.columns {
		for l := range n {
			c := j*n + l
			from, to := a.t[c], m.rhs[(a.columns-1-j)*n+l]
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
			base := a.depth[l] * a.dy[j]
			h0, _ := a.base.heat(from)
			h1, _ := a.base.heat(to)
			gain := base * (h1 - h0)
			if metal > 0 {
				f0, _ := w.filler.heat(from)
				f1, _ := w.filler.heat(to)
				gain += metal * (f1 - f0)
			}
			mean := gain / (to - from)
			if math.Abs(mean-a.cap[c]) > 0.2*a.cap[c] {
				again = true
				a.cap[c] = mean
			}
		}
	}
	return again
}

// receive takes in what the arc brings. The metal takes the skin's temperature at once; what that costs comes off the
// heat. The heat goes into the linear system: put straight into the cells it would show a peak that conduction has
// not seen yet and that grows with the step.
func (w *Workspace) receive(i int) {
	a := &w.arms[i]
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

// thermometer finds each cell's temperature from its enthalpy and keeps the highest. The enthalpy of two metals that
// melt over ranges is piecewise smooth and grows everywhere: Newton's rule from the last temperature needs two or
// three steps, and bisection helps where it would swing.
func (a *arm) thermometer(filler *curve) {
	n := a.layers
	for j := range a.columns {
		for l := range n {
			c := j*n + l
			base, metal := a.depth[l]*a.dy[j], 0.0
			if l == 0 {
				metal = a.filler[j] * a.dy[j]
			}
			a.t[c], a.cap[c] = invert(a.e[c], a.t[c], base, metal, &a.base, filler)
			if a.t[c] > a.peak[c] {
				a.peak[c] = a.t[c]
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

// assemble writes an arm's equations, outermost column first, so that elimination ends at the joint.
func (w *Workspace) assemble(i int, dt float64) {
	a, m := &w.arms[i], &w.band[i]
	n := a.layers
	m.clear(a.columns * n)
	inverse := 1 / dt
	for j := a.columns - 1; j >= 0; j-- {
		row, cell := (a.columns-1-j)*n, j*n
		for l := range n {
			c := cell + l
			k := a.base.conductivity(a.t[c])
			a.k[c] = k
			g := a.cap[c] * inverse
			m.a[row+l][0] += g
			m.rhs[row+l] += g * a.t[c]
			if l > 0 {
				m.link(row+l, 1, 2*k*a.dy[j]/(a.depth[l]+a.depth[l-1]))
			}
			if row > 0 { // to the column outside, n rows before
				g := (k + a.k[c+n]) / 2 * a.depth[l]
				if l == 0 {
					g += w.beadConductance(a, j)
				}
				m.link(row+l, n, g*a.closeness[j+1])
			}
		}
		m.rhs[row] += a.source[j] * inverse
		g := w.loss * a.dy[j]
		m.a[row][0] += g
		m.a[row+n-1][0] += g
		m.rhs[row] += g * w.start
		m.rhs[row+n-1] += g * w.start
	}
}

// beadConductance is what filler carries between the skins of columns j and j+1: conductivity by mean height, W/K.
func (w *Workspace) beadConductance(a *arm, j int) float64 {
	h := a.filler[j] * a.filler[j+1]
	if h == 0 {
		return 0
	}
	kf := w.fillerConductivity((a.t[j*a.layers] + a.t[(j+1)*a.layers]) / 2)
	return kf * 2 * h / (a.filler[j] + a.filler[j+1])
}

// advance adds the heat behind the solved temperatures to the enthalpies.
func (w *Workspace) advance(i int, dt float64) {
	a, m := &w.arms[i], &w.band[i]
	n := a.layers
	for j := range a.columns {
		row := (a.columns - 1 - j) * n
		for l := range n {
			c := j*n + l
			t := m.rhs[row+l]
			a.e[c] += a.cap[c] * (t - a.t[c])
			a.t[c] = t
		}
		w.lost += dt * w.loss * a.dy[j] * (m.rhs[row] + m.rhs[row+n-1] - 2*w.start)
	}
}
