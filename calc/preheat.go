package calc

import (
	"math"

	"brazebooth/calc/formula"
	"brazebooth/calc/limit"
	"brazebooth/calc/limit/grid"
	"brazebooth/calc/section"
	"brazebooth/tables"
)

// preheat is how warm the parts must be so that the strongest arc that this wire holds steadily wets them.
type preheat struct {
	least, low, high float64 // C; NaN where the hottest that is tried is not enough
	feed, travel     float64 // mm/s, of that arc
	amps             float64
	room             float64 // C, of parts that are not warmed
	wets             float64 // C, from which it wets, whatever the other edges say; NaN where it never does
	spoils           string  // the edge that is then not met, if that is why least is NaN
}

// needed reports whether the parts must be warmed at all.
func (p *preheat) needed() bool { return !(p.wets <= p.room+preheatStep) }

// preheatStep is how exactly a preheat is found, K; travelTries is at how many travels the arc is tried.
const (
	preheatStep = 5.0
	travelTries = 5
)

// warmth searches how warm the parts must be at one feed.
type warmth struct {
	h         heatField
	feed      float64 // mm/s
	room, top float64 // C
	// The search ends once parts that are not warmed are wetted: then nothing else is asked. Most cold settings are
	// cold only by their travel or feed, and a whole search took three fifths of the time for a table of jobs.
	onlyNeeded bool
}

// newWarmth is the search with the strongest arc of the job's wire.
func (b *board) newWarmth(card *Card) warmth {
	w := warmth{h: b.heatField(card), room: tables.RoomTemperature.V, top: HottestPreheat(card)}
	_, w.feed = b.steadyFeeds()
	for i := range w.h.members {
		w.top = min(w.top, w.h.solid[i]-tables.BelowSolidus.V)
	}
	return w
}

// at are the limits at a travel with the parts at a temperature, C, and the section altered; known is false where the
// model does not reach.
func (w *warmth) at(travel, start float64, alter ...func(*section.Input)) (l limit.All, s heatState, known bool) {
	alter = append(alter, func(in *section.Input) { in.Start = start })
	s, err := w.h.at(w.feed, travel, false, alter...)
	if err != nil {
		return l, s, false
	}
	m := w.h.margins
	m.start = start
	return m.logs(&s), s, true
}

// least is the temperature, C, from low to high, from which the bead wets at a travel; NaN where it does not wet at
// high. Heat beyond the section's grid counts as wetting.
func (w *warmth) least(travel, low, high float64, alter ...func(*section.Input)) float64 {
	wets := func(start float64) bool {
		l, _, known := w.at(travel, start, alter...)
		return !known || l[limit.Wets] >= 0
	}
	if !wets(high) {
		return math.NaN()
	}
	if wets(low) {
		return low
	}
	halvings := int(math.Ceil(math.Log2((high - low) / preheatStep)))
	_, high = formula.Bisect(low, high, halvings, func(start float64) bool { return !wets(start) })
	return high
}

// find tries travels at which the bead fills the joint, and takes the one that needs the least preheat and there meets
// every other edge.
func (w *warmth) find() preheat {
	nan := math.NaN()
	p := preheat{least: nan, low: nan, high: nan, wets: nan, feed: w.feed, room: w.room}
	slow, fast := w.h.slow, w.h.fast
	if _, o, err := w.h.fed(w.feed, slow); err == nil {
		fast = max(slow, min(fast, slow*o[oBead]/w.h.wanted.at(nil)))
		p.amps = o[oAmps]
	}
	travels := grid.Axis{Low: slow, High: fast, N: travelTries}
	if fast == slow {
		travels.N = 1
	}
	top := w.top
	for i := range travels.N {
		v := travels.At(float64(i))
		t := w.least(v, w.room, top)
		if math.IsNaN(t) {
			continue
		}
		if !(p.wets <= t) {
			p.wets = t
		}
		if w.onlyNeeded && !p.needed() {
			break
		}
		if spoils := w.others(v, t); spoils != "" {
			p.spoils = spoils
			continue
		}
		p.least, p.travel = t, v
		if top = t - preheatStep; top <= w.room {
			break
		}
	}
	return p
}

