package section

// An arm's equations are a chain of columns, each linked to its neighbours layer by layer. Whole columns are
// eliminated at once, from the far end to the joint. The conductances are computed once per step, even if the
// step is solved several times.

// link holds a column's conductances, and its equations after elimination.
type link struct {
	along  [maxLayers]float64 // to the same layer of the next column outward, W/K for each mm of travel
	across [maxLayers]float64 // to the layer above; 0 for the skin
	leave  [maxLayers]float64 // sum of the cell's conductances
	// Except in the innermost column: the inverse of its block, a sym2 if there are two layers, and its right
	// side.
	inverse sym4
	r       [maxLayers]float64
}

// block is the system of one column: symmetric, with one row per layer.
type block struct {
	a sym4 // with two layers only its first three numbers are used, as 00, 01, 11
	r [maxLayers]float64
}

// conduct finds an arm's conductances at the temperatures at which the step begins.
func (w *Workspace) conduct(a *arm) {
	a.wet = w.wetBar(a)
	if a.layers == 2 {
		w.conduct2(a)
	} else {
		w.conduct4(a)
	}
}

func (w *Workspace) conduct2(a *arm) {
	d0, d1 := a.depth[0], a.depth[1]
	columns := a.in()
	q := &columns[0]
	g := q.cell[1].through * (q.cell[1].k + q.cell[0].k)
	q.chain.across[1] = g
	l0, l1 := q.face+g+a.wet, g+q.behind
	for j := 1; j < len(columns); j++ {
		p := &columns[j]
		g0 := ((q.cell[0].k+p.cell[0].k)/2*d0 + w.beadConductance(q, p)) * p.closeness
		g1 := (q.cell[1].k + p.cell[1].k) / 2 * d1 * p.closeness
		q.chain.along[0], q.chain.along[1] = g0, g1
		q.chain.leave[0], q.chain.leave[1] = l0+g0, l1+g1
		g = p.cell[1].through * (p.cell[1].k + p.cell[0].k)
		p.chain.across[1] = g
		l0, l1 = p.face+g+g0, g+p.behind+g1
		q = p
	}
	q.chain.along[0], q.chain.along[1] = 0, 0
	q.chain.leave[0], q.chain.leave[1] = l0, l1
}

func (w *Workspace) conduct4(a *arm) {
	columns := a.in()
	q := &columns[0]
	l0, l1, l2, l3 := q.conductAcross()
	l0 += a.wet
	for j := 1; j < len(columns); j++ {
		p := &columns[j]
		near, k := p.closeness, &q.chain
		g0 := ((q.cell[0].k+p.cell[0].k)/2*a.depth[0] + w.beadConductance(q, p)) * near
		g1 := (q.cell[1].k + p.cell[1].k) / 2 * a.depth[1] * near
		g2 := (q.cell[2].k + p.cell[2].k) / 2 * a.depth[2] * near
		g3 := (q.cell[3].k + p.cell[3].k) / 2 * a.depth[3] * near
		k.along[0], k.along[1], k.along[2], k.along[3] = g0, g1, g2, g3
		k.leave[0], k.leave[1], k.leave[2], k.leave[3] = l0+g0, l1+g1, l2+g2, l3+g3
		l0, l1, l2, l3 = p.conductAcross()
		l0, l1, l2, l3 = l0+g0, l1+g1, l2+g2, l3+g3
		q = p
	}
	k := &q.chain
	k.leave[0], k.leave[1], k.leave[2], k.leave[3] = l0, l1, l2, l3
}

// conductAcross finds the conductances between the four layers of a column, and the sum for each layer of these
// and of its face.
func (p *column) conductAcross() (l0, l1, l2, l3 float64) {
	a1 := p.cell[1].through * (p.cell[1].k + p.cell[0].k)
	a2 := p.cell[2].through * (p.cell[2].k + p.cell[1].k)
	a3 := p.cell[3].through * (p.cell[3].k + p.cell[2].k)
	p.chain.across[1], p.chain.across[2], p.chain.across[3] = a1, a2, a3
	return p.face + a1, a1 + a2, a2 + a3, a3 + p.behind
}

