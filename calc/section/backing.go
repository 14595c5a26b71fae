package section

import "math"

// leastOpen is the narrowest gap over a strip that gets its own column, mm.
const leastOpen = 0.05

// back finds the heat that each column of an arm loses from its back face: to the air, and to a bar. The liquid
// in a butt's gap lies on the bar too; see wetBar.
func (w *Workspace) back(a *arm, bar *Bar) {
	edge := w.gap / 2
	for j := range a.in() {
		p := &a.col[j]
		p.face = w.loss * p.dy
		p.behind = p.face
		if bar.Dry > 0 {
			touching := edge + p.dy - max(edge, min(bar.Groove/2, edge+p.dy))
			p.behind += touching * bar.Dry
		}
		p.air, p.back = p.face*w.start, p.behind*w.start
		edge += p.dy
	}
}

// wetBar is the conductance from the filler in an arm's half of the gap to the bar, W/K for each mm of travel.
// It grows as the filler fills the height of the gap.
func (w *Workspace) wetBar(a *arm) float64 {
	if w.bar.Wet == 0 || !a.heated {
		return 0
	}
	wide := max(0, w.gap-w.bar.Groove) / 2
	return w.bar.Wet * wide * min(1, a.col[0].filler/a.thick)
}

// open lays out the part of a strip that is exposed under half the gap: equal columns up to the gap's middle.
func (a *arm) open(half, finer float64) {
	a.split()
	const wide = 0.25 // mm
	a.columns = min(maxColumns, int(math.Ceil(half/wide*finer)))
	for j := range a.in() {
		p := &a.col[j]
		p.dy = half / float64(a.columns)
		p.y = (float64(j) + 0.5) * p.dy
		if j > 0 {
			p.closeness = 1 / p.dy
		}
	}
}

// onStrip lays out half of a butt on a strip: the sheet from its edge on, the strip under the gap, and the
// strip under the sheet. It is like a lap that begins in the middle of the gap.
func (w *Workspace) onStrip(in *Input, add func(member int, heated bool, sigma, centre float64)) {
	half := in.Gap / 2
	add(0, true, in.Sigma, -half)
	add(1, true, in.Sigma, half)
	a := &w.arms[1]
	a.open(half, max(w.finer[0], 1))
	a.aimAt()
	add(1, false, in.Sigma, 0)
}
