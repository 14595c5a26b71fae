package calc

import "math"

// certain is how far from zero, as a logarithm, a limit must be beside what its curve and its straight line differ by,
// for its sign to be read off them; kink is by how much those may differ.
const (
	certain = 0.035
	kink    = 0.05
)

// smooth fills a point from the computed ones about it, by cubics through four of them along each axis, and reports
// whether that was safe: every limit clearly of one sign there, and the curve nowhere far from the straight line
// between the nearest two.
func (c *limitGrid) smooth(first []bool, i, j int) bool {
	xs, ys := stencilOf(i, c.feeds.n), stencilOf(j, c.travels.n)
	if !xs.whole || !ys.whole {
		return false
	}
	var curve, line Limits
	for x := range xs.n {
		for y := range ys.n {
			k := xs.at[x]*c.travels.n + ys.at[y]
			l := &c.logs[k]
			if !first[k] || *l == hopeless {
				return false
			}
			cubic, straight := xs.cubic[x]*ys.cubic[y], xs.straight[x]*ys.straight[y]
			for e := range l {
				curve[e] += cubic * l[e]
				line[e] += straight * l[e]
			}
		}
	}
	for _, e := range [...]limit{lWets, lSolid, lBurn, lBridges, lStays, lZinc} { // the others have closed forms
		if bent := math.Abs(curve[e] - line[e]); bent > kink || math.Abs(curve[e]) < certain+bent {
			return false
		}
	}
	c.logs[i*c.travels.n+j] = curve
	return true
}

// fine reports whether points lie so close to each other that a cubic through them may be trusted near an edge; on
// coarser grids it moved borders.
func (c *limitGrid) fine() bool { return c.feeds.n >= 40 && c.travels.n >= 20 }

// fill gives a point the limits that follow from the computed ones about it, and reports whether that was safe.
func (c *limitGrid) fill(first []bool, i, j int) bool {
	if c.fine() {
		return c.smooth(first, i, j)
	}
	return c.flat(first, i, j)
}

// stencil is which points along an axis a value is read from, and by what weights.
type stencil struct {
	n               int
	at              [4]int
	cubic, straight [4]float64
	whole           bool // none of them lies off the grid
}

// stencilOf is a computed point itself, or the two to each side of one between them.
func stencilOf(i, n int) (s stencil) {
	if i%2 == 0 || i == n-1 {
		return stencil{1, [4]int{i}, [4]float64{1}, [4]float64{1}, true}
	}
	return stencil{4, [4]int{i - 3, i - 1, i + 1, i + 3}, [4]float64{-1. / 16, 9. / 16, 9. / 16, -1. / 16},
		[4]float64{0, 0.5, 0.5, 0}, i >= 3 && i+3 < n}
}

// flat fills a point from its computed neighbours where they agree, and reports whether they did.
func (c *limitGrid) flat(first []bool, i, j int) bool {
	i0, j0 := i&^1, j&^1
	i1, j1 := min(i0+2, c.feeds.n-1), min(j0+2, c.travels.n-1)
	var corners [4]*Limits
	for n, k := range [4]int{i0*c.travels.n + j0, i0*c.travels.n + j1, i1*c.travels.n + j0, i1*c.travels.n + j1} {
		l := &c.logs[k]
		if !first[k] || *l == hopeless || n > 0 && l.Zone() != corners[0].Zone() {
			return false
		}
		for _, edge := range [...]limit{lWets, lSolid, lBurn, lBridges, lStays, lZinc} {
			if math.Abs(l[edge]) < flatFrom {
				return false
			}
		}
		corners[n] = l
	}
	c.logs[i*c.travels.n+j] = bilinear(corners, part(i, i0, i1), part(j, j0, j1))
	return true
}

// flatFrom is how far, as a logarithm, a point must be from the heat's edges to count as flat.
const flatFrom = 0.15
