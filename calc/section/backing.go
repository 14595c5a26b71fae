package section

import "math"

// leastOpen is the narrowest gap over a strip that gets a column of its own, mm.
const leastOpen = 0.05

// back finds what each column of an arm gives off behind it: to air, and to a bar. The liquid in a butt's gap lies on
// the bar too; see wetBar.
func (w *Workspace) back(a *arm, bar *Bar) {
	edge := w.gap / 2
	for j := range a.columns {
		a.behind[j] = a.dy[j] * w.loss
		if bar.Dry > 0 {
			touching := edge + a.dy[j] - max(edge, min(bar.Groove/2, edge+a.dy[j]))
			a.behind[j] += touching * bar.Dry
		}
		edge += a.dy[j]
	}
}

// wetBar is what the filler in an arm's half of the gap gives to the bar, W/K for each mm of travel. It grows as the
// filler fills the gap's height.
func (w *Workspace) wetBar(a *arm) float64 {
	if w.bar.Wet == 0 || !a.heated {
		return 0
	}
	wide := max(0, w.gap-w.bar.Groove) / 2
	return w.bar.Wet * wide * min(1, a.filler[0]/a.thick)
}

// open lays out the part of a strip that lies open under half the gap: equal columns, ending in the gap's middle.
func (a *arm) open(half, finer float64) {
	a.split()
	const wide = 0.25 // mm
	a.columns = min(maxColumns, int(math.Ceil(half/wide*finer)))
	for j := range a.columns {
		a.dy[j] = half / float64(a.columns)
		a.y[j] = (float64(j) + 0.5) * a.dy[j]
		if j > 0 {
			a.closeness[j] = 1 / a.dy[j]
		}
	}
}

// onStrip lays out half of a butt on a strip: the sheet from its edge on, the strip under the gap, and the strip under
// the sheet. It is a lap that begins in the middle of the gap.
func (w *Workspace) onStrip(in *Input, add func(member int, heated bool, sigma, centre float64)) {
	half := in.Gap / 2
	add(0, true, in.Sigma, -half)
	add(1, true, in.Sigma, half)
	a := &w.arms[1]
	a.open(half, max(w.finer[0], 1))
	a.aimAt()
	add(1, false, in.Sigma, 0)
}
