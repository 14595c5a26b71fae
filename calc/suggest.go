package calc

import (
	"math"

	"brazebooth/tables"
)

// suggestion is a pair of settings with the range each may take while the other stays.
type suggestion struct {
	feed, travel        float64 // mm/s
	feedLow, feedHigh   float64
	travelLow, travelHi float64
	margin              float64 // logarithm of the ratio to the nearest limit; negative where none is good
	nearest             string  // name of that limit
}

// suggest finds what the job left open of feed and travel: the point furthest, in relative terms,
// from every limit that the closed forms know: the arc's steady range, a filled joint, a toe that
// wets, a speed that a hand can hold.
func (b *board) suggest(card *Card) (suggestion, error) {
	feedOpen := !card.Used.Feed.Set && !b.chain.ampsGiven
	travelOpen := !card.Used.Travel.Set && !b.chain.timed && !b.chain.plug
	g := newLimits(b, card)
	best := suggestion{margin: math.Inf(-1)}
	if !feedOpen && !travelOpen {
		return best, nil
	}
	feeds := openRange{b.knobs[kFeed], b.knobs[kFeed], feedOpen}
	if feedOpen {
		feeds.low, feeds.high = g.feedRange(b)
	}
	travels := openRange{b.knobs[kTravel], b.knobs[kTravel], travelOpen}
	if travelOpen {
		travels.low, travels.high = g.slow*0.5, g.fast*1.5
	}
	search(b, &g, feeds, travels, &best)
	if math.IsInf(best.margin, -1) {
		return best, b.evalError(feeds, travels)
	}
	b.workingRange(&g, &best, feeds, travels)
	return best, nil
}

// openRange is where a setting is looked for; a setting that was given is not open.
type openRange struct {
	low, high float64
	open      bool
}

func (r openRange) at(i, n int) float64 {
	if !r.open {
		return r.low
	}
	return r.low * math.Pow(r.high/r.low, float64(i)/float64(n-1))
}

// search scans a logarithmic grid and then closes in on its best point.
func search(b *board, g *limits, feeds, travels openRange, best *suggestion) {
	const coarse = 17
	for round := range 5 {
		nf, nv := coarse, coarse
		if !feeds.open {
			nf = 1
		}
		if !travels.open {
			nv = 1
		}
		for i := range nf {
			for j := range nv {
				f, v := feeds.at(i, nf), travels.at(j, nv)
				if m, name, ok := g.margin(b, f, v); ok && m > best.margin {
					*best = suggestion{feed: f, travel: v, margin: m, nearest: name}
				}
			}
		}
		if math.IsInf(best.margin, -1) {
			return
		}
		shrink := math.Pow(0.25, float64(round+1))
		feeds = feeds.around(best.feed, shrink)
		travels = travels.around(best.travel, shrink)
	}
}

// around narrows an open range about its best point, never leaving the first range.
func (r openRange) around(v, shrink float64) openRange {
	if !r.open {
		return r
	}
	half := math.Pow(r.high/r.low, shrink/2)
	return openRange{max(r.low, v/half), min(r.high, v*half), true}
}

// evalError repeats one evaluation to say why no point could be computed.
func (b *board) evalError(feeds, travels openRange) error {
	var o [outs]float64
	k := b.knobs
	k[kFeed], k[kTravel] = math.Sqrt(feeds.low*feeds.high), math.Sqrt(travels.low*travels.high)
	if err := b.chain.eval(&k, &o); err != nil {
		return err
	}
	return ErrRange
}

// workingRange finds how far each setting alone may go before a limit is reached; with no good point
// the range is the point itself.
func (b *board) workingRange(g *limits, s *suggestion, feeds, travels openRange) {
	s.feedLow, s.feedHigh, s.travelLow, s.travelHi = s.feed, s.feed, s.travel, s.travel
	if s.margin <= 0 {
		return
	}
	good := func(f, v float64) bool { m, _, ok := g.margin(b, f, v); return ok && m >= 0 }
	if feeds.open {
		s.feedLow = reach(s.feed, feeds.low, func(f float64) bool { return good(f, s.travel) })
		s.feedHigh = reach(s.feed, feeds.high, func(f float64) bool { return good(f, s.travel) })
	}
	if travels.open {
		s.travelLow = reach(s.travel, travels.low, func(v float64) bool { return good(s.feed, v) })
		s.travelHi = reach(s.travel, travels.high, func(v float64) bool { return good(s.feed, v) })
	}
}

