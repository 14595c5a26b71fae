package section

// An arm's equations are a chain of columns, each linked to its neighbours layer by layer. A whole column is eliminated
// at once, from the far end to the joint, and the conductances are found once a step, however often the step is solved
// again.

// chain is what an arm conducts, and its columns as elimination leaves them.
type chain struct {
	along  [maxCells]float64 // from a cell to the same layer of the next column outward, W/K for each mm of travel
	across [maxCells]float64 // to the layer above; 0 for the skin
	leave  [maxCells]float64 // all that leaves the cell
	// By column, outside the innermost: the inverse of its block and its right side.
	two  [maxColumns]sym2
	four [maxColumns]sym4
	r    [maxCells]float64
	// inner is what the joint sees of the arm: the innermost column's block.
	inner block
}

// block is the system of one column: symmetric, of as many rows as it has layers.
type block struct {
	a sym4 // the first three numbers are those of a sym2 where there are two layers
	r [maxLayers]float64
}

// conduct finds what an arm conducts at the temperatures where the step begins.
func (w *Workspace) conduct(a *arm) {
	p, n, cells := &a.chain, a.layers, a.columns*a.layers
	steel := a.base.steel
	for c := range cells {
		a.k[c] = a.base.k
		if steel {
			a.k[c] = a.base.conductivity(a.t[c])
		}
	}
	var between [maxLayers]float64
	for l := 1; l < n; l++ {
		between[l] = 1 / a.apart[l]
	}
	for j := range a.columns {
		c := j * n
		p.leave[c], p.across[c] = w.loss*a.dy[j], 0
		for l := 1; l < n; l++ {
			g := between[l] * a.dy[j] * (a.k[c+l] + a.k[c+l-1])
			p.across[c+l], p.leave[c+l] = g, g
			p.leave[c+l-1] += g
		}
		p.leave[c+n-1] += a.behind[j]
	}
	a.wet = w.wetBar(a)
	p.leave[0] += a.wet
	for j := range a.columns - 1 {
		c, near := j*n, a.closeness[j+1]
		for l := range n {
			g := (a.k[c+l] + a.k[c+n+l]) / 2 * a.depth[l]
			if l == 0 {
				g += w.beadConductance(a, j)
			}
			g *= near
			p.along[c+l] = g
			p.leave[c+l] += g
			p.leave[c+n+l] += g
		}
	}
}

// beadConductance is what filler carries between the skins of columns j and j+1: conductivity by mean height, W/K.
func (w *Workspace) beadConductance(a *arm, j int) float64 {
	h := a.filler[j] * a.filler[j+1]
	if h == 0 {
		return 0
	}
	kf := w.fillerConductivity((a.t[j*a.layers] + a.t[(j+1)*a.layers]) / 2)
	return kf * 2 * h / (a.filler[j] + a.filler[j+1])
}

// inward takes every column but the innermost out of an arm's system, from a column on; those outside it are as they
// were.
func (w *Workspace) inward(a *arm, dt float64, from int) {
	if a.layers == 2 {
		w.inward2(a, dt, from)
	} else {
		w.inward4(a, dt, from)
	}
}

// outward finds the other columns from the innermost, which the joint has solved.
func (a *arm) outward() {
	if a.layers == 2 {
		a.outward2()
	} else {
		a.outward4()
	}
}

// sym2 is a symmetric matrix of two rows: 00, 01, 11.
type sym2 [3]float64

