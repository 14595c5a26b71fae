package section

// banded is the symmetric system of an arm of six layers: row u is linked to rows u−1 … u−maxLayers at most. A row's
// links lie side by side, since elimination takes one row after another.
type banded struct {
	rows int
	a    [maxCells][maxLayers + 1]float64 // a[u][k] links row u to row u−k; a[u][0] is the diagonal
	rhs  [maxCells]float64
}

func (m *banded) clear(rows int) {
	m.rows = rows
	clear(m.a[:rows])
	clear(m.rhs[:rows])
}

// link puts a conductance between row u and the row that stands k before it.
func (m *banded) link(u, k int, g float64) {
	m.a[u][0] += g
	m.a[u-k][0] += g
	m.a[u][k] -= g
}

// eliminate takes every row but the last six out of the system; those six then hold all that the joint sees of the arm.
func (m *banded) eliminate() {
	for p := range m.rows - maxLayers {
		d, right := 1/m.a[p][0], m.rhs[p]
		below := (*[maxLayers][maxLayers + 1]float64)(m.a[p+1 : p+1+maxLayers])
		rhs := (*[maxLayers]float64)(m.rhs[p+1 : p+1+maxLayers])
		f1, f2, f3 := below[0][1]*d, below[1][2]*d, below[2][3]*d
		f4, f5, f6 := below[3][4]*d, below[4][5]*d, below[5][6]*d
		r := &below[0]
		r[0] -= f1 * r[1]
		r = &below[1]
		r[1], r[0] = r[1]-f1*r[2], r[0]-f2*r[2]
		r = &below[2]
		r[2], r[1], r[0] = r[2]-f1*r[3], r[1]-f2*r[3], r[0]-f3*r[3]
		r = &below[3]
		r[3], r[2], r[1], r[0] = r[3]-f1*r[4], r[2]-f2*r[4], r[1]-f3*r[4], r[0]-f4*r[4]
		r = &below[4]
		r[4], r[3], r[2], r[1], r[0] = r[4]-f1*r[5], r[3]-f2*r[5], r[2]-f3*r[5], r[1]-f4*r[5], r[0]-f5*r[5]
		r = &below[5]
		r[5], r[4], r[3], r[2], r[1], r[0] = r[5]-f1*r[6], r[4]-f2*r[6], r[3]-f3*r[6], r[2]-f4*r[6], r[1]-f5*r[6], r[0]-f6*r[6]
		rhs[0] -= f1 * right
		rhs[1] -= f2 * right
		rhs[2] -= f3 * right
		rhs[3] -= f4 * right
		rhs[4] -= f5 * right
		rhs[5] -= f6 * right
	}
}

// substitute finds the eliminated rows from the last six, whose solution rhs already holds.
func (m *banded) substitute() {
	for p := m.rows - maxLayers - 1; p >= 0; p-- {
		s := m.rhs[p]
		below := (*[maxLayers][maxLayers + 1]float64)(m.a[p+1 : p+1+maxLayers])
		rhs := (*[maxLayers]float64)(m.rhs[p+1 : p+1+maxLayers])
		for i := range maxLayers {
			s -= below[i][i+1] * rhs[i]
		}
		m.rhs[p] = s / m.a[p][0]
	}
}
