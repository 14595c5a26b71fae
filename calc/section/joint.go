package section

import "math"

// corner is the place of a lap's corner, where three skins meet, beside the layers of the second arm. It holds no heat.
// Linked straight to the middle of the second arm's column, the others would be off by half a column.
const corner = maxLayers

// links is what the innermost columns of the arms conduct to each other, W/K for each mm of travel.
type links struct {
	across  [maxLayers][maxLayers + 1]float64 // from a layer of the first arm to one of the second, or to the corner
	through [maxLayers]float64                // from a layer of the third arm to the same of the second, a lap's skin to the corner
	skin    float64                           // from the second arm's skin to the corner
	ends    [maxLayers + 1]bool               // where links of the first arm end
}

// couple finds the links where the step begins.
func (w *Workspace) couple() {
	l := &w.links
	*l = links{}
	if w.n == 1 {
		return // one arm and its mirror: nothing crosses the middle
	}
	u, p := &w.arms[0], &w.arms[1]
	kf := w.fillerConductivity((u.t[0] + p.t[0]) / 2)
	switch w.joint {
	case LapJoint:
		w.coupleLap(u, p, kf)
	case TeeJoint:
		w.coupleTee(u, p, kf)
	default:
		w.coupleEdges(u, p, kf)
	}
	if w.n == 3 { // the second member goes on under the first
		m := &w.arms[2]
		for i := range p.layers {
			l.through[i] = (p.k[i] + m.k[i]) * p.depth[i] / (p.dy[0] + m.dy[0])
		}
		if w.joint == LapJoint {
			l.through[0] = 2 * m.k[0] * m.depth[0] / m.dy[0]
			l.skin = 2 * (p.k[0]*p.depth[0] + kf*p.filler[0]) / p.dy[0]
		}
	}
	for k := range l.ends {
		for i := range u.layers {
			l.ends[k] = l.ends[k] || l.across[i][k] > 0
		}
	}
}

// coupleLap links the edge of the upper sheet to the corner over the height up to which filler stands against it, and
// its skin by what filler stands above the edge. In an open gap the filler must first fill the gap.
func (w *Workspace) coupleLap(u, p *arm, kf float64) {
	half := u.dy[0] / 2
	high := p.filler[0] - w.gap // over the upper sheet's lower face
	below := 0.0
	for i := u.layers - 1; i >= 0; i-- {
		if wet := min(high-below, u.depth[i]); wet > 0 {
			w.links.across[i][corner] = wet * u.k[i] / half
		}
		below += u.depth[i]
	}
	w.links.across[0][corner] += kf * max(0, min(u.filler[0], high-u.thick)) / half
}

// coupleTee links the skins through the filler in the corner: rings about the corner, each a quarter of a circle long,
// and straight where they are shorter than the columns. Twice that agreed best with a three-dimensional reference: the
// filler's own heat flow is not that of rings with cold ends. The standing sheet's cut end gives no heat.
func (w *Workspace) coupleTee(u, p *arm, kf float64) {
	reach := (u.dy[0] + p.dy[0]) / 2
	rings := func(radius float64) float64 {
		x := radius / reach
		return min(1, x) + math.Log(max(1, x))
	}
	radius := min(u.filler[0], p.filler[0])
	if radius > w.gap { // in an open gap there is no metal nearer to the corner
		w.links.across[0][0] = 2 * kf * (2 / math.Pi) * (rings(radius) - rings(w.gap))
	}
}

// coupleEdges links two edges that face each other, butt and corner, depth to depth as far as filler bridges them, and
// the skins through the filler.
func (w *Workspace) coupleEdges(u, p *arm, kf float64) {
	l := &w.links
	halfU, halfP := u.dy[0]/2, p.dy[0]/2
	hu, hp := u.filler[0], p.filler[0]
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
				l.across[i][k] = bridged * shared / (halfU/u.k[i] + w.gap/kf + halfP/p.k[k])
			}
			upperP += p.depth[k]
		}
		upperU += u.depth[i]
	}
	l.across[0][0] += kf * 2 * hu * hp / (hu + hp) / (halfU + w.gap + halfP)
}

