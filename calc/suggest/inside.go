package suggest

import (
	"cmp"
	"math"
	"slices"

	"brazebooth/tables"
)

// The depth that a setting should have inside the edges, in doubts of each edge, is wholeDepth, or in a narrow
// zone a share of the depth of its best setting. Being short of it counts a little against a move along the
// open setting, in logarithms, and being short of firmDepth counts much: the result turns toward the middle of
// the zone long before it reaches an edge, and never crosses one. The curves are corrected with up to
// `corrected` computed points. If even the best setting misses by some doubts, there is no zone to move into.
const (
	wholeDepth = 1
	depthShare = 0.9
	leastDepth = 0.1
	deepPrice  = 0.03
	firmDepth  = 0.4 // as a share of the depth
	firmPrice  = 20
	corrected  = 5
	givenUp    = 1
)

// path is the range of one open setting with the edges' margins along it at the computed heat and, for the
// travel, the two limits of a hand.
type path struct {
	axis
	margins []line
	hand    *Range // for the travel; nil for the feed
	doubts  []float64
	answers []answer // in the order of x
}

// answer is the difference between the computed margin of each edge and its curve at a place, counted in
// points.
type answer struct {
	x   float64
	off []float64
}

// inside moves a mean, counted in points, only as far as it must to lie well inside every edge: to where
//
//	(x − mean)² + 0.03·Σ (depth − margin/doubt)² + 20·Σ (0.4·depth − margin/doubt)²
//
// is least. Each sum is over the edges that are nearer than that. A mean lies where the chance is, and that may
// be beside a good zone that is narrower than the doubts. A mean that is deep enough stays, and it moves less
// and less the more the edges are missed. An edge may change in steps that no curve shows, so the curves are
// corrected by all answers so far; the search then closes in between two of them instead of going back and
// forth.
func (s *search) inside(p *path, mean float64, setting func(at float64) Setting) (float64, error) {
	p.doubts = s.p.Doubts
	x := mean
	for range corrected {
		points, err := s.ask([]Setting{setting(p.at(x))})
		if err != nil {
			return x, err
		}
		p.learn(x, points[0].Margins)
		before := x
		if x = p.least(mean); math.Abs(x-before) < 1e-3 {
			break
		}
	}
	return x, nil
}

// learn records how far the curves are from the margins at a place.
func (p *path) learn(x float64, margins []float64) {
	a := answer{x, make([]float64, len(margins))}
	for e, m := range margins {
		a.off[e] = m - p.margins[e].at(x)
	}
	i, _ := slices.BinarySearchFunc(p.answers, x, func(b answer, x float64) int { return cmp.Compare(b.x, x) })
	p.answers = slices.Insert(p.answers, i, a)
}

// short is the correction of an edge's curve at a place: linear between the answers, constant beyond them.
func (p *path) short(x float64, edge int) float64 {
	n := len(p.answers)
	if n == 0 {
		return 0
	}
	i, _ := slices.BinarySearchFunc(p.answers, x, func(b answer, x float64) int { return cmp.Compare(b.x, x) })
	if i == 0 || i == n {
		return p.answers[min(i, n-1)].off[edge]
	}
	a, b := &p.answers[i-1], &p.answers[i]
	return a.off[edge] + (b.off[edge]-a.off[edge])*(x-a.x)/(b.x-a.x)
}

// depth is the depth inside every edge that a setting should have, in doubts.
func (p *path) depth(places []float64) float64 {
	deepest := math.Inf(-1)
	for _, x := range places {
		least := math.Inf(1)
		p.each(x, func(inside float64) { least = min(least, inside) })
		deepest = max(deepest, least)
	}
	return max(leastDepth, min(wholeDepth, depthShare*deepest))
}

// least finds where the sum above is least: the best point of a grid, then a golden section around it.
func (p *path) least(mean float64) float64 {
	places := p.fine()
	depth := p.depth(places)
	sum := func(x float64) float64 {
		way := (x - mean) * p.step
		return way*way + deepPrice*p.missed(x, depth) + firmPrice*p.missed(x, firmDepth*depth)
	}
	if p.missed(mean, depth) == 0 {
		return mean // exactly
	}
	best, lowest := mean, sum(mean)
	for _, x := range places {
		if v := sum(x); v < lowest {
			best, lowest = x, v
		}
	}
	const share = 0.381966
	low, high := max(0, best-1.0/between), min(float64(p.n-1), best+1.0/between)
	for high-low > 1e-4 {
		a, b := low+share*(high-low), high-share*(high-low)
		if sum(a) < sum(b) {
			high = b
		} else {
			low = a
		}
	}
	best = (low + high) / 2
	return mean + (best-mean)*math.Exp(-p.missed(best, 0)/(givenUp*givenUp))
}

// missed is the sum of the squares of the depths that the edges lack, in doubts.
func (p *path) missed(x, depth float64) (sum float64) {
	p.each(x, func(inside float64) {
		if short := depth - inside; short > 0 {
			sum += short * short
		}
	})
	return sum
}

// each calls tell with the depth of a place inside each edge, in that edge's doubts.
func (p *path) each(x float64, tell func(inside float64)) {
	for e := range p.margins {
		tell((p.margins[e].at(x) + p.short(x, e)) / p.doubts[e])
	}
	if p.hand != nil {
		travel := p.at(x)
		tell(math.Log(travel/p.hand.Low) / tables.SlowDoubt.V)
		tell(math.Log(p.hand.High/travel) / tables.FastDoubt.V)
	}
}
