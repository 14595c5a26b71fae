package calc

import (
	"math"
	"slices"

	"brazebooth/calc/formula"
	"brazebooth/calc/limit"
	"brazebooth/calc/suggest"
	"brazebooth/internal/crew"
)

// suggestion is a feed and a travel, each with the range that it may take while the other stays. Where nothing is
// judged the ranges are what the arc and a hand hold.
type suggestion struct {
	feed, travel        float64 // mm/s
	feedLow, feedHigh   float64
	travelLow, travelHi float64
	kept                string // "wire feed" or "travel" where the user set it and the search kept it
}

// suggest finds the feed and travel that were left open, by package suggest: the place moves without a jump as the job
// changes. WindowOf takes the same place.
func (b *board) suggest(card *Card) (s suggestion, err error) {
	feedOpen := !card.Used.Feed.Set && !b.chain.ampsGiven
	travelOpen := !card.Used.Travel.Set && b.chain.sectionModelled()
	low, high := b.steadyFeeds()
	switch {
	case !feedOpen && !travelOpen:
		return suggestion{}, nil
	case !b.chain.sectionModelled(): // of a timed arc and a plug nothing else is known
		return suggestion{feed: math.Sqrt(low * high), feedLow: low, feedHigh: high}, nil
	}
	h := b.heatField(card)
	p := suggest.Problem{Steady: suggest.Range{Low: low, High: high}, Hand: suggest.Range{Low: h.slow, High: h.fast}}
	p.Melting = h.melts[0] || h.melts[1]
	kept := ""
	if !feedOpen {
		kept = "wire feed"
		o, err := b.electric()
		if err != nil {
			return suggestion{}, err
		}
		p.Feed = o[oFeed] // given, or what the given amps need
	}
	if !travelOpen {
		kept = "travel"
		p.Travel = b.inputs[inTravel]
	}
	w, err := b.weighed(&h.margins)
	if err != nil {
		return suggestion{}, err
	}
	p.HeatDoubt, p.Doubts = w.heat, w.edges[:]
	reached := false // after the first places, one that the model does not reach only counts as bad
	p.Field = func(at []suggest.Setting, into []suggest.Point) error {
		err := h.weighed(at, into)
		if reached && b.effort.Over() == nil {
			return nil
		}
		reached = true
		return err
	}
	at, err := suggest.Find(&p)
	return suggestion{at.Feed, at.Travel, min(low, at.Feed), max(high, at.Feed), min(h.slow, at.Travel),
		max(h.fast, at.Travel), kept}, err
}

// weighed are the doubts of a chance in the middle of what arc and hand hold; they hardly change with the setting.
func (b *board) weighed(m *margins) (weighs, error) {
	low, high := b.steadyFeeds()
	k, c, around := b.inputs, b.chain, new(spread)
	c.arcOnly = true
	k[inFeed], k[inTravel] = math.Sqrt(low*high), math.Sqrt(m.slow*m.fast)
	if err := c.propagate(&k, &b.intervals, around); err != nil {
		return weighs{}, err
	}
	return weights(around, m), nil
}

// weighed writes heat and margins of settings, on all processors, since somebody waits.
func (h *heatField) weighed(at []suggest.Setting, into []suggest.Point) error {
	errs := make([]error, len(at))
	one := func(i int) {
		l := limit.Hopeless
		in, _, err := h.fed(at[i].Feed, at[i].Travel)
		if into[i].Heat = 1; err == nil {
			into[i].Heat = in.Heat
			l, err = h.limits(at[i].Feed, at[i].Travel, at[i].Factor)
		}
		if err == nil && h.liquid.position {
			l.Unbroken()
		}
		l.Weigh(into[i].Margins)
		errs[i] = err
	}
	var wg crew.Crew
	for w := range atOnce {
		wg.Go(func() {
			for i := w; i < len(at) && h.b.effort.Over() == nil; i += atOnce {
				one(i)
			}
		})
	}
	wg.Wait()
	if err := h.b.effort.Over(); err != nil {
		return err
	}
	if !slices.Contains(errs, nil) { // the model reaches none of them
		return errs[0]
	}
	return nil
}

// atOnce is how many settings are computed side by side.
const atOnce = 8

// steadyFeeds are the lowest and highest feeds whose current the arc holds steadily, mm/s.
func (b *board) steadyFeeds() (low, high float64) {
	low, high = 17, 340 // 1 to 20 m/min, where no limit is known
	k := &b.inputs
	floor, spray := SteadyRange(k[inWire])
	at := func(amps float64) (float64, error) {
		return formula.FeedFromCurrent(k[inWire], amps/k[inForm], k[inDensity], k[inHLiq], k[inRhoE],
			k[inPhi], k[inStick])
	}
	if f, err := at(floor); err == nil {
		low = f
	}
	if f, err := at(spray); err == nil && f > low {
		high = f
	}
	const bit = 1e-9 // an end that a card rounds must stay inside
	return low * (1 + bit), high * (1 - bit)
}

// settle finds the ends of the working ranges: how far feed and travel alone may go while the cross-section still meets
// every edge. The ends are exact to about a three-hundredth of the limit there: an end found less exactly would jump
// from job to job where a limit is flat. Without a good setting a range is the setting itself.
func (b *board) settle(s *suggestion, card *Card, v *verdict) {
	if !v.modelled {
		return
	}
	s.feedLow, s.feedHigh, s.travelLow, s.travelHi = s.feed, s.feed, s.travel, s.travel
	if !v.met() {
		return
	}
	h, feed, travel := &v.field, s.feed, s.travel
	low, high := b.steadyFeeds()
	var wg crew.Crew
	end := func(into *float64, from, most float64, worst func(float64) float64) {
		wg.Go(func() { *into = limit.LastMet(from, v.logs.Worst(), most, worst) })
	}
	if s.feed > 0 && !card.Job.Feed.Set && !b.chain.ampsGiven {
		byFeed := func(f float64) float64 { return h.worst(f, v.state.o[oTravel]) }
		end(&s.feedLow, feed, min(low, feed), byFeed)
		end(&s.feedHigh, feed, max(high, feed), byFeed)
	}
	if s.travel > 0 && !card.Job.Travel.Set {
		byTravel := func(t float64) float64 { return h.worst(v.state.o[oFeed], t) }
		end(&s.travelLow, travel, min(h.slow, travel), byTravel)
		end(&s.travelHi, travel, max(h.fast, travel), byTravel)
	}
	wg.Wait()
}
