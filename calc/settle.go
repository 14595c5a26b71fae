package calc

import (
	"math"
	"slices"

	"brazebooth/calc/limit"
	"brazebooth/internal/crew"
)

// settle finds the ends of the working ranges: how far feed and travel alone may go while the cross-section still
// meets every edge, to about a three-hundredth of the limit that ends them: an end found less exactly would jump from
// job to job where a limit is flat. Without a good point a range is the point itself.
func (b *board) settle(s *suggestion, card *Card, v *verdict) {
	if !v.modelled {
		return
	}
	s.feedLow, s.feedHigh, s.travelLow, s.travelHi = s.feed, s.feed, s.travel, s.travel
	if !v.met() {
		return
	}
	h, m := b.heatField(card), &v.margins
	low, high := b.steadyFeeds(m)
	var wg crew.Crew
	end := func(into *float64, from, most float64, beside *limit.All, at func(float64) limit.All) {
		looked := from * math.Exp(math.Copysign(limit.Probe, most-from)) // by the verdict
		wg.Go(func() {
			*into = limit.LastMet(from, slices.Min(v.logs[:]), most, func(x float64) float64 {
				l := *beside
				if x != looked {
					l = at(x)
				}
				return slices.Min(l[:])
			})
		})
	}
	byFeed := func(f float64) limit.All { return m.beside(&h, f, v.state.o[oTravel]) }
	byTravel := func(t float64) limit.All { return m.beside(&h, v.state.o[oFeed], t) }
	if s.feed > 0 && !card.Job.Feed.Set && !b.chain.ampsGiven {
		end(&s.feedLow, s.feed, min(low, s.feed), &v.beside[0][0], byFeed)
		end(&s.feedHigh, s.feed, max(high, s.feed), &v.beside[0][1], byFeed)
	}
	if s.travel > 0 && !card.Job.Travel.Set {
		end(&s.travelLow, s.travel, min(m.slow, s.travel), &v.beside[1][0], byTravel)
		end(&s.travelHi, s.travel, max(m.fast, s.travel), &v.beside[1][1], byTravel)
	}
	wg.Wait()
}
