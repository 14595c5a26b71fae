package section

import (
	"math"

	"brazebooth/calc/section/plate"
)

// Workspace holds everything that Solve needs, so that solving allocates nothing. For one goroutine at a time.
type Workspace struct {
	arms     [maxArms]arm
	n        int // arms in use
	joint    Joint
	mirror   bool // one arm represents two equal ones: it gets half the heat and metal
	filler   curve
	stir     float64
	gap      float64 // mm
	bar      Bar
	loss     float64 // W/mm2K
	start    float64
	spread   float64    // of the passing arc with the smear, s
	heat     float64    // for the next step to take in, J/mm
	metal    float64    // and metal, mm2
	links    links      // of this step
	pool     pool       // of liquid filler
	finer    [2]float64 // times finer in space and in time than usual; 0 is 1. Tests only.
	narrow   bool       // no smear along the travel and no lift. Tests only.
	general  bool       // meet uses the rule for any layers. Tests only.
	audited  bool       // the losses from the faces are added up, for residual. Tests only.
	energy   float64    // put in, J/mm
	lost     float64
	original float64
	work     int
}

// Solve follows a section while the arc passes: one dimension along each arm of the joint, layers through its
// thickness, the arc a Gaussian in time as well as across. Two corrections account for the heat that flows
// along the seam, which a section cannot see: the source is smeared along the travel, and if the metal conducts
// well at this travel the peaks are lifted by the ratio of an exact moving source's peak to the smeared one's
// on a plate of the same thickness. See smear and raise.
//
// Filler arrives with the arc and takes the skin's temperature at once; liquid filler is stirred; metal melts over its
// range. Not modelled: zinc (1 to 5 % of the width), the bead's own shape, contact between faces that touch.
func (w *Workspace) Solve(in *Input) (Result, error) {
	if err := in.check(); err != nil {
		return Result{}, err
	}
	w.prepare(in)
	steps, dt := w.pass(in)
	steps += w.follow(in, dt)
	r := w.result(in)
	r.Steps, r.Work = steps, w.work
	return r, nil
}

// prepare lays out the arms and sets every cell to the start.
func (w *Workspace) prepare(in *Input) {
	w.joint, w.filler, w.stir = in.Joint, in.Filler.curve(), in.Filler.Stir
	w.gap, w.bar, w.loss, w.start, w.heat, w.metal = in.Gap, in.Bar, in.Loss, in.Start, 0, 0
	fine, far := in.extent()
	w.n = 0
	add := func(member int, heated bool, sigma, centre float64) {
		a := &w.arms[w.n]
		a.member, a.heated, a.sigma, a.centre = member, heated, sigma, centre
		a.thick, a.base = in.Thick[member], in.Base[member].curve()
		a.layout(fine, far, max(w.finer[0], 1))
		if in.High > 0 && w.n == 0 {
			a.end(in.High)
		}
		a.aimAt()
		w.n++
	}
	w.mirror = in.Joint == OverlayJoint || in.Joint == StripJoint || in.evenButt()
	switch {
	case in.Joint == StripJoint:
		w.onStrip(in, add)
	case in.Joint == OverlayJoint:
		add(0, true, in.Sigma, 0)
	case w.mirror:
		add(0, true, in.Sigma, -in.Gap/2)
	case in.Joint == LapJoint:
		add(0, true, in.Sigma, -in.Aim)
		add(1, true, in.Sigma, in.Aim)
		add(1, false, in.Sigma, 0)
	case in.Joint == TeeJoint: // both faces lie at 45 degrees to the arc
		add(0, true, in.Sigma*math.Sqrt2, -in.Aim*math.Sqrt2)
		add(1, true, in.Sigma*math.Sqrt2, in.Aim*math.Sqrt2)
		add(1, false, in.Sigma, 0)
	default: // the arms begin at the edges of the root
		add(0, true, in.Sigma, -in.Aim-in.Gap/2)
		add(1, true, in.Sigma, in.Aim-in.Gap/2)
	}
	for i := range w.n {
		w.back(&w.arms[i], &w.bar)
	}
	w.normalise()
	w.smear(in)
	w.reset(in)
}

// extent estimates how far the fine grid and the whole grid must reach: from the closed forms of a line heated
// at once, in the thinnest and best conducting member (in a thick one at most as in a half-space, and half as
// far again), and from how far heat spreads sideways while the arc passes.
func (in *Input) extent() (fine, far float64) {
	fine, far = 4.5, 22
	share := 1.0
	if in.Joint <= TeeJoint {
		share = 0.67
	}
	for i := range in.members() {
		b := &in.Base[i]
		thin := func(rise float64) float64 {
			return share * in.Heat / (in.Thick[i] * b.RhoC * rise * math.Sqrt(2*math.Pi*math.E))
		}
		thick := func(rise float64) float64 { return math.Sqrt(2 * in.Heat / (math.Pi * math.E * b.RhoC * rise)) }
		toe := max(100, in.Filler.Toe-in.Start)
		fine = max(fine, min(40, 1.15*thin(toe), 1.5*thick(toe)))
		far = max(far, 6*math.Sqrt(4*b.diffusivity()*(in.Sigma+1)/in.Travel))
		if in.Lowest > 0 {
			rise := max(50, in.Lowest-in.Start)
			far = max(far, min(400, 2*max(thin(rise), thick(rise))))
		}
	}
	return fine, max(far, 2.5*fine)
}

