package calc

import (
	"math"
	"slices"

	"brazebooth/internal/crew"
)

// settle finds the ends of the working ranges: how far feed and travel alone may go while the cross-section still
// meets every edge, to about a three-hundredth of the limit that ends them: an end found less exactly would jump from job
// to job where a limit is flat. Without a good point a range is the point itself.
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
	end := func(into *float64, from, most float64, beside *Limits, at func(float64) Limits) {
		looked := from * math.Exp(math.Copysign(probe, most-from)) // by the verdict
		first := looked
		if math.Abs(math.Log(most/from)) < probe {
			first = most
		}
		wg.Go(func() {
			*into = lastMet(from, slices.Min(v.logs[:]), first, most, func(x float64) float64 {
				l := *beside
				if x != looked {
					l = at(x)
				}
				return slices.Min(l[:])
			})
		})
	}
	byFeed := func(f float64) Limits { return m.beside(&h, f, v.state.o[oTravel]) }
	byTravel := func(t float64) Limits { return m.beside(&h, v.state.o[oFeed], t) }
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

// lastMet looks from a setting, where worst is here, toward the furthest end allowed, starting at first, for the last
// value at which worst is not negative: false position in logarithms, in which the limits are nearly straight. An end
// that stays gets half its weight; else it would stay for ever where the limit bends.
func lastMet(from, here, first, most float64, worst func(float64) float64) float64 {
	if !(here >= 0) || from == most {
		return from
	}
	const close = 0.003 // of a limit: far less than the intervals of the figures behind it
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
			x = in + (out-in)*max(0.05, min(0.95, fIn/(fIn-fOut)-0.01))
		}
	}
}
