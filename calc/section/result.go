package section

import "math"

// Result is what the section reached. Index 0 is the first member, 1 the second.
type Result struct {
	Wet  [2]float64 // wetted width on each member's bead side, mm: where it got hotter than the toe's temperature
	Skin [2]float64 // peak of the skin, C
	Core [2]float64 // peak of the core, C, averaged over one sigma from the joint
	// PoolLength is the length of the puddle, mm: travel by the time during which the joint's middle is hotter
	// than the filler's mean freezing temperature. About −25 to +30 %.
	PoolLength float64
	// PoolFront is how far ahead of the arc's middle the joint reaches the toe's temperature, mm; negative
	// behind it; NaN if it never does.
	PoolFront float64
	Front     [2]Profile // peaks along the bead's face of each member
	Back      [2]Profile // peaks along its other face
	Steps     int
	Work      int // cost of the computation: columns times steps, see layersWork
}

// Profile is a peak temperature along one face of a member, from the joint outward.
type Profile struct {
	n    int
	at   [maxColumns]float32 // mm
	peak [maxColumns]float32 // C
}

// Reach returns how far from the joint the peak reaches a temperature, mm: 0 if it never does, NaN if it does
// so even at the end of the grid.
func (p *Profile) Reach(temperature float64) float64 {
	t := float32(temperature)
	for i := p.n - 1; i >= 0; i-- {
		if p.peak[i] < t {
			continue
		}
		if i == p.n-1 {
			return math.NaN()
		}
		return p.between(i+1, temperature)
	}
	if middle, bend := p.joint(); bend > 0 && middle > temperature {
		return math.Sqrt((middle - temperature) / bend)
	}
	return 0
}

// Over returns the length along the face over which the peak reaches a temperature, mm: the reach, less the
// part next to the joint that stays colder. It goes to zero without a jump.
func (p *Profile) Over(temperature float64) float64 {
	return p.Reach(temperature) - p.cold(temperature)
}

// cold is how far from the joint the face stays below a temperature that it reaches further out, mm.
func (p *Profile) cold(temperature float64) float64 {
	t := float32(temperature)
	for i := range p.n {
		switch {
		case p.peak[i] < t:
			continue
		case i > 0:
			x0, x1, y0, y1 := float64(p.at[i-1]), float64(p.at[i]), float64(p.peak[i-1]), float64(p.peak[i])
			return x0 + (temperature-y0)/(y1-y0)*(x1-x0)
		}
		if middle, bend := p.joint(); bend < 0 && middle < temperature {
			return math.Sqrt((temperature - middle) / -bend)
		}
		return 0
	}
	return 0
}

// joint is the peak at the joint itself and its bend there, on a parabola through two columns that is flat at
// the joint.
func (p *Profile) joint() (middle, bend float64) {
	if p.n < 2 {
		return 0, 0
	}
	x0, x1, y0, y1 := float64(p.at[0]), float64(p.at[1]), float64(p.peak[0]), float64(p.peak[1])
	bend = (y0 - y1) / (x1*x1 - x0*x0)
	return y0 + bend*x0*x0, bend
}

// between finds where the peak crosses a temperature inside the cell before column i, on the parabola through
// three columns: on a straight line the width would jump a little as the grid shifts, and margins are
// differences of widths.
func (p *Profile) between(i int, temperature float64) float64 {
	k := i + 1
	if k >= p.n {
		k = i - 2
	}
	x0, x1, y0, y1 := float64(p.at[i-1]), float64(p.at[i]), float64(p.peak[i-1]), float64(p.peak[i])
	straight := x0 + (y0-temperature)/(y0-y1)*(x1-x0)
	if k < 0 {
		return straight
	}
	x2, y2 := float64(p.at[k]), float64(p.peak[k])
	bend := ((y2-y0)/(x2-x0) - (y1-y0)/(x1-x0)) / (x2 - x1)
	lo, hi := x0, x1
	for range 24 {
		mid := (lo + hi) / 2
		if y0+(mid-x0)*((y1-y0)/(x1-x0)+bend*(mid-x1)) >= temperature {
			lo = mid
		} else {
			hi = mid
		}
	}
	if math.IsNaN(bend) {
		return straight
	}
	return (lo + hi) / 2
}

func (w *Workspace) result(in *Input) Result {
	r := Result{PoolLength: in.Travel * w.pool.above, PoolFront: -in.Travel * w.pool.first}
	for i := range w.n {
		if a := &w.arms[i]; a.heated {
			w.member(in, a, &r)
		}
	}
	if w.mirror && in.Joint == ButtJoint {
		r.Wet[1], r.Skin[1], r.Core[1], r.Front[1], r.Back[1] = r.Wet[0], r.Skin[0], r.Core[0], r.Front[0], r.Back[0]
	}
	return r
}

// member reads the peaks of one heated arm.
func (w *Workspace) member(in *Input, a *arm, r *Result) {
	m := a.member
	front, back := &r.Front[m], &r.Back[m]
	front.n, back.n = a.columns, a.columns
	core, within := 0.0, 0.0
	for j := range a.in() {
		p := &a.col[j]
		skin, last := w.lifted(a, j, p.cell[0].peak), w.lifted(a, j, p.cell[a.layers-1].peak)
		front.at[j], back.at[j] = float32(p.y), float32(p.y)
		front.peak[j], back.peak[j] = float32(skin), float32(last)
		r.Skin[m] = max(r.Skin[m], skin)
		if j == 0 || p.y < in.Sigma {
			core += last * p.dy
			within += p.dy
		}
	}
	r.Core[m] = core / within
	r.Wet[m] = front.Over(in.Filler.Toe)
	if in.High > 0 && m == 0 && math.IsNaN(r.Wet[m]) { // up to its edge
		r.Wet[m] = in.High
	}
	if in.Joint == StripJoint && m == 1 && math.IsNaN(r.Wet[m]) { // as far as it lies open
		r.Wet[m] = in.Gap / 2
	}
}
