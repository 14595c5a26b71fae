package section

import (
	"math"
	"slices"
)

// step advances the section by dt s. It is linearly implicit, so that no step is too long for the finest cell,
// and conservative, because the heat that the linear system gives a cell goes into its enthalpy. A cell that
// would begin or end melting within the step gets the mean heat capacity over its change, and the system is
// solved again: with the capacity at the start it would take up far too much heat or too little.
func (w *Workspace) step(dt float64) {
	var from [maxArms]int // of each arm, the outermost column whose equations are new; -1 if none
	for i := range w.n {
		a := &w.arms[i]
		a.readTemperatures(&w.filler)
		w.receive(a)
		w.conduct(a)
		from[i] = a.columns - 1
	}
	w.couple()
	for try := range tries {
		for i := range w.n {
			if a := &w.arms[i]; from[i] >= 0 {
				w.eliminate(a, dt, from[i])
				w.work += a.work(from[i] + 1)
			}
		}
		w.meet()
		again := false
		for i := range w.n {
			a := &w.arms[i]
			a.substitute()
			from[i] = -1
			if try < tries-1 {
				from[i] = w.crossing(a, try)
			}
			again = again || from[i] >= 0
		}
		if !again {
			break
		}
	}
	for i := range w.n {
		if w.audited {
			w.addLosses(&w.arms[i], dt)
		}
	}
	w.watch(dt)
	w.heat, w.metal = 0, 0
}

// crossing gives every cell that passes a melting or freezing point in this step the mean capacity over its
// change, if that differs much from the one used. It returns the outermost such column: from there on the step
// must be solved again. -1 if there is none.
func (w *Workspace) crossing(a *arm, try int) (outermost int) {
	n := min(a.layers, maxLayers)
	outermost = -1
	if try == 0 {
		a.given = a.given[:0]
	}
	for _, at := range a.given {
		if j, l := at/maxLayers, at%maxLayers; w.along(a, &a.col[j], l, try) {
			outermost = max(outermost, j)
		}
	}
	known := len(a.given)
	first, solid, liquid := a.first, a.base.solidus, w.filler.liquidus
	columns := a.in()[:a.hot+1]
	for j := range columns {
		p := &columns[j]
		for l := range n {
			from, to := p.cell[l].t, p.cell[l].next
			if from <= first && to <= first {
				continue
			}
			metal := 0.0
			if l == 0 {
				metal = p.filler * p.dy
			}
			if from <= solid && to <= solid && (metal == 0 || from > liquid && to > liquid) { // most cells
				continue
			}
			if !(metal > 0 && w.filler.phase(from) != w.filler.phase(to)) && a.base.phase(from) == a.base.phase(to) {
				continue
			}
			if at := j*maxLayers + l; !slices.Contains(a.given[:known], at) && w.along(a, p, l, try) {
				a.given = append(a.given, at)
				outermost = max(outermost, j)
			}
		}
	}
	return outermost
}

// along gives a cell the mean capacity over its change in this step, and reports whether that is a different
// one. A cell that got one before is checked again even if it no longer passes such a point: its capacity is
// then too high. From the third time on it gets half of the difference, because two cells could otherwise
// alternate for ever.
func (w *Workspace) along(a *arm, p *column, l, try int) bool {
	x, metal := &p.cell[l], 0.0
	if l == 0 {
		metal = p.filler * p.dy
	}
	if math.Abs(x.next-x.t) < 0.1 {
		return false
	}
	mean := w.gain(a, metal, x.body, x.t, x.next) / (x.next - x.t)
	if math.Abs(mean-x.cap) <= worthAgain*x.cap {
		return false
	}
	if try >= 2 {
		mean = (mean + x.cap) / 2
	}
	x.cap = mean
	return true
}

// worthAgain is the relative error of a capacity that is accepted. With three tries a skin that melted within a
// step was off by up to 100 K in that step, which counted as its peak: from one job to the next it jumped by
// half of that.
const (
	worthAgain = 0.2
	tries      = 8
)

// gain is the heat that a cell with this much metal and base takes up from one temperature to another, J/mm.
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

// receive takes in heat and metal from the arc. The metal takes the skin's temperature at once; its heat is
// subtracted. The rest goes into the linear system: put straight into the cells it would show a peak before any
// conduction, which would grow with the step.
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
			h, slope := w.filler.c*(p.cell[0].t-20), w.filler.c
			if p.cell[0].t > w.filler.solidus {
				h, slope = w.filler.melting(p.cell[0].t, h, slope)
			}
			p.filler += metal / p.dy
			p.cell[0].cap += metal * slope
			p.cell[0].e += metal * h
			p.source -= metal * h
		}
	}
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

// addLosses adds up the losses from the faces in a step.
func (w *Workspace) addLosses(a *arm, dt float64) {
	n := a.layers
	w.lost += dt * a.wet * (a.col[0].cell[0].next - w.start)
	for j := range a.in() {
		p := &a.col[j]
		w.lost += dt * (p.face*(p.cell[0].next-w.start) + p.behind*(p.cell[n-1].next-w.start))
	}
}