// reach halves the way from a good value toward an end until the edge of the good stretch is known
// to a thousandth.
func reach(from, to float64, good func(float64) bool) float64 {
	if good(to) {
		return to
	}
	for range 12 {
		mid := math.Sqrt(from * to)
		if good(mid) {
			from = mid
		} else {
			to = mid
		}
	}
	return from
}

// limits are the closed-form limits of one job.
type limits struct {
	floor, spray float64 // A
	slow, fast   float64 // mm/s
	need         float64 // bead area that fills the joint, mm2
	coldAngle    float64 // toe angle, rad
	section      func(area, w1, w2 float64) (float64, error)
	timed, plug  bool
}

func newLimits(b *board, card *Card) limits {
	g := limits{slow: tables.HandSpeedLow.V, fast: tables.HandSpeedHigh.V,
		timed: b.chain.timed, plug: b.chain.plug, need: neededArea(card), coldAngle: coldAngle(card.Used.Joint)}
	g.floor, g.spray = steadyRange(card)
	g.section = toeAngle(card)
	return g
}

// steadyRange returns the currents between which the mode's arc runs steadily.
func steadyRange(card *Card) (floor, spray float64) {
	wire := card.Used.Wire.V
	floor, _ = DipFloor(wire)
	spray, _ = SprayTransition(wire)
	return floor, spray
}

// feedRange brackets the feeds whose current could be steady, from half the floor to half over spray.
func (g *limits) feedRange(b *board) (low, high float64) {
	low, high = 10, 400 // mm/s: 0.6 to 24 m/min
	k := &b.knobs
	if f, err := FeedFromCurrent(k[kWire], g.floor/2, k[kDensity], k[kHLiq], k[kRhoE], k[kPhi], k[kStick]); err == nil && f > 0 {
		low = f
	}
	if f, err := FeedFromCurrent(k[kWire], g.spray*1.5, k[kDensity], k[kHLiq], k[kRhoE], k[kPhi], k[kStick]); err == nil && f > low {
		high = f
	}
	return low, high
}

// margin evaluates one pair of settings and returns the logarithm of the ratio to the nearest limit
// with that limit's name.
func (g *limits) margin(b *board, feed, travel float64) (float64, string, bool) {
	k := b.knobs
	k[kFeed], k[kTravel] = feed, travel
	var o [outs]float64
	if err := b.chain.eval(&k, &o); err != nil {
		return 0, "", false
	}
	worst, name := math.Inf(1), ""
	check := func(ratio float64, what string) {
		if m := math.Log(ratio); m < worst && !math.IsNaN(m) {
			worst, name = m, what
		}
	}
	if g.floor > 0 {
		check(o[oAmps]/g.floor, "steady arc")
	}
	if g.spray > 0 {
		check(g.spray/o[oAmps], "spray transition")
	}
	if g.timed || g.plug {
		return worst, name, !math.IsInf(worst, 1)
	}
	check(o[oTravel]/g.slow, "hand speed, slow")
	check(g.fast/o[oTravel], "hand speed, fast")
	check(o[oBead]/g.need, "joint filled")
	if theta, err := g.section(o[oBead], o[oWet1], o[oWet2]); err == nil {
		check(g.coldAngle/theta, "toe wets")
	}
	return worst, name, true
}

// neededArea is the bead section that the joint needs, mm2: the leg or throat that was asked for, or
// a fillet as high as the thinner sheet, or the open root filled.
func neededArea(card *Card) float64 {
	u, m := &card.Used, &card.Setup.Members
	t := min(m[0].Core, m[1].Core)
	switch u.Joint {
	case "lap":
		leg := u.legOr(m[0].Core)
		return leg*leg/2 + u.Gap.V*leg
	case "tee":
		leg := u.legOr(t)
		return leg*leg/2 + u.Gap.V*leg
	case "corner":
		return m[0].Core * m[1].Core / 2
	case "butt":
		return max(u.Gap.V*t, t*t/4)
	}
	layer := u.Layer.Or(1)
	return layer * 2 * layer
}

// legOr is the fillet leg that was asked for, directly or by its throat, mm.
func (j *Job) legOr(other float64) float64 {
	switch {
	case j.Leg.Set:
		return j.Leg.V
	case j.Throat.Set:
		return j.Throat.V * math.Sqrt2
	}
	return other
}