// normalise makes the shares of all arms add up to one: the source's tail beyond the grid is distributed over
// it.
func (w *Workspace) normalise() {
	sum := 0.0
	for i := range w.n {
		for j := range w.arms[i].in() {
			sum += w.arms[i].col[j].share
		}
	}
	for i := range w.n {
		for j := range w.arms[i].in() {
			w.arms[i].col[j].share /= sum
		}
	}
}

func (w *Workspace) reset(in *Input) {
	w.energy, w.lost, w.original, w.work = 0, 0, 0, 0
	w.pool = pool{freezes: (in.Filler.Solidus + in.Filler.Liquidus) / 2, toe: in.Filler.Toe, hot: w.start,
		first: math.NaN()}
	for i := range w.n {
		a := &w.arms[i]
		a.first = min(a.base.solidus, w.filler.solidus)
		h, _ := a.base.heat(w.start)
		for j := range a.in() {
			p := &a.col[j]
			p.filler = 0
			for l := range a.layers {
				c := &p.cell[l]
				c.t, c.next, c.peak, c.stretch, c.k, c.cap = w.start, w.start, w.start, -1, a.base.k, 0
				c.body = a.depth[l] * p.dy
				if l > 0 {
					c.through = 1 / a.apart[l] * p.dy
				}
				c.e = h * a.depth[l] * p.dy
				w.original += c.e
			}
		}
	}
}

// half is 1, or one half if one arm represents two.
func (w *Workspace) half() float64 {
	if w.mirror {
		return 0.5
	}
	return 1
}

// diffusivity is that of the metal while an arc passes, mm2/s: for steel that of k 0.030 W/mmK and ρc 0.0056
// J/mm3K, means up to brazing heat, scaled as its curves are.
func (m *Material) diffusivity() float64 {
	if m.Steel {
		return 0.030 / 0.0056 * m.K / SteelMean.K * SteelMean.RhoC / m.RhoC
	}
	return m.K / m.RhoC
}

// smearSteel times its diffusivity widens the source in steel: 5 mm2/s.
const smearSteel = 5 * 0.0056 / 0.030

// smear widens the passing arc to S² = σ² + c·a·σ/v, with c = 0.75 + 0.085·w/p. 0.75 was fitted to the exact
// thin moving source: within 3 % RMS and 6 % at worst from 0.8 to 3 mm and 4 to 14 mm/s. The second part is for
// metals that conduct well, by the weight w, and was chosen together with the lift against a three-dimensional
// reference.
func (w *Workspace) smear(in *Input) {
	a, spreading := 0.0, 0.0 // means over the arms, mm2/s
	for i := range w.n {
		m := &in.Base[w.arms[i].member]
		d := m.diffusivity()
		spreading += d / float64(w.n)
		if m.Steel {
			d *= smearSteel
		}
		a += d / float64(w.n)
	}
	p := in.Travel * in.Sigma / (2 * spreading)
	c := 0.75 + 0.085*alongSeam(p)/p
	if w.narrow {
		c = 0
	}
	s2 := in.Sigma*in.Sigma + c*a*in.Sigma/in.Travel
	w.spread = math.Sqrt(s2) / in.Travel
	w.raise(in, s2)
}

// alongSeam is the weight of the heat along the seam, from 0 for a fast source, p = vσ/2a from 0.6, to 1 for a
// slow one, p to 0.2.
func alongSeam(p float64) float64 { return max(0, min(1, math.Log(0.6/p)/math.Log(3))) }

// raise finds the factor by which each column's peak is lifted: the exact plate's ratio, to the power of the
// weight. s2 is the smeared source's variance along the travel, mm2.
func (w *Workspace) raise(in *Input, s2 float64) {
	mean := 0.0
	for i := range w.n {
		mean += w.arms[i].thick / float64(w.n)
	}
	sigma2 := in.Sigma * in.Sigma
	for i := range w.n {
		a := &w.arms[i]
		d := in.Base[a.member].diffusivity()
		p := in.Travel * in.Sigma / (2 * d)
		weight := alongSeam(p)
		if weight == 0 || w.narrow {
			for j := range a.in() {
				a.col[j].lift = 1
			}
			continue
		}
		m := s2 * d * d / (in.Travel * in.Travel * sigma2 * sigma2)
		l := plate.NewLift(p, m, max(a.thick, mean)/in.Sigma)
		for j := range a.in() {
			a.col[j].lift = math.Exp(weight * l.At(a.col[j].y/in.Sigma))
		}
	}
}