// beadConductance is the conductance of the filler between the skins of two columns: conductivity by mean
// height, W/K.
func (w *Workspace) beadConductance(q, p *column) float64 {
	h := q.filler * p.filler
	if h == 0 {
		return 0
	}
	kf := w.fillerConductivity((q.cell[0].t + p.cell[0].t) / 2)
	return kf * 2 * h / (q.filler + p.filler)
}

// eliminate eliminates all columns but the innermost from an arm's system, from column from on; the columns
// outside it are unchanged since the last time.
func (w *Workspace) eliminate(a *arm, dt float64, from int) {
	if a.layers == 2 {
		w.eliminate2(a, dt, from)
	} else {
		w.eliminate4(a, dt, from)
	}
}

// substitute finds the other columns from the innermost, which the joint has solved.
func (a *arm) substitute() {
	a.hot = max(a.hot, 0)
	if a.layers == 2 {
		a.substitute2()
	} else {
		a.substitute4()
	}
}

func (w *Workspace) eliminate2(a *arm, dt float64, from int) {
	inverse := 1 / dt
	columns := a.in()
	var m0, m1, m2, r0, r1 float64 // of the column outside
	if from+1 < len(columns) {
		o := &columns[from+1].chain
		m0, m1, m2, r0, r1 = o.inverse[0], o.inverse[1], o.inverse[2], o.r[0], o.r[1]
	}
	columns = columns[:from+1]
	for j := len(columns) - 1; j >= 0; j-- {
		p := &columns[j]
		k := &p.chain
		ks, kc := k.along[0], k.along[1]
		gs, gc := p.cell[0].cap*inverse, p.cell[1].cap*inverse
		ds := gs + k.leave[0] - ks*ks*m0
		dc := gc + k.leave[1] - kc*kc*m2
		v := k.across[1] + ks*kc*m1
		rs := gs*p.cell[0].t + p.source*inverse + p.air + ks*(m0*r0+m1*r1)
		rc := gc*p.cell[1].t + p.back + kc*(m1*r0+m2*r1)
		if j == 0 {
			rs += a.wet * w.start
			a.inner.a[0], a.inner.a[1], a.inner.a[2] = ds, -v, dc
			a.inner.r[0], a.inner.r[1] = rs, rc
			break
		}
		d := 1 / (ds*dc - v*v)
		m0, m1, m2, r0, r1 = dc*d, v*d, ds*d, rs, rc
		k.inverse[0], k.inverse[1], k.inverse[2] = m0, m1, m2
		k.r[0], k.r[1] = r0, r1
	}
}

func (a *arm) substitute2() {
	columns := a.in()
	q := &columns[0]
	xs, xc := q.cell[0].next, q.cell[1].next
	first, hot := a.first, a.hot
	for j := range columns[1:] {
		p := &columns[j+1]
		m := &p.chain.inverse
		rs, rc := p.chain.r[0]+q.chain.along[0]*xs, p.chain.r[1]+q.chain.along[1]*xc
		xs, xc = m[0]*rs+m[1]*rc, m[1]*rs+m[2]*rc
		p.cell[0].next, p.cell[1].next = xs, xc
		if xs > first || xc > first {
			hot = max(hot, j+1)
		}
		q = p
	}
	a.hot = hot
}