func (w *Workspace) inward2(a *arm, dt float64, from int) {
	p := &a.chain
	inverse := 1 / dt
	ds, dc, v, rs, rc := 0.0, 0.0, 0.0, 0.0, 0.0 // what the column outside adds to this one
	for j := from; j >= 0; j-- {
		c := 2 * j
		if j+1 < a.columns {
			m, ks, kc := &p.two[j+1], p.along[c], p.along[c+1]
			ys, yc := m[0]*p.r[c+2]+m[1]*p.r[c+3], m[1]*p.r[c+2]+m[2]*p.r[c+3]
			ds, dc, v = -ks*ks*m[0], -kc*kc*m[2], ks*kc*m[1]
			rs, rc = ks*ys, kc*yc
		}
		gs, gc := a.cap[c]*inverse, a.cap[c+1]*inverse
		air, behind := w.loss*a.dy[j]*w.start, a.behind[j]*w.start
		ds += gs + p.leave[c]
		dc += gc + p.leave[c+1]
		v += p.across[c+1]
		rs += gs*a.t[c] + a.source[j]*inverse + air
		rc += gc*a.t[c+1] + behind
		if j == 0 {
			rs += a.wet * w.start
			break
		}
		d := 1 / (ds*dc - v*v)
		p.two[j] = sym2{dc * d, v * d, ds * d}
		p.r[c], p.r[c+1] = rs, rc
	}
	p.inner.a[0], p.inner.a[1], p.inner.a[2] = ds, -v, dc
	p.inner.r[0], p.inner.r[1] = rs, rc
}

func (a *arm) outward2() {
	p := &a.chain
	xs, xc := a.next[0], a.next[1]
	for j := 1; j < a.columns; j++ {
		c, m := 2*j, &p.two[j]
		rs, rc := p.r[c]+p.along[c-2]*xs, p.r[c+1]+p.along[c-1]*xc
		xs, xc = m[0]*rs+m[1]*rc, m[1]*rs+m[2]*rc
		a.next[c], a.next[c+1] = xs, xc
	}
}

func (w *Workspace) inward4(a *arm, dt float64, from int) {
	p := &a.chain
	inverse := 1 / dt
	var d sym4
	var r [4]float64
	for j := from; j >= 0; j-- {
		c := 4 * j
		if j+1 < a.columns {
			m, k := &p.four[j+1], (*[4]float64)(p.along[c:])
			y := m.times((*[4]float64)(p.r[c+4:]))
			d = sym4{
				-k[0] * k[0] * m[0], -k[0] * k[1] * m[1], -k[0] * k[2] * m[2], -k[0] * k[3] * m[3],
				-k[1] * k[1] * m[4], -k[1] * k[2] * m[5], -k[1] * k[3] * m[6],
				-k[2] * k[2] * m[7], -k[2] * k[3] * m[8], -k[3] * k[3] * m[9],
			}
			r = [4]float64{k[0] * y[0], k[1] * y[1], k[2] * y[2], k[3] * y[3]}
		}
		cap, t := (*[4]float64)(a.cap[c:]), (*[4]float64)(a.t[c:])
		leave, across := (*[4]float64)(p.leave[c:]), (*[4]float64)(p.across[c:])
		air, behind := w.loss*a.dy[j]*w.start, a.behind[j]*w.start
		g0, g1, g2, g3 := cap[0]*inverse, cap[1]*inverse, cap[2]*inverse, cap[3]*inverse
		d[0] += g0 + leave[0]
		d[4] += g1 + leave[1]
		d[7] += g2 + leave[2]
		d[9] += g3 + leave[3]
		d[1] -= across[1]
		d[5] -= across[2]
		d[8] -= across[3]
		r[0] += g0*t[0] + a.source[j]*inverse + air
		r[1] += g1 * t[1]
		r[2] += g2 * t[2]
		r[3] += g3*t[3] + behind
		if j == 0 {
			r[0] += a.wet * w.start
			break
		}
		d.invert(&p.four[j])
		*(*[4]float64)(p.r[c:]) = r
	}
	p.inner = block{d, r}
}

func (a *arm) outward4() {
	p := &a.chain
	x := *(*[4]float64)(a.next[:])
	for j := 1; j < a.columns; j++ {
		c := 4 * j
		r, k := (*[4]float64)(p.r[c:]), (*[4]float64)(p.along[c-4:])
		y := [4]float64{r[0] + k[0]*x[0], r[1] + k[1]*x[1], r[2] + k[2]*x[2], r[3] + k[3]*x[3]}
		x = p.four[j].times(&y)
		*(*[4]float64)(a.next[c:]) = x
	}
}
