package section

// meet solves the innermost columns of all arms together, by eliminating the third arm and the first from the
// second.
func (w *Workspace) meet() {
	if w.n == 1 {
		a := &w.arms[0]
		b := a.inner
		b.a.inverse(a.layers)
		a.set(b.a.of(a.layers, &b.r))
		return
	}
	u, p := &w.arms[0], &w.arms[1]
	if sheets := w.n == 3 && u.layers == 2 && p.layers == 2; sheets && w.joint <= TeeJoint && !w.general {
		w.meet2()
		return
	}
	var c centre
	c.put(p)
	var third block
	if w.n == 3 {
		third = w.eliminateThird(&c)
	}
	first := w.eliminateFirst(&c)
	x := c.solve(p.layers, w.links.skin)
	p.set(([maxLayers]float64)(x[:maxLayers]))
	r := first.r
	for k, end := range w.links.ends {
		if !end {
			continue
		}
		for i := range u.layers {
			r[i] += w.links.across[i][k] * x[k]
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

// opposite is the place to which a layer of the third arm is linked.
func (w *Workspace) opposite(layer int) int {
	if layer == 0 && w.hasCorner() {
		return corner
	}
	return layer
}

// set stores the innermost column's temperatures.
func (a *arm) set(x [maxLayers]float64) {
	for l := range a.layers {
		a.col[0].cell[l].next = x[l]
	}
}

// centre is the system of the second arm's innermost column and the corner.
type centre struct {
	a [maxLayers + 1][maxLayers + 1]float64
	r [maxLayers + 1]float64
}

func (c *centre) put(p *arm) {
	n := p.layers
	for i := range n {
		c.r[i] = p.inner.r[i]
		for k := range n {
			c.a[i][k] = p.inner.a[at(n, i, k)]
		}
	}
}

// eliminateThird eliminates the third arm's column and returns its block, inverted.
func (w *Workspace) eliminateThird(c *centre) block {
	third, g, n := w.arms[2].inner, &w.links.through, w.arms[2].layers
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

// eliminateFirst eliminates the first arm's column and returns its block, inverted.
func (w *Workspace) eliminateFirst(c *centre) block {
	first, g, n := w.arms[0].inner, &w.links.across, w.arms[0].layers
	for k, end := range w.links.ends {
		if !end {
			continue
		}
		for i := range n {
			first.a[at(n, i, i)] += g[i][k]
			c.a[k][k] += g[i][k]
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
			if !other {
				continue
			}
			for i := range n {
				c.a[q][k] -= g[i][q] * z[i]
			}
		}
	}
	return first
}

// solve returns the temperatures of n layers and, if the skin is linked to it, of the corner.
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
