package calc

import "math"

// trust is when an interpolated limit may be used: it must lie further from zero, as a logarithm, than certain beside
// what its curve and its straight line differ by, so that its sign can be read off; and those may differ by kink.
type trust struct{ certain, kink float64 }

// trusted is by how many points lie between known ones: over twice the distance more is asked, so that a window's
// margins are as good as when every second point is computed.
var trusted = map[int]trust{2: {0.035, 0.05}, 4: {0.1, 0.01}}

// smooth fills a point from the known ones about it, by cubics through four of them along each axis, and reports
// whether that was safe: every limit clearly of one sign there, and the curve nowhere far from the straight line
// between the nearest two.
func (c *limitGrid) smooth(first []bool, i, j, step int) bool {
	xs, ys := stencilOf(i, c.feeds.n, step), stencilOf(j, c.travels.n, step)
	var curve, line Limits
	asked := trusted[step]
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
		if bent := math.Abs(curve[e] - line[e]); bent > asked.kink || math.Abs(curve[e]) < asked.certain+bent {
			return false
		}
	}
	c.logs[i*c.travels.n+j] = curve
	return true
}

// fine reports whether points lie so close to each other that a cubic through them may be trusted near an edge; on
// coarser grids it moved borders.
func (c *limitGrid) fine() bool { return c.feeds.n >= 40 && c.travels.n >= 20 }

// fill gives a point the limits that follow from those about it that are known, every so many points along each axis,
// and reports whether that was safe.
func (c *limitGrid) fill(first []bool, i, j, step int) bool {
	if c.fine() {
		return c.smooth(first, i, j, step)
	}
	return c.flat(first, i, j)
}

// stencil is which points along an axis a value is read from, and by what weights.
type stencil struct {
	n               int
	at              [4]int
	cubic, straight [4]float64
}

// stencilOf is a known point itself, or the nearest four about one between them: two to each side where there are
// two. Known are every so many points and the last.
func stencilOf(i, n, step int) (s stencil) {
	if i%step == 0 || i == n-1 {
		return stencil{1, [4]int{i}, [4]float64{1}, [4]float64{1}}
	}
	s.n = 4
	last := (n - 2 + step) / step // the number of the last known point
	from := max(0, min(i/step-1, last-3))
	for k := range s.at {
		s.at[k] = min((from+k)*step, n-1)
	}
	left := i/step - from // of the point's neighbours, the lower one
	share := part(i, s.at[left], s.at[left+1])
	s.straight[left], s.straight[left+1] = 1-share, share
	for k := range s.at {
		over, under := 1.0, 1.0
		for m := range s.at {
			if m != k {
				over, under = over*float64(i-s.at[m]), under*float64(s.at[k]-s.at[m])
			}
		}
		s.cubic[k] = over / under
	}
	return s
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