// weaker looks for an arc weaker than the strongest that meets every edge with hotter parts, for a wire whose strongest
// arc wets and misses another edge: the hotter the part, the less its middle is above its toes. NaN for none.
func (w *warmth) weaker() preheat {
	strongest := w.feed
	defer func() { w.feed = strongest }()
	low, _ := w.h.b.steadyFeeds()
	const tries = 5
	feeds := grid.Axis{Low: low, High: strongest, N: tries}
	p := preheat{least: math.NaN()}
	for i := tries - 2; i >= 0 && math.IsNaN(p.least); i-- {
		w.feed = feeds.At(float64(i))
		if p = w.find(); math.IsNaN(p.wets) {
			break // weaker ones do not wet either
		}
	}
	return p
}

// others is an edge beside wetting that is not met, "" where all are met. The travel was chosen so that filling is met
// exactly, hence the small tolerance.
func (w *warmth) others(travel, start float64) string {
	l, _, known := w.at(travel, start)
	if !known {
		return limit.Burn.Edge()
	}
	for i, v := range l[:limit.Count] {
		if limit.Limit(i) != limit.Wets && v < -1e-9 {
			return limit.Limit(i).Edge()
		}
	}
	return ""
}

// band finds the interval by searching again with the heat at both ends of its interval, with the toe's temperature at
// its ends, and with what the model leaves out of a width, joined by root-sum-square. It goes no lower than parts that
// are not warmed.
func (w *warmth) band(p *preheat, b *board) {
	if math.IsNaN(p.least) {
		return
	}
	const coldest, hottest = -400, 850 // C; only to find differences
	moved := func(alter func(*section.Input)) float64 {
		t := w.least(p.travel, coldest, hottest, alter)
		if math.IsNaN(t) {
			t = hottest
		}
		return t - p.least
	}
	var ends Sides
	low, high := w.power(b)
	ends.Add(moved(func(in *section.Input) { in.Heat *= low }))
	ends.Add(moved(func(in *section.Input) { in.Heat *= high }))
	toe := b.intervals[inToe]
	for _, t := range [2]float64{toe.low, toe.high} {
		if t != b.inputs[inToe] {
			ends.Add(moved(func(in *section.Input) { in.Filler.Toe = t }))
		}
	}
	// What the model leaves out is a share of the rise to the toe.
	rise := b.inputs[inToe] - p.least
	ends.Add(-rise * (tables.SectionRiseEnding.High - 1))
	ends.Add(rise * (1 - tables.SectionRiseEnding.Low))
	p.low, p.high = max(p.room, p.least-ends.Down), p.least+ends.Up
	p.least = max(p.least, p.room)
}

// power is the heat at both ends of its interval over the heat. The meter shows the current, so that only volts and arc
// efficiency vary.
func (w *warmth) power(b *board) (low, high float64) {
	_, o, err := w.h.fed(w.feed, w.h.slow)
	if err != nil {
		return 1, 1
	}
	bias, factor, eta := b.intervals[inVoltBias], b.intervals[inVoltFactor], b.intervals[inEta]
	ends := func(bias, factor, eta, slope float64) float64 {
		pulses := 0.0 // what they add, of the power
		if b.chain.pulsed {
			pulses = (1 - 100/o[oPulsePower]) * (slope/b.inputs[inArcSlope] - 1)
		}
		return math.Hypot(math.Hypot(bias/o[oVolts], factor/b.inputs[inVoltFactor]-1),
			math.Hypot(eta/b.inputs[inEta]-1, pulses))
	}
	slope := b.intervals[inArcSlope]
	return 1 - ends(bias.low, factor.low, eta.low, slope.low), 1 + ends(bias.high, factor.high, eta.high, slope.high)
}
