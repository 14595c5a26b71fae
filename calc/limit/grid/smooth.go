package grid

import (
	"math"

	"brazebooth/calc/limit"
)

// trust says when an interpolated limit may be used, in logarithms: its cubic and its straight line differ by no more
// than kink, and it lies further from zero than that difference and certain together, so that its sign is sure.
type trust struct{ certain, kink float64 }

// trusted is the trust by the step between known points. It is stricter over twice the distance, so that a window's
// margins are as good as if every second point were computed.
var trusted = map[int]trust{2: {0.035, 0.05}, 4: {0.1, 0.01}}

// computed are the limits that need a cross-section; the others have closed forms and are always smooth.
var computed = [...]limit.Limit{limit.Wets, limit.Solid, limit.Burn, limit.Bridges, limit.Stays, limit.Zinc}

// smooth interpolates a point from the known points around it, by cubics through four of them along each axis, and
// reports whether that was safe, see trust. first marks the known points.
func (c *Limits) smooth(first []bool, i, j, step int) bool {
	xs, ys := stencilOf(i, c.Feeds.N, step), stencilOf(j, c.Travels.N, step)
	var curve, line limit.All
	asked := trusted[step]
	for x := range xs.n {
		for y := range ys.n {
			k := xs.at[x]*c.Travels.N + ys.at[y]
			l := &c.Points[k]
			if !first[k] || *l == limit.Hopeless {
				return false
			}
			cubic, straight := xs.cubic[x]*ys.cubic[y], xs.straight[x]*ys.straight[y]
			for e := range l {
				curve[e] += cubic * l[e]
				line[e] += straight * l[e]
			}
		}
	}
	for _, e := range computed {
		if bent := math.Abs(curve[e] - line[e]); bent > asked.kink || math.Abs(curve[e]) < asked.certain+bent {
			return false
		}
	}
	c.Points[i*c.Travels.N+j] = curve
	return true
}

// Fine reports whether the points are close enough for cubics through them; on coarser grids cubics moved borders.
func (c *Limits) Fine() bool { return c.Feeds.N >= 40 && c.Travels.N >= 20 }

// stencil is the points along an axis that a value is read from, and their weights by a cubic and by a straight line.
type stencil struct {
	n               int
	at              [4]int
	cubic, straight [4]float64
}

// stencilOf is the stencil of point i of n: the point itself where it is known, else the four known points nearest to
// it, two on each side where there are two. Every step-th point is known, and the last.
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
	share := Part(i, s.at[left], s.at[left+1])
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

// flat fills a point of a coarse grid linearly from its known neighbours where all are of one zone and far from every
// edge, and reports whether they are.
func (c *Limits) flat(first []bool, i, j int) bool {
	i0, j0 := i&^1, j&^1
	i1, j1 := min(i0+2, c.Feeds.N-1), min(j0+2, c.Travels.N-1)
	var corners [4]*limit.All
	for n, k := range [4]int{i0*c.Travels.N + j0, i0*c.Travels.N + j1, i1*c.Travels.N + j0, i1*c.Travels.N + j1} {
		l := &c.Points[k]
		if !first[k] || *l == limit.Hopeless || n > 0 && l.Zone() != corners[0].Zone() {
			return false
		}
		for _, edge := range computed {
			if math.Abs(l[edge]) < flatFrom {
				return false
			}
		}
		corners[n] = l
	}
	c.Points[i*c.Travels.N+j] = bilinear(corners, Part(i, i0, i1), Part(j, j0, j1))
	return true
}

// flatFrom is how far from zero a limit must be for a coarse grid to interpolate it, as a logarithm.
const flatFrom = 0.15
