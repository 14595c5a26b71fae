package calc

import (
	"math"
	"slices"

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
	end := func(into *float64, from, most float64, beside *Limits, at func(float64) Limits) {
		looked := from * math.Exp(math.Copysign(probe, most-from)) // by the verdict
		wg.Go(func() {
			*into = lastMet(from, slices.Min(v.logs[:]), most, func(x float64) float64 {
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

// lastMet looks from a setting, where worst is here, toward the furthest end allowed for the last value up to which
// worst is not negative. It goes there in steps of a probe, so that it does not pass over a stretch in which an edge is
// missed; where the edges are nearly reached at both ends of a step it looks between them too.
func lastMet(from, here, most float64, worst func(float64) float64) float64 {
	if !(here >= 0) || from == most {
		return from
	}
	const nearly, least = 0.04, probe / 4 // of a limit, and of a setting, both logarithms
	at := func(x float64) float64 {
		if f := worst(from * math.Exp(x)); f > -1 {
			return f
		}
		return -1 // NaN is no answer either
	}
	end := math.Log(most / from)
	in, fIn := 0.0, here // from itself stays what it is to the last bit
	for step := probe; ; {
		out := end
		if math.Abs(end-in) > step {
			out = in + math.Copysign(step, end)
		}
		f := at(out)
		switch {
		case f < 0:
			return from * math.Exp(crossing(in, fIn, out, f, at))
		case max(fIn, f) < nearly && math.Abs(out-in) > least:
			step = math.Abs(out-in) / 2
			continue
		case out == end || f < closeTo:
			return from * math.Exp(out)
		}
		in, fIn, step = out, f, probe
	}
}

// closeTo is how near to zero a limit is looked for: far less than the intervals of the figures behind it.
const closeTo = 0.003

// crossing is the last place found between one at which a limit is met and one at which it is not, logarithms: by false
// position, since limits are nearly straight. An end that stays gets half its weight; else it would stay for ever where
// the limit bends.
func crossing(in, fIn, out, fOut float64, at func(float64) float64) float64 {
	for f := math.NaN(); !(f >= 0 && f < closeTo || math.Abs(out-in) < closeTo); {
		x := in + (out-in)*max(0.05, min(0.95, fIn/(fIn-fOut)-0.01))
		if f = at(x); f >= 0 {
			in, fIn, fOut = x, f, fOut/2
		} else {
			out, fIn, fOut = x, fIn/2, f
		}
	}
	return in
}
