package suggest

// line holds values at evenly spaced places, from 0 to len-1, with a curve through them that rises and falls
// only where they do: cubics whose slope at a place is the harmonic mean of the slopes on both sides, and zero
// where these differ in sign. The curve is a continuous function of the values.
type line []float64

func (l line) at(x float64) float64 {
	n := len(l)
	if n == 1 {
		return l[0]
	}
	i := max(0, min(n-2, int(x)))
	u := x - float64(i)
	a, b := l[i], l[i+1]
	d := b - a
	s, e := l.slope(i), l.slope(i+1)
	return a + u*(s+u*((3*d-2*s-e)+u*(s+e-2*d)))
}

func (l line) slope(i int) float64 {
	n := len(l)
	if i == 0 {
		return l[1] - l[0]
	}
	if i == n-1 {
		return l[n-1] - l[n-2]
	}
	before, after := l[i]-l[i-1], l[i+1]-l[i]
	if before*after <= 0 {
		return 0
	}
	return 2 * before * after / (before + after)
}
