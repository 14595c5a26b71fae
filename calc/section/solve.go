package section

import "math"

// Workspace holds what Solve needs, so that solving allocates nothing. One goroutine at a time.
type Workspace struct {
	arms     [maxArms]arm
	n        int // arms in use
	joint    Joint
	filler   curve
	stir     float64
	loss     float64 // W/mm2K
	start    float64
	star     bool    // every layer of every arm meets at the joint, filler or not. Tests only.
	heat     float64 // that the next step takes in, J/mm
	metal    float64 // and metal, mm2
	band     [maxArms]banded
	core     node
	finer    [2]float64 // times finer in space and in time than usual; 0 is 1. Tests only.
	narrow   bool       // no smear along the travel. Tests only.
	energy   float64    // put in, J/mm
	lost     float64
	original float64
	work     int
}

// Solve follows a section while the arc passes: one dimension along each arm of the joint, a few layers through its
// thickness, the arc a Gaussian in time as well as across. The fast source is widened along the travel, σx² = σ² +
// 0.75·a·σ/v, which makes up for the heat that runs ahead: within 3 % RMS and 6 % at worst of a moving
// two-dimensional source, from 0.8 to 3 mm and 4 to 14 mm/s.
//
// Filler arrives with the arc and takes the skin's temperature at once; liquid filler is stirred; metal melts over
// its range. Left out: zinc (1 to 5 % of the width) and the bead's own shape.
func (w *Workspace) Solve(in *Input) (Result, error) {
	if err := in.check(); err != nil {
		return Result{}, err
	}
	w.prepare(in)
	steps := w.pass(in)
	steps += w.follow(in.Lowest)
	r := w.result(in)
	r.Steps, r.Work = steps, w.work
	return r, nil
}

// prepare lays out the arms and sets every cell to the start.
func (w *Workspace) prepare(in *Input) {
	w.joint, w.filler, w.stir = in.Joint, in.Filler.curve(), in.Filler.Stir
	w.loss, w.start, w.heat, w.metal = in.Loss, in.Start, 0, 0
	fine, far := in.extent()
	w.n = 0
	add := func(member int, heated bool, sigma, centre float64) {
		a := &w.arms[w.n]
		a.member, a.heated, a.sigma, a.centre = member, heated, sigma, centre
		a.thick, a.base = in.Thick[member], in.Base[member].curve()
		a.layout(fine, far, max(w.finer[0], 1))
		a.aimAt()
		w.n++
	}
	switch in.Joint {
	case LapJoint:
		add(0, true, in.Sigma, -in.Aim)
		add(1, true, in.Sigma, in.Aim)
		add(1, false, in.Sigma, 0)
	case TeeJoint: // both faces lie at 45 degrees to the arc
		add(0, true, in.Sigma*math.Sqrt2, -in.Aim*math.Sqrt2)
		add(1, true, in.Sigma*math.Sqrt2, in.Aim*math.Sqrt2)
		add(1, false, in.Sigma, 0)
	case OverlayJoint:
		add(0, true, in.Sigma, 0)
	default:
		add(0, true, in.Sigma, -in.Aim)
		add(1, true, in.Sigma, in.Aim)
	}
	w.normalise()
	w.reset()
}

// extent estimates how far the fine grid and the whole grid must reach: from the closed form of a line that got its
// heat at once, in the thinnest and best conducting member.
func (in *Input) extent() (fine, far float64) {
	fine, far = 4.5, 22
	n := 2
	if in.Joint == OverlayJoint {
		n = 1
	}
	for i := range n {
		reach := func(rise float64) float64 {
			return in.Heat / (in.Thick[i] * in.Base[i].RhoC * rise * math.Sqrt(2*math.Pi*math.E))
		}
		share := 1.0
		if in.Joint <= TeeJoint {
			share = 0.67
		}
		fine = max(fine, min(40, 1.15*share*reach(max(100, in.Filler.Toe-in.Start))))
		if in.Lowest > 0 {
			far = max(far, min(400, 2*share*reach(max(50, in.Lowest-in.Start))))
		}
	}
	return fine, max(far, 2.5*fine)
}

// normalise makes the shares of all arms sum to one: the source's tail beyond the grid comes back.
func (w *Workspace) normalise() {
	sum := 0.0
	for i := range w.n {
		for j := range w.arms[i].columns {
			sum += w.arms[i].share[j]
		}
	}
	for i := range w.n {
		for j := range w.arms[i].columns {
			w.arms[i].share[j] /= sum
		}
	}
}

func (w *Workspace) reset() {
	w.energy, w.lost, w.original, w.work = 0, 0, 0, 0
	for i := range w.n {
		a := &w.arms[i]
		h, _ := a.base.heat(w.start)
		for j := range a.columns {
			a.filler[j] = 0
			for l := range a.layers {
				c := j*a.layers + l
				a.t[c], a.peak[c] = w.start, w.start
				a.e[c] = h * a.depth[l] * a.dy[j]
				w.original += a.e[c]
			}
		}
	}
}

