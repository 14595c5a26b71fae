package section

// banded is one arm's symmetric system: row u is linked to rows u−1 … u−n at most, n its layers.
type banded struct {
	rows int
	a    [maxLayers + 1][maxCells]float64 // a[k][u] links row u to row u−k; a[0] is the diagonal
	rhs  [maxCells]float64
}

func (m *banded) clear(rows, n int) {
	m.rows = rows
	for k := 0; k <= n; k++ {
		clear(m.a[k][:rows])
	}
	clear(m.rhs[:rows])
}

// link puts a conductance between row u and the row that stands k before it.
func (m *banded) link(u, k int, g float64) {
	m.a[0][u] += g
	m.a[0][u-k] += g
	m.a[k][u] -= g
}

// eliminate takes every row but the last n out of the system; the last n keep what is left, the joint's
// view of the arm.
func (m *banded) eliminate(n int) {
	for p := range m.rows - n {
		d := 1 / m.a[0][p]
		for i := 1; i <= n; i++ {
			f := m.a[i][p+i] * d
			if f == 0 {
				continue
			}
			for j := i; j <= n; j++ {
				m.a[j-i][p+j] -= f * m.a[j][p+j]
			}
			m.rhs[p+i] -= f * m.rhs[p]
		}
	}
}

// substitute finds the eliminated rows from the last n, which rhs already holds solved.
func (m *banded) substitute(n int) {
	for p := m.rows - n - 1; p >= 0; p-- {
		s := m.rhs[p]
		for i := 1; i <= n; i++ {
			s -= m.a[i][p+i] * m.rhs[p+i]
		}
		m.rhs[p] = s / m.a[0][p]
	}
}