// meet solves the innermost columns of all arms together: the third arm and the first are taken out of the second.
func (w *Workspace) meet() {
	if w.n == 1 {
		a := &w.arms[0]
		b := a.chain.inner
		b.a.inverse(a.layers)
		a.set(b.a.of(a.layers, &b.r))
		return
	}
	u, p := &w.arms[0], &w.arms[1]
	var c centre
	c.put(p)
	var third block
	if w.n == 3 {
		third = w.takeThird(&c)
	}
	first := w.takeFirst(&c)
	x := c.solve(p.layers, w.links.skin)
	copy(p.next[:p.layers], x[:])
	r := first.r
	for k, end := range w.links.ends {
		for i := range u.layers {
			if end {
				r[i] += w.links.across[i][k] * x[k]
			}
		}
	}
	u.set(first.a.of(u.layers, &r))
	if w.n == 3 {
		r = third.r
		for i := range p.layers {
			r[i] += w.links.through[i] * x[w.opposite(i)]
		}
		w.arms[2].set(third.a.of(p.layers, &r))
	}
}

// opposite is what a layer of the third arm is linked to.
func (w *Workspace) opposite(layer int) int {
	if layer == 0 && w.joint == LapJoint {
		return corner
	}
	return layer
}

// set keeps the innermost column's temperatures.
func (a *arm) set(x [maxLayers]float64) { copy(a.next[:a.layers], x[:]) }

// centre is the system of the second arm's innermost column and the corner.
type centre struct {
	a [maxLayers + 1][maxLayers + 1]float64
	r [maxLayers + 1]float64
}

func (c *centre) put(p *arm) {
	n := p.layers
	for i := range n {
		c.r[i] = p.chain.inner.r[i]
		for k := range n {
			c.a[i][k] = p.chain.inner.a[at(n, i, k)]
		}
	}
}

// takeThird eliminates the third arm's column and returns its block, inverted.
func (w *Workspace) takeThird(c *centre) block {
	third, g, n := w.arms[2].chain.inner, &w.links.through, w.arms[2].layers
	for i := range n {
		third.a[at(n, i, i)] += g[i]
	}
	third.a.inverse(n)
	y := third.a.of(n, &third.r)
	for i := range n {
		to := w.opposite(i)
		c.a[to][to] += g[i]
		c.r[to] += g[i] * y[i]
		for k := range n {
			c.a[to][w.opposite(k)] -= g[i] * g[k] * third.a[at(n, i, k)]
		}
	}
	return third
}

// takeFirst eliminates the first arm's column and returns its block, inverted.
func (w *Workspace) takeFirst(c *centre) block {
	first, g, n := w.arms[0].chain.inner, &w.links.across, w.arms[0].layers
	for k, end := range w.links.ends {
		for i := range n {
			if end {
				first.a[at(n, i, i)] += g[i][k]
				c.a[k][k] += g[i][k]
			}
		}
	}
	first.a.inverse(n)
	y := first.a.of(n, &first.r)
	for k, end := range w.links.ends {
		if !end {
			continue
		}
		var column [maxLayers]float64
		for i := range n {
			column[i] = g[i][k]
			c.r[k] += g[i][k] * y[i]
		}
		z := first.a.of(n, &column)
		for q, other := range w.links.ends {
			for i := range n {
				if other {
					c.a[q][k] -= g[i][q] * z[i]
				}
			}
		}
	}
	return first
}

// solve returns the temperatures of n layers and, where the skin is linked to it, of the corner.
func (c *centre) solve(n int, skin float64) (x [maxLayers + 1]float64) {
	if skin > 0 {
		c.a[0][0] += skin
		c.a[corner][corner] += skin
		c.a[0][corner] -= skin
		c.a[corner][0] -= skin
		for i := range n {
			f := c.a[i][corner] / c.a[corner][corner]
			c.r[i] -= f * c.r[corner]
			for k := range n {
				c.a[i][k] -= f * c.a[corner][k]
			}
		}
	}
	var b block
	for i := range n {
		b.r[i] = c.r[i]
		for k := i; k < n; k++ {
			b.a[at(n, i, k)] = c.a[i][k]
		}
	}
	b.a.inverse(n)
	layers := b.a.of(n, &b.r)
	copy(x[:n], layers[:])
	if skin > 0 {
		sum := c.r[corner]
		for k := range n {
			sum -= c.a[corner][k] * x[k]
		}
		x[corner] = sum / c.a[corner][corner]
	}
	return x
}
