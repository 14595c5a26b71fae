package section

import "math"

// The arc passes in steps of a share of its spread; after it a step grows by a share each time, and faster once
// only the end of the puddle is awaited.
const (
	window     = 2.5 // of the spread, to each side
	passSteps  = 25
	growth     = 0.12
	poolGrowth = 0.3
	mostSteps  = 150 // after the arc
)

// pass lets the arc go by and the toes freeze. It returns the number of steps and the last one's length, s.
func (w *Workspace) pass(in *Input) (steps int, dt float64) {
	steps = int(passSteps * max(w.finer[1], 1))
	dt = 2 * window * w.spread / float64(steps)
	shares := usualShares[:]
	if steps != passSteps {
		shares = passShares(steps)
	}
	before := 0.0
	w.pool.now = -window * w.spread
	for _, now := range shares {
		w.pour(in.Heat*(now-before), in.Bead*(now-before))
		before = now
		w.step(dt)
	}
	// The toes may stay on the freezing plateau: a peak counts once the cell is 20 K below it.
	for extra := range mostSteps {
		faster := growth
		if w.frozen(in.Filler.Toe) {
			if !w.pool.liquid {
				return steps + extra, dt
			}
			faster = poolGrowth
		}
		dt = min(2, dt*(1+faster/max(w.finer[1], 1)))
		w.step(dt)
	}
	return steps + mostSteps, dt
}

// usualShares are the shares of heat and metal that have arrived after each step of the arc's passing.
var usualShares = [passSteps]float64(passShares(passSteps))

func passShares(steps int) []float64 {
	list := make([]float64, steps)
	whole := normal(window) - normal(-window)
	for i := range list {
		x := window * (2*float64(i+1)/float64(steps) - 1)
		list[i] = (normal(x) - normal(-window)) / whole
	}
	return list
}

// pour stores heat in J/mm and metal in mm2 for the skins; the next step takes them in.
func (w *Workspace) pour(heat, metal float64) {
	w.heat, w.metal = heat*w.half(), metal*w.half()
	w.energy += w.heat
}

// lifted is a column's temperature with the correction for the heat along the seam.
func (w *Workspace) lifted(a *arm, column int, t float64) float64 {
	return w.start + (t-w.start)*a.col[column].lift
}

// frozen reports whether the cell at each toe is 20 K below its peak; if nothing wets, whether the hottest cell
// is.
func (w *Workspace) frozen(toe float64) bool {
	for i := range w.n {
		a := &w.arms[i]
		if !a.heated {
			continue
		}
		j := 0
		for j+1 < a.columns && w.lifted(a, j+1, a.col[j+1].cell[0].peak) >= toe {
			j++
		}
		for c := j; c < min(j+2, a.columns); c++ {
			if p := &a.col[c]; p.cell[0].peak-p.cell[0].next < 20 && p.cell[0].peak > w.start+60 {
				return false
			}
		}
	}
	return true
}

// follow lets the section cool until the outermost cells that reach a temperature have passed their peak.
func (w *Workspace) follow(in *Input, dt float64) int {
	if in.Lowest <= 0 {
		return 0
	}
	for i := range mostSteps {
		if w.passed(in.Lowest) {
			return i
		}
		dt = min(2, dt*(1+2*growth/max(w.finer[1], 1)))
		w.step(dt)
	}
	return mostSteps
}

func (w *Workspace) passed(lowest float64) bool {
	for i := range w.n {
		a := &w.arms[i]
		j := 0
		for j+1 < a.columns && w.lifted(a, j, a.col[j].cell[0].peak) >= lowest {
			j++
		}
		if p := &a.col[j]; p.cell[0].next > p.cell[0].peak-0.2 && p.cell[0].peak > w.start+1 {
			return false
		}
	}
	return true
}

// pool follows the puddle as it passes the section, by the hotter of the innermost skins.
type pool struct {
	freezes float64 // C, at which half the filler is solid and it holds its shape
	toe     float64 // C
	now     float64 // s since the arc's middle passed
	hot     float64 // C at that time
	above   float64 // s during which it was hotter than freezes
	first   float64 // when it first reached the toe's temperature, NaN before
	liquid  bool
}

// watch records a step of dt s that has just ended.
func (w *Workspace) watch(dt float64) {
	p := &w.pool
	before := p.hot
	p.hot = math.Inf(-1)
	for i := range w.n {
		if a := &w.arms[i]; a.heated {
			p.hot = max(p.hot, w.lifted(a, 0, a.col[0].cell[0].next))
		}
	}
	if math.IsNaN(p.first) && p.hot >= p.toe {
		p.first = p.now + dt*(p.toe-before)/max(p.hot-before, 1e-9)
	}
	p.above += dt * shareAbove(before, p.hot, p.freezes)
	p.liquid = p.hot > p.freezes
	p.now += dt
}

// shareAbove is the share of a straight line between two temperatures that is above a third one.
func shareAbove(from, to, level float64) float64 {
	low, high := min(from, to), max(from, to)
	switch {
	case low >= level:
		return 1
	case high <= level:
		return 0
	}
	return (high - level) / (high - low)
}
