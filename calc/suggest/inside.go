package suggest

import (
	"cmp"
	"math"
	"slices"

	"brazebooth/tables"
)

// How deep inside the edges a place should lie, in the doubts of each edge: wholeDepth, or a share of the depth that
// the best place of a narrow zone has. What an edge is short of it weighs a little against a way along the open
// setting, in logarithms, and what it is short of a smaller depth much: the place turns toward the middle of the zone
// long before an edge, and never over one. What the curves say is put right by so many answers. Where even the place
// that misses least misses by some doubts there is nothing to be brought into.
const (
	wholeDepth = 1
	depthShare = 0.9
	leastDepth = 0.1
	deepPrice  = 0.03
	firmDepth  = 0.4 // of the depth
	firmPrice  = 20
	corrected  = 5
	givenUp    = 1
)

// path is one open setting with the edges' margins along it at the computed heat, and the hand's two where it is the
// travel.
type path struct {
	axis
	margins []line
	hand    *Range // of the travel; nil for the feed
	doubts  []float64
	answers []answer // in the order of their places
}

// answer is what each edge's curve is short of the margin that was computed at a place, counted in points.
type answer struct {
	x   float64
	off []float64
}

// inside moves a mean, counted in points, no further than it takes to lie well inside every edge: where
//
//	(x − mean)² + 0.03·Σ (depth − margin/doubt)² + 20·Σ (0.4·depth − margin/doubt)²
//
// is least, each sum over the edges that are nearer than that. A mean lies where the chance is, and that may be beside
// a good zone that is narrower than the doubts. Where the mean is deep enough it stays, and bit by bit where no setting
// meets every edge. An edge may run in steps that no curve shows: what the curves are short of is read off all answers
// so far, so that the search closes in between two of them instead of going to and fro.
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

// learn keeps what the curves are short of the margins at a place.
func (p *path) learn(x float64, margins []float64) {
	a := answer{x, make([]float64, len(margins))}
	for e, m := range margins {
		a.off[e] = m - p.margins[e].at(x)
	}
	i, _ := slices.BinarySearchFunc(p.answers, x, func(b answer, x float64) int { return cmp.Compare(b.x, x) })
	p.answers = slices.Insert(p.answers, i, a)
}

// short is what an edge's curve is short of at a place: straight between the answers, and as at the nearest beyond
// them.
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

// depth is how deep inside every edge a place should lie, in doubts.
func (p *path) depth(places []float64) float64 {
	deepest := math.Inf(-1)
	for _, x := range places {
		least := math.Inf(1)
		p.each(x, func(inside float64) { least = min(least, inside) })
		deepest = max(deepest, least)
	}
	return max(leastDepth, min(wholeDepth, depthShare*deepest))
}

// least is where the sum above is least: the best point of a grid, then a golden section about it.
func (p *path) least(mean float64) float64 {
	places := p.fine()
	depth := p.depth(places)
	sum := func(x float64) float64 {
		way := (x - mean) * p.step
		return way*way + deepPrice*p.missed(x, depth) + firmPrice*p.missed(x, firmDepth*depth)
	}
	if p.missed(mean, depth) == 0 {
		return mean // to the last bit
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

// missed is the sum of the squares of what the edges are short of a depth, in doubts.
func (p *path) missed(x, depth float64) (sum float64) {
	p.each(x, func(inside float64) {
		if short := depth - inside; short > 0 {
			sum += short * short
		}
	})
	return sum
}

// each tells how far inside each edge a place lies, in its doubts.
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
