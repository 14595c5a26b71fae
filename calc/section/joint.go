package section

const maxNode = maxArms*maxLayers + 1

// node is the small dense system where the arms meet: their innermost columns and the joint itself, which holds no
// heat.
type node struct {
	a    [maxNode][maxNode]float64
	rhs  [maxNode]float64
	rows int
}

func (d *node) link(u, v int, g float64) {
	d.a[u][u] += g
	d.a[v][v] += g
	d.a[u][v] -= g
	d.a[v][u] -= g
}

// meet solves the innermost columns of all arms together and hands the result back to their systems.
func (w *Workspace) meet() {
	d := &w.core
	first := w.gather()
	joint := d.rows - 1
	if w.n > 1 {
		w.couple(first, joint)
	} else {
		d.rows-- // one arm and its mirror: nothing crosses the middle
	}
	d.solve()
	for i := range w.n {
		m, n := &w.band[i], w.arms[i].layers
		for l := range n {
			m.rhs[m.rows-n+l] = d.rhs[first[i]+l]
		}
	}
}

// gather copies what elimination left of each arm, and returns each arm's first row.
func (w *Workspace) gather() (first [maxArms]int) {
	d := &w.core
	d.rows = 1
	for i := range w.n {
		first[i] = d.rows - 1
		d.rows += w.arms[i].layers
	}
	for u := range d.rows {
		d.rhs[u] = 0
		for v := range d.rows {
			d.a[u][v] = 0
		}
	}
	for i := range w.n {
		m, n := &w.band[i], w.arms[i].layers
		for l := range n {
			from := m.rows - n + l
			d.rhs[first[i]+l] = m.rhs[from]
			for k := 0; k <= l; k++ {
				d.a[first[i]+l][first[i]+l-k] = m.a[from][k]
				d.a[first[i]+l-k][first[i]+l] = m.a[from][k]
			}
		}
	}
	return first
}

// couple links the arms. The ending member meets the joint over the part of its edge that filler has filled; the
// skins meet there too, through base and filler; the through member's core goes on under it.
func (w *Workspace) couple(first [maxArms]int, joint int) {
	d := &w.core
	u, p := &w.arms[0], &w.arms[1]
	half := u.dy[0] / 2
	if w.star {
		w.coupleStar(first, joint, half)
		return
	}
	kf := w.fillerConductivity((u.t[0] + p.t[0]) / 2)
	if w.n == 2 { // butt and corner: both members end here, and filler bridges them
		bridged := min(1, min(u.filler[0], p.filler[0])/min(u.thick, p.thick))
		for i := range 2 {
			a := &w.arms[i]
			d.link(first[i], joint, (bridged*a.k[0]*a.depth[0]+kf*a.filler[0])/half)
			for l := 1; l < a.layers; l++ {
				d.link(first[i]+l, joint, bridged*a.k[l]*a.depth[l]/half)
			}
		}
		return
	}
	filled := min(1, p.filler[0]/u.thick)
	throughSkins := kf * max(0, min(u.filler[0], p.filler[0]-u.thick))
	d.link(first[0], joint, (filled*u.k[0]*u.depth[0]+throughSkins)/half)
	for l := 1; l < u.layers; l++ {
		d.link(first[0]+l, joint, filled*u.k[l]*u.depth[l]/half)
	}
	m := &w.arms[2]
	d.link(first[1], joint, (p.k[0]*p.depth[0]+kf*p.filler[0])/half)
	d.link(first[2], joint, m.k[0]*m.depth[0]/half)
	for l := 1; l < p.layers; l++ {
		d.link(first[1]+l, first[2]+l, (p.k[l]+m.k[l])/2*p.depth[l]/(2*half))
	}
}

// coupleStar lets every layer of every arm meet in the node: the ideal star that has a closed form.
func (w *Workspace) coupleStar(first [maxArms]int, joint int, half float64) {
	for i := range w.n {
		a := &w.arms[i]
		for l := range a.layers {
			w.core.link(first[i]+l, joint, a.k[l]*a.depth[l]/half)
		}
	}
}

// solve is Gaussian elimination without pivoting: the matrix is diagonally dominant. A joint that no filler has
// reached yet is linked to nothing and keeps zero.
func (d *node) solve() {
	n := d.rows
	for p := range n {
		if d.a[p][p] == 0 {
			continue
		}
		inverse := 1 / d.a[p][p]
		for i := p + 1; i < n; i++ {
			f := d.a[i][p] * inverse
			if f == 0 {
				continue
			}
			for j := p; j < n; j++ {
				d.a[i][j] -= f * d.a[p][j]
			}
			d.rhs[i] -= f * d.rhs[p]
		}
	}
	for p := n - 1; p >= 0; p-- {
		if d.a[p][p] == 0 {
			continue
		}
		s := d.rhs[p]
		for j := p + 1; j < n; j++ {
			s -= d.a[p][j] * d.rhs[j]
		}
		d.rhs[p] = s / d.a[p][p]
	}
}
