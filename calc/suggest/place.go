package suggest

import (
	"fmt"
	"math"

	"brazebooth/calc/formula"
)

// Range is the range of a setting, mm/s.
type Range struct{ Low, High float64 }

// Setting is a point to compute: feed and travel, mm/s, and a factor on the heat.
type Setting struct{ Feed, Travel, Factor float64 }

// Point is the result there: the net heat without the factor, J/mm, and each edge's margin with it.
type Point struct {
	Heat    float64
	Margins []float64
}

// Problem is a joint with one or both settings open.
type Problem struct {
	Steady       Range   // feeds whose currents the arc holds steadily
	Hand         Range   // travels that a hand holds
	Feed, Travel float64 // as chosen, mm/s; 0 where open
	// Melting: the base melts wherever the filler wets it, so that less heat is worth more.
	Melting bool
	// HeatDoubt is the uncertainty of the heat: one standard deviation of its logarithm.
	HeatDoubt float64
	// Doubts of each edge except the hand's two, in the order of a Point's margins: wets, the lesser of base
	// stays solid and no burn-through, filled, the arc's two, zinc, bridges, touches, hangs. tables has them,
	// as WetsDoubt and so on. An edge that a joint does not have keeps a margin far inside.
	Doubts []float64
	// Field computes a list of settings at once, so that it may do so in parallel. into[i].Margins has room for each
	// edge.
	Field func(at []Setting, into []Point) error
}

// Place is a suggested setting.
type Place struct{ Feed, Travel float64 } // mm/s

// The means look this far past the ranges of arc and hand, at this many places. The effect of more or less heat
// is smooth in both directions, so that it is only computed at some of the places.
const (
	feedBelow, feedAbove     = 0.88, 1.1
	travelBelow, travelAbove = 0.9, 1.1
	feedPoints, travelPoints = 7, 6
	travelsAlone             = 13 // travels if the feed is chosen
	heatEvery                = 3
	heatEveryAlone           = 2      // of the travels if the feed is chosen
	nearby, nearPoints       = 0.3, 4 // of the last feeds: distance to both sides, a logarithm
	between                  = 10     // places weighed per step between points
)

// Find returns the place of a problem. It returns ErrRange for a problem without ranges, doubts or a field; an
// error of the field ends the search.
func Find(p *Problem) (Place, error) {
	if err := p.check(); err != nil {
		return Place{}, err
	}
	s := search{p}
	feeds := axisOf(p.Feed, p.Steady, feedBelow, feedAbove, feedPoints)
	travel, feed, err := s.travel(feeds)
	if err != nil {
		return Place{}, err
	}
	if p.Travel > 0 {
		travel = p.Travel // exactly
	}
	if p.Feed == 0 {
		feeds = around(feed)
	}
	last, err := s.columns(feeds, []float64{travel}, 1)
	if err != nil {
		return Place{}, err
	}
	return s.place(&last[0], feeds, travel)
}

// travel is the travel of a problem, and a feed around which the final feed is searched.
func (s *search) travel(feeds axis) (travel, feed float64, err error) {
	alone, points, every := s.p.Feed > 0 && s.p.Travel == 0, travelPoints, 1
	if alone {
		points, every = travelsAlone, heatEveryAlone
	}
	travels := axisOf(s.p.Travel, s.p.Hand, travelBelow, travelAbove, points)
	columns, err := s.columns(feeds, travels.places(), every)
	switch {
	case err != nil:
		return 0, 0, err
	case alone:
		travel, err = s.travelForFeed(columns, travels)
		return travel, s.p.Feed, err
	}
	travel, feed = s.alongRidge(columns, feeds, travels)
	return travel, feed, nil
}

// axis is the range of an open setting in logarithms.
type axis struct {
	low, step float64
	n         int
}

func axisOf(chosen float64, r Range, below, above float64, n int) axis {
	if chosen > 0 {
		return axis{math.Log(chosen), 0, 1}
	}
	low := math.Log(r.Low * below)
	return axis{low, (math.Log(r.High*above) - low) / float64(n-1), n}
}

// around is the finer axis around a feed, over which the last mean is taken.
func around(feed float64) axis {
	return axis{math.Log(feed) - nearby, 2 * nearby / (nearPoints - 1), nearPoints}
}

func (a axis) at(x float64) float64 { return math.Exp(a.low + x*a.step) }

func (a axis) places() []float64 {
	list := make([]float64, a.n)
	for i := range list {
		list[i] = a.at(float64(i))
	}
	return list
}

// fine are the places over which a mean is taken, counted in points.
func (a axis) fine() (x []float64) {
	for i := range (a.n-1)*between + 1 {
		x = append(x, float64(i)/between)
	}
	return x
}

type search struct{ p *Problem }

// ask computes settings, in their order.
func (s *search) ask(at []Setting) ([]Point, error) {
	n := len(s.p.Doubts)
	into := make([]Point, len(at))
	room := make([]float64, len(into)*n)
	for i := range into {
		into[i].Margins = room[i*n : (i+1)*n : (i+1)*n]
	}
	if err := s.p.Field(at, into); err != nil {
		return nil, err
	}
	for i := range into {
		if err := into[i].check(n); err != nil {
			return nil, fmt.Errorf("%w at feed %.3g mm/s, travel %.3g mm/s", err, at[i].Feed, at[i].Travel)
		}
	}
	return into, nil
}

func (p *Point) check(n int) error {
	if !(p.Heat > 0) || math.IsInf(p.Heat, 1) || len(p.Margins) != n {
		return fmt.Errorf("%w: heat %g J/mm with %d margins", formula.ErrRange, p.Heat, len(p.Margins))
	}
	for _, m := range p.Margins {
		if math.IsNaN(m) {
			return fmt.Errorf("%w: a margin without a value", formula.ErrRange)
		}
	}
	return nil
}

func (p *Problem) check() error {
	for _, r := range [...]Range{p.Steady, p.Hand} {
		if !(r.Low > 0 && r.High > r.Low*1.001 && r.High <= 1e6) {
			return fmt.Errorf("%w: a setting from %g to %g mm/s", formula.ErrRange, r.Low, r.High)
		}
	}
	if !(p.Feed >= 0 && p.Feed <= 1e6 && p.Travel >= 0 && p.Travel <= 1e6) {
		return fmt.Errorf("%w: feed %g, travel %g mm/s", formula.ErrRange, p.Feed, p.Travel)
	}
	for _, d := range append([]float64{p.HeatDoubt}, p.Doubts...) {
		if !(d > 0 && d <= 10) {
			return fmt.Errorf("%w: doubt %g", formula.ErrRange, d)
		}
	}
	if p.Field == nil || len(p.Doubts) == 0 {
		return fmt.Errorf("%w: nothing to weigh", formula.ErrRange)
	}
	return nil
}
