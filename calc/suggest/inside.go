package suggest

import (
	"math"

	"brazebooth/tables"
)

// How a place is brought inside the edges: a missed edge, in its doubts, weighs so much against a way along the open
// setting, in logarithms; an edge counts as missed from a little inside it, and what the curves say is put right by so
// many answers. Where even the place that misses least misses by some doubts there is nothing to be brought into.
const (
	missPrice = 20
	insideBy  = 0.009
	corrected = 5
	givenUp   = 1
)

// path is one open setting with the edges' margins along it at the computed heat, and the hand's two where it is the
// travel.
type path struct {
	axis
	margins []line
	hand    *Range // of the travel; nil for the feed
	doubts  []float64
	off     []float64 // what each curve is short of the last answer
}

// inside moves a mean, counted in points, no further than it takes to meet every edge:
//
//	(x − mean)² + 20·Σ (missed/doubt)²
//
// is least there. A mean lies where the chance is, and that may be beside a good zone that is narrower than the doubts.
// Where the mean is inside already it stays, and bit by bit where no setting meets every edge.
func (s *search) inside(p *path, mean float64, setting func(at float64) Setting) (float64, error) {
	p.doubts, p.off = s.p.Doubts, make([]float64, len(s.p.Doubts))
	x := mean
	for range corrected {
		points, err := s.ask([]Setting{setting(p.at(x))})
		if err != nil {
			return x, err
		}
		for e, m := range points[0].Margins {
			p.off[e] = m - p.margins[e].at(x)
		}
		before := x
		if x = p.least(mean); math.Abs(x-before) < 1e-3 {
			break
		}
	}
	return x, nil
}

// least is where the sum above is least: the best point of a grid, then a golden section about it.
func (p *path) least(mean float64) float64 {
	sum := func(x float64) float64 {
		way := (x - mean) * p.step
		return way*way + missPrice*p.missed(x, insideBy)
	}
	if p.missed(mean, insideBy) == 0 {
		return mean // to the last bit
	}
	best := mean
	for _, x := range p.fine() {
		if sum(x) < sum(best) {
			best = x
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

// missed is the sum of the squares of what is missed, each edge in its doubt, and from so far inside it on.
func (p *path) missed(x, inside float64) (sum float64) {
	miss := func(margin, doubt float64) {
		if short := (inside - margin) / doubt; short > 0 {
			sum += short * short
		}
	}
	for e := range p.margins {
		miss(p.margins[e].at(x)+p.off[e], p.doubts[e])
	}
	if p.hand != nil {
		travel := p.at(x)
		miss(math.Log(travel/p.hand.Low), tables.SlowDoubt.V)
		miss(math.Log(p.hand.High/travel), tables.FastDoubt.V)
	}
	return sum
}