// half is 1 for the overlay, whose second half mirrors the first: it gets half the heat and metal.
func (w *Workspace) half() float64 {
	if w.joint == OverlayJoint {
		return 0.5
	}
	return 1
}

// The time step follows the arc: a share of the time it takes to pass, at most longest s; once the arc is gone it
// grows by a share each step. Halving all three changes a width by less than 1 %.
const (
	paceShare = 0.15
	longest   = 0.045
	growth    = 0.08
)

// pass lets the arc go by and the toes freeze.
func (w *Workspace) pass(in *Input) int {
	spread := w.smear(in) / in.Travel // s
	dt := min(longest, paceShare*spread) / max(w.finer[1], 1)
	const window = 2.5
	whole := normal(window) - normal(-window)
	steps := int(math.Ceil(2*window*spread/dt)) + 1
	dt = 2 * window * spread / float64(steps)
	before := 0.0
	for i := range steps {
		x := window * (2*float64(i+1)/float64(steps) - 1)
		now := (normal(x) - normal(-window)) / whole
		w.pour(in.Heat*(now-before), in.Bead*(now-before))
		before = now
		w.step(dt)
	}
	// The toes may rest on the freezing plateau: a peak counts when the cell is 20 K under it.
	for extra := range 150 {
		if w.frozen(in.Filler.Toe) {
			return steps + extra
		}
		dt = min(2, dt*(1+growth/max(w.finer[1], 1)))
		w.step(dt)
	}
	return steps + 150
}

// smear is the source's standard deviation along the travel, mm.
func (w *Workspace) smear(in *Input) float64 {
	a := 0.0
	for i := range w.n {
		m := &w.arms[i].base
		if m.steel {
			a += 5 * m.k / m.c // hot steel's diffusivity, mm2/s
		} else {
			a += m.k / m.c
		}
	}
	a /= float64(w.n)
	if w.narrow {
		a = 0
	}
	return math.Sqrt(in.Sigma*in.Sigma + 0.75*a*in.Sigma/in.Travel)
}

// pour keeps heat in J/mm and metal in mm2 ready for the skins; the next step takes them in.
func (w *Workspace) pour(heat, metal float64) {
	w.heat, w.metal = heat*w.half(), metal*w.half()
	w.energy += w.heat
}

// frozen reports whether the cell at each toe is 20 K under its peak; where nothing wets, whether the hottest cell is.
func (w *Workspace) frozen(toe float64) bool {
	for i := range w.n {
		a := &w.arms[i]
		if !a.heated {
			continue
		}
		j := 0
		for j+1 < a.columns && a.peak[(j+1)*a.layers] >= toe {
			j++
		}
		for c := j; c < min(j+2, a.columns); c++ {
			if a.peak[c*a.layers]-a.t[c*a.layers] < 20 && a.peak[c*a.layers] > w.start+60 {
				return false
			}
		}
	}
	return true
}

// follow lets the section cool until the outermost cells that reach a temperature have passed their peak.
func (w *Workspace) follow(lowest float64) int {
	if lowest <= 0 {
		return 0
	}
	dt := 0.04 / max(w.finer[1], 1)
	for i := range 150 {
		if w.passed(lowest) {
			return i
		}
		w.step(dt)
		dt = min(2, dt*(1+3*growth/max(w.finer[1], 1)))
	}
	return 150
}

func (w *Workspace) passed(lowest float64) bool {
	for i := range w.n {
		a := &w.arms[i]
		j := 0
		for j+1 < a.columns && a.peak[j*a.layers] >= lowest {
			j++
		}
		c := j * a.layers
		if a.t[c] > a.peak[c]-0.2 && a.peak[c] > w.start+1 {
			return false
		}
	}
	return true
}

func (w *Workspace) result(in *Input) Result {
	var r Result
	for i := range w.n {
		a := &w.arms[i]
		if !a.heated {
			continue
		}
		m := a.member
		front, back := &r.Front[m], &r.Back[m]
		front.n, back.n = a.columns, a.columns
		core, within := 0.0, 0.0
		for j := range a.columns {
			front.at[j], back.at[j] = float32(a.y[j]), float32(a.y[j])
			front.peak[j] = float32(a.peak[j*a.layers])
			back.peak[j] = float32(a.peak[j*a.layers+a.layers-1])
			r.Skin[m] = max(r.Skin[m], a.peak[j*a.layers])
			if j == 0 || a.y[j] < in.Sigma {
				core += a.peak[j*a.layers+a.layers-1] * a.dy[j]
				within += a.dy[j]
			}
		}
		r.Core[m] = core / within
		r.Wet[m] = front.Reach(in.Filler.Toe)
	}
	r.Residual = (w.held() - w.original - w.energy + w.lost) / (w.energy + math.Abs(w.original))
	return r
}

func (w *Workspace) held() float64 {
	sum := 0.0
	for i := range w.n {
		a := &w.arms[i]
		for c := range a.columns * a.layers {
			sum += a.e[c]
		}
	}
	return sum
}
