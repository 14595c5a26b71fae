package section

import "math"

// corner is the index of a lap's corner, where three skins meet, after the layers of the second arm. It holds
// no heat. If the skins were linked to the middle of the second arm's column instead, they would be off by half
// a column.
const corner = maxLayers

// links holds the conductances between the innermost columns of the arms, W/K for each mm of travel.
type links struct {
	across  [maxLayers][maxLayers + 1]float64 // from a layer of the first arm to one of the second, or to the corner
	through [maxLayers]float64                // from the third arm to the second, by layer; a lap's skin to the corner
	skin    float64                           // from the second arm's skin to the corner
	ends    [maxLayers + 1]bool               // whether any link of the first arm ends there
}

// hasCorner reports whether one sheet lies on another, so that the skins meet in a corner.
func (w *Workspace) hasCorner() bool { return w.joint == LapJoint || w.joint == StripJoint }

// couple finds the links at the start of the step.
func (w *Workspace) couple() {
	l := &w.links
	*l = links{}
	if w.n == 1 {
		return // one arm and its mirror: nothing crosses the middle
	}
	u, p := &w.arms[0], &w.arms[1]
	u0, p0 := &u.col[0], &p.col[0]
	kf := w.fillerConductivity((u0.cell[0].t + p0.cell[0].t) / 2)
	switch w.joint {
	case LapJoint, StripJoint:
		w.coupleLap(u, p, kf)
	case TeeJoint:
		w.coupleTee(u, p, kf)
	default:
		w.coupleEdges(u, p, kf)
	}
	if w.n == 3 { // the second member continues under the first
		m := &w.arms[2].col[0]
		for i := range p.layers {
			l.through[i] = (p0.cell[i].k + m.cell[i].k) * p.depth[i] / (p0.dy + m.dy)
		}
		if w.hasCorner() {
			l.through[0] = 2 * m.cell[0].k * w.arms[2].depth[0] / m.dy
			l.skin = 2 * (p0.cell[0].k*p.depth[0] + kf*p0.filler) / p0.dy
		}
	}
	for k := range l.ends {
		for i := range u.layers {
			l.ends[k] = l.ends[k] || l.across[i][k] > 0
		}
	}
}

// coupleLap links the edge of the upper sheet to the corner over the height of the filler against it, and its
// skin by the filler above the edge. In an open gap the filler must first fill the gap.
func (w *Workspace) coupleLap(u, p *arm, kf float64) {
	u0 := &u.col[0]
	half := u0.dy / 2
	high := p.col[0].filler // over the upper sheet's lower face
	if w.joint == LapJoint {
		high -= w.gap
	}
	below := 0.0
	for i := u.layers - 1; i >= 0; i-- {
		if wet := min(high-below, u.depth[i]); wet > 0 {
			w.links.across[i][corner] = wet * u0.cell[i].k / half
		}
		below += u.depth[i]
	}
	w.links.across[0][corner] += kf * max(0, min(u0.filler, high-u.thick)) / half
}

// coupleTee links the skins through the filler in the corner: rings about the corner, each a quarter of a
// circle long, and straight where they are shorter than the columns. Twice that conductance agreed best with a
// three-dimensional reference: the heat flow in the filler is not that of rings with cold ends. The cut end of
// the standing sheet passes no heat.
func (w *Workspace) coupleTee(u, p *arm, kf float64) {
	reach := (u.col[0].dy + p.col[0].dy) / 2
	rings := func(radius float64) float64 {
		x := radius / reach
		return min(1, x) + math.Log(max(1, x))
	}
	radius := min(u.col[0].filler, p.col[0].filler)
	if radius > w.gap { // the open gap has no metal nearer to the corner
		w.links.across[0][0] = 2 * kf * (2 / math.Pi) * (rings(radius) - rings(w.gap))
	}
}

// coupleEdges links two edges that face each other, in a butt or corner, depth to depth as far as filler
// bridges them, and the skins through the filler.
func (w *Workspace) coupleEdges(u, p *arm, kf float64) {
	l := &w.links
	u0, p0 := &u.col[0], &p.col[0]
	halfU, halfP := u0.dy/2, p0.dy/2
	hu, hp := u0.filler, p0.filler
	bridged := min(1, min(hu, hp)/min(u.thick, p.thick))
	if bridged == 0 {
		return
	}
	upperU := 0.0
	for i := range u.layers {
		upperP := 0.0
		for k := range p.layers {
			shared := min(upperU+u.depth[i], upperP+p.depth[k]) - max(upperU, upperP)
			if shared > 0 {
				l.across[i][k] = bridged * shared / (halfU/u0.cell[i].k + w.gap/kf + halfP/p0.cell[k].k)
			}
			upperP += p.depth[k]
		}
		upperU += u.depth[i]
	}
	l.across[0][0] += kf * 2 * hu * hp / (hu + hp) / (halfU + w.gap + halfP)
}
