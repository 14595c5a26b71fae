package calc

import (
	"context"
	"math"

	"brazebooth/calc/limit"
	"brazebooth/internal/crew"
)

// GoodSpan is the range of one setting, all else as on a card, in which every edge is met; both ends are zero where
// there is none.
type GoodSpan struct{ Low, High float64 }

// GoodSpans are the spans of a card's wire feed, m/min, and travel, mm/s, also where a hand set them and where the
// card's own setting is not good: then the span says where to go. False where no section is computed.
func GoodSpans(ctx context.Context, card *Card) (feed, travel GoodSpan, ok bool) {
	job := card.Used // not Laid: volts that nobody set must follow the feed
	p, err := ProbeOf(ctx, &job)
	if err != nil || p.b.notModelled(card) != "" {
		return feed, travel, false
	}
	h := &p.field
	f, t := p.b.inputs[inFeed], p.b.inputs[inTravel]
	low, high := p.b.steadyFeeds()
	var wg crew.Crew
	wg.Go(func() {
		feed = goodAlong(f, min(low, f), max(high, f), func(x float64) float64 { return h.worst(x, t) })
	})
	wg.Go(func() {
		travel = goodAlong(t, min(h.slow, t), max(h.fast, t), func(x float64) float64 { return h.worst(f, x) })
	})
	wg.Wait()
	feed.Low, feed.High = feed.Low*0.06, feed.High*0.06
	return feed, travel, p.b.effort.Over() == nil
}

// goodAlong is the span of a setting about the value at, or else about the best value between low and high, in which
// worst is not negative. A good span that is narrower than an eighth of the way between the two may be missed.
func goodAlong(at, low, high float64, worst func(float64) float64) GoodSpan {
	const samples = 8
	from, here := at, worst(at)
	if !(here >= 0) {
		step := math.Log(high/low) / samples
		best := math.Inf(-1)
		for i := range samples + 1 {
			x := low * math.Exp(float64(i)*step)
			if v := worst(x); v > best {
				from, here, best = x, v, v
			}
		}
		for near := step / 2; here < 0 && near > step/8; near /= 2 { // the best value may lie between samples
			for _, x := range [...]float64{max(low, from*math.Exp(-near)), min(high, from*math.Exp(near))} {
				if v := worst(x); v > here {
					from, here = x, v
				}
			}
		}
		if !(here >= 0) {
			return GoodSpan{}
		}
	}
	return GoodSpan{limit.LastMet(from, here, low, worst), limit.LastMet(from, here, high, worst)}
}
