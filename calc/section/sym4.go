package section

// sym4 is a symmetric matrix of four rows, stored as its upper half: 00, 01, 02, 03, 11, 12, 13, 22, 23, 33.
type sym4 [10]float64

// invert writes the inverse by blocks of two: with P the first block, Q beside it and R the last, S = R −
// QᵀP⁻¹Q.
func (m *sym4) invert(out *sym4) {
	d := 1 / (m[0]*m[4] - m[1]*m[1])
	p0, p1, p2 := m[4]*d, -m[1]*d, m[0]*d
	// W = P⁻¹Q
	w00, w01 := p0*m[2]+p1*m[5], p0*m[3]+p1*m[6]
	w10, w11 := p1*m[2]+p2*m[5], p1*m[3]+p2*m[6]
	s0, s1, s2 := m[7]-m[2]*w00-m[5]*w10, m[8]-m[2]*w01-m[5]*w11, m[9]-m[3]*w01-m[6]*w11
	d = 1 / (s0*s2 - s1*s1)
	i0, i1, i2 := s2*d, -s1*d, s0*d
	// V = W·S⁻¹
	v00, v01 := w00*i0+w01*i1, w00*i1+w01*i2
	v10, v11 := w10*i0+w11*i1, w10*i1+w11*i2
	*out = sym4{
		p0 + v00*w00 + v01*w01, p1 + v00*w10 + v01*w11, -v00, -v01,
		p2 + v10*w10 + v11*w11, -v10, -v11,
		i0, i1, i2,
	}
}

func (m *sym4) times(x *[4]float64) [4]float64 {
	return [4]float64{
		m[0]*x[0] + m[1]*x[1] + m[2]*x[2] + m[3]*x[3],
		m[1]*x[0] + m[4]*x[1] + m[5]*x[2] + m[6]*x[3],
		m[2]*x[0] + m[5]*x[1] + m[7]*x[2] + m[8]*x[3],
		m[3]*x[0] + m[6]*x[1] + m[8]*x[2] + m[9]*x[3],
	}
}

// at is the index of row i and column k of a symmetric matrix of n rows, two or four.
func at(n, i, k int) int {
	if i > k {
		i, k = k, i
	}
	if n == 2 {
		return i + k
	}
	return i*(7-i)/2 + k
}

// inverse inverts the first n rows, two or four, in place.
func (m *sym4) inverse(n int) {
	if n == maxLayers {
		m.invert(m)
		return
	}
	d := 1 / (m[0]*m[2] - m[1]*m[1])
	m[0], m[1], m[2] = m[2]*d, -m[1]*d, m[0]*d
}

// of multiplies the first n rows.
func (m *sym4) of(n int, x *[maxLayers]float64) [maxLayers]float64 {
	if n == maxLayers {
		return m.times(x)
	}
	return [maxLayers]float64{m[0]*x[0] + m[1]*x[1], m[1]*x[0] + m[2]*x[1]}
}
