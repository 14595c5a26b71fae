package section

// A sheet of two layers, skin and core, is nearly every arm. Its system is a chain of columns of two unknowns each: a
// whole column is eliminated with one division, and the conductances are found once a step, however often the step is
// solved again.

// pairs is what an arm of two layers conducts, and its columns as elimination leaves them.
type pairs struct {
	skin, core [maxColumns]float64 // from column j to j+1, W/K for each mm of travel
	across     [maxColumns]float64 // from skin to core
	sumS, sumC [maxColumns]float64 // all that leaves the cell
	// The inverse of a column's block, and its right side.
	ss, sc, cc [maxColumns]float64
	rs, rc     [maxColumns]float64
}

// conduct finds what an arm conducts at the temperatures where the step begins.
func (w *Workspace) conduct(a *arm) {
	p := &a.pairs
	n := a.columns
	between := 2 / (a.depth[0] + a.depth[1])
	for j := range n {
		c := 2 * j
		a.k[c], a.k[c+1] = a.base.conductivity(a.t[c]), a.base.conductivity(a.t[c+1])
		g := w.loss * a.dy[j]
		p.across[j] = a.k[c+1] * a.dy[j] * between
		p.sumS[j], p.sumC[j] = g+p.across[j], g+p.across[j]
	}
	for j := range n - 1 {
		c := 2 * j
		s := ((a.k[c]+a.k[c+2])/2*a.depth[0] + w.beadConductance(a, j)) * a.closeness[j+1]
		d := (a.k[c+1] + a.k[c+3]) / 2 * a.depth[1] * a.closeness[j+1]
		p.skin[j], p.core[j] = s, d
		p.sumS[j] += s
		p.sumC[j] += d
		p.sumS[j+1] += s
		p.sumC[j+1] += d
	}
}

// inward takes every column but the innermost out of the system and leaves that one in the band's last two rows,
// where the joint reads it.
func (w *Workspace) inward(a *arm, m *banded, dt float64) {
	p := &a.pairs
	inverse := 1 / dt
	ds, dc, v, rs, rc := 0.0, 0.0, 0.0, 0.0, 0.0 // what the column outside adds to this one
	for j := a.columns - 1; j >= 0; j-- {
		c := 2 * j
		gs, gc := a.cap[c]*inverse, a.cap[c+1]*inverse
		air := w.loss * a.dy[j] * w.start
		ds += gs + p.sumS[j]
		dc += gc + p.sumC[j]
		v += p.across[j]
		rs += gs*a.t[c] + a.source[j]*inverse + air
		rc += gc*a.t[c+1] + air
		if j == 0 {
			break
		}
		d := 1 / (ds*dc - v*v)
		ss, sc, cc := dc*d, v*d, ds*d
		p.ss[j], p.sc[j], p.cc[j], p.rs[j], p.rc[j] = ss, sc, cc, rs, rc
		ks, kc := p.skin[j-1], p.core[j-1]
		ys, yc := ss*rs+sc*rc, sc*rs+cc*rc
		ds, dc, v = -ks*ks*ss, -kc*kc*cc, ks*kc*sc
		rs, rc = ks*ys, kc*yc
	}
	m.rows = 2 * a.columns
	last := m.rows - 2
	m.a[last][0], m.a[last+1][0], m.a[last+1][1] = ds, dc, -v
	m.rhs[last], m.rhs[last+1] = rs, rc
}

// outward finds the other columns from the innermost, which the joint has solved.
func (a *arm) outward(m *banded) {
	p := &a.pairs
	last := m.rows - 2
	xs, xc := m.rhs[last], m.rhs[last+1]
	for j := 1; j < a.columns; j++ {
		rs, rc := p.rs[j]+p.skin[j-1]*xs, p.rc[j]+p.core[j-1]*xc
		xs, xc = p.ss[j]*rs+p.sc[j]*rc, p.sc[j]*rs+p.cc[j]*rc
		m.rhs[last-2*j], m.rhs[last-2*j+1] = xs, xc
	}
}
