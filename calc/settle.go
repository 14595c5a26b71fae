package calc

import (
	"math"
	"slices"

	"brazebooth/internal/crew"
)

// settle finds the ends of the working ranges: how far feed and travel alone may go while the cross-section still
// meets every edge, to about a hundredth of the limit that ends them. It starts where the slopes point. Without a
// good point a range is the point itself.
func (s *suggestion) settle(top *place, h *heatField, m *margins, feeds, travels axis) {
	s.feedLow, s.feedHigh, s.travelLow, s.travelHi = s.feed, s.feed, s.travel, s.travel
	if !s.found {
		return
	}
	s.feedLow, s.feedHigh = max(feeds.low, s.feed*math.Exp(-top.room(0, -1))),
		min(feeds.high, s.feed*math.Exp(top.room(0, 1)))
	s.travelLow, s.travelHi = max(travels.low, s.travel*math.Exp(-top.room(1, -1))),
		min(travels.high, s.travel*math.Exp(top.room(1, 1)))
	worst := func(feed, travel float64) float64 {
		l, err := h.limits(m, feed, travel, m.zinc > 0)
		if err != nil {
			return -far
		}
		return slices.Min(l[:])
	}
	here := worst(s.feed, s.travel)
	byFeed := func(f float64) float64 { return worst(f, s.travel) }
	byTravel := func(v float64) float64 { return worst(s.feed, v) }
	var ends [4]float64
	var wg crew.Crew
	for i, e := range [...]struct {
		from, first, most float64
		worst             func(float64) float64
	}{
		{s.feed, s.feedLow, feeds.low, byFeed}, {s.feed, s.feedHigh, feeds.high, byFeed},
		{s.travel, s.travelLow, travels.low, byTravel}, {s.travel, s.travelHi, travels.high, byTravel},
	} {
		wg.Go(func() { ends[i] = lastMet(e.from, here, e.first, e.most, e.worst) })
	}
	wg.Wait()
	s.feedLow, s.feedHigh, s.travelLow, s.travelHi = ends[0], ends[1], ends[2], ends[3]
}

// lastMet looks from a setting, where worst is here, toward the furthest end allowed, starting at first, for the last
// value at which worst is not negative: false position in logarithms, in which the limits are nearly straight. An end
// that stays gets half its weight; else it would stay for ever where the limit bends.
func lastMet(from, here, first, most float64, worst func(float64) float64) float64 {
	if !(here >= 0) || from == most {
		return from
	}
	const close = 0.01 // of a limit: far less than the intervals of the figures behind it
	last := from
	in, out := 0.0, math.Log(most/from) // from itself stays what it is to the last bit
	fIn, fOut := here, math.NaN()
	for x := math.Log(first / from); ; {
		at := from * math.Exp(x)
		f := worst(at)
		if !(f > -1) { // NaN is no answer either, and must not be looked for for ever
			f = -1
		}
		if f >= 0 {
			last, in, fIn, fOut = at, x, f, fOut/2
		} else {
			out, fIn, fOut = x, fIn/2, f
		}
		switch {
		case in == out || f >= 0 && f < close || math.Abs(out-in) < close:
			return last
		case math.IsNaN(fOut):
			x = out
		default:
			x = in + (out-in)*max(0.05, min(0.95, fIn/(fIn-fOut)-0.02))
		}
	}
}