// eliminate4 inverts each column's block by blocks of two, as sym4.invert does. It is written out because only
// then do the numbers stay in registers.
func (w *Workspace) eliminate4(a *arm, dt float64, from int) {
	inverse := 1 / dt
	columns := a.in()
	var m sym4 // of the column outside
	var y [4]float64
	if from+1 < len(columns) {
		o := &columns[from+1].chain
		m, y = o.inverse, o.inverse.times(&o.r)
	}
	m00, m01, m02, m03, m11, m12, m13, m22, m23, m33 := m[0], m[1], m[2], m[3], m[4], m[5], m[6], m[7], m[8], m[9]
	y0, y1, y2, y3 := y[0], y[1], y[2], y[3]
	for j := from; j >= 0; j-- {
		p := &columns[j]
		k := &p.chain
		k0, k1, k2, k3 := 0.0, 0.0, 0.0, 0.0
		if j+1 < len(columns) {
			k0, k1, k2, k3 = k.along[0], k.along[1], k.along[2], k.along[3]
		}
		g0, g1, g2, g3 := p.cell[0].cap*inverse, p.cell[1].cap*inverse, p.cell[2].cap*inverse, p.cell[3].cap*inverse
		r0 := g0*p.cell[0].t + p.source*inverse + p.air + k0*y0
		r1 := g1*p.cell[1].t + k1*y1
		r2 := g2*p.cell[2].t + k2*y2
		r3 := g3*p.cell[3].t + p.back + k3*y3
		d00 := g0 + k.leave[0] - k0*k0*m00
		d01 := -k.across[1] - k0*k1*m01
		d11 := g1 + k.leave[1] - k1*k1*m11
		d02, d03 := -k0*k2*m02, -k0*k3*m03
		d12 := -k.across[2] - k1*k2*m12
		d13 := -k1 * k3 * m13
		d22 := g2 + k.leave[2] - k2*k2*m22
		d23 := -k.across[3] - k2*k3*m23
		d33 := g3 + k.leave[3] - k3*k3*m33
		if j == 0 {
			r0 += a.wet * w.start
			a.inner = block{sym4{d00, d01, d02, d03, d11, d12, d13, d22, d23, d33}, [4]float64{r0, r1, r2, r3}}
			break
		}
		d := 1 / (d00*d11 - d01*d01)
		p0, p1, p2 := d11*d, -d01*d, d00*d
		w00, w01 := p0*d02+p1*d12, p0*d03+p1*d13
		w10, w11 := p1*d02+p2*d12, p1*d03+p2*d13
		s0, s1, s2 := d22-d02*w00-d12*w10, d23-d02*w01-d12*w11, d33-d03*w01-d13*w11
		d = 1 / (s0*s2 - s1*s1)
		m22, m23, m33 = s2*d, -s1*d, s0*d
		v00, v01 := w00*m22+w01*m23, w00*m23+w01*m33
		v10, v11 := w10*m22+w11*m23, w10*m23+w11*m33
		m00, m01, m02, m03 = p0+v00*w00+v01*w01, p1+v00*w10+v01*w11, -v00, -v01
		m11, m12, m13 = p2+v10*w10+v11*w11, -v10, -v11
		i := &k.inverse
		i[0], i[1], i[2], i[3], i[4], i[5], i[6], i[7], i[8], i[9] = m00, m01, m02, m03, m11, m12, m13, m22, m23, m33
		k.r[0], k.r[1], k.r[2], k.r[3] = r0, r1, r2, r3
		y0 = m00*r0 + m01*r1 + m02*r2 + m03*r3
		y1 = m01*r0 + m11*r1 + m12*r2 + m13*r3
		y2 = m02*r0 + m12*r1 + m22*r2 + m23*r3
		y3 = m03*r0 + m13*r1 + m23*r2 + m33*r3
	}
}

func (a *arm) substitute4() {
	columns := a.in()
	q := &columns[0]
	x0, x1, x2, x3 := q.cell[0].next, q.cell[1].next, q.cell[2].next, q.cell[3].next
	for j := 1; j < len(columns); j++ {
		p := &columns[j]
		r, k, m := &p.chain.r, &q.chain.along, &p.chain.inverse
		y0, y1, y2, y3 := r[0]+k[0]*x0, r[1]+k[1]*x1, r[2]+k[2]*x2, r[3]+k[3]*x3
		x0 = m[0]*y0 + m[1]*y1 + m[2]*y2 + m[3]*y3
		x1 = m[1]*y0 + m[4]*y1 + m[5]*y2 + m[6]*y3
		x2 = m[2]*y0 + m[5]*y1 + m[7]*y2 + m[8]*y3
		x3 = m[3]*y0 + m[6]*y1 + m[8]*y2 + m[9]*y3
		p.cell[0].next, p.cell[1].next, p.cell[2].next, p.cell[3].next = x0, x1, x2, x3
		if x0 > a.first || x1 > a.first || x2 > a.first || x3 > a.first {
			a.hot = max(a.hot, j)
		}
		q = p
	}
}
