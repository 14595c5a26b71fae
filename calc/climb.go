package calc

import (
	"math"

	"brazebooth/internal/crew"
)

// besideStep is how far beside a setting its slopes are taken, as a logarithm: wide against the section grid's own noise.
const besideStep = 0.1

// spot is a setting with its limits and how they change by the logarithms of feed and travel: what a card's margin is
// computed from.
type spot struct {
	feed, travel           float64 // mm/s
	logs, byFeed, byTravel [limitCount]float64
	margin                 float64
}

// spotAt computes a setting and one a little beside it each way; false where the model ends there.
func (h *heatField) spotAt(m *margins, feed, travel float64) (spot, bool) {
	s := spot{feed: feed, travel: travel}
	zinc := m.zinc > 0
	here, err := h.at(feed, travel, zinc)
	if err != nil {
		return s, false
	}
	more, up, err1 := h.beside(feed, travel, besideStep, 0, zinc)
	faster, along, err2 := h.beside(feed, travel, 0, besideStep, zinc)
	if err1 != nil || err2 != nil {
		return s, false
	}
	s.logs = m.logs(&here)
	lf, lv := m.logs(&more), m.logs(&faster)
	for k := range s.logs {
		s.byFeed[k], s.byTravel[k] = (lf[k]-s.logs[k])/up, (lv[k]-s.logs[k])/along
	}
	s.margin = s.marginAt(0, 0)
	return s, true
}

// marginAt is the margin that the slopes promise a logarithmic step away.
func (s *spot) marginAt(byFeed, byTravel float64) float64 {
	l := s.logs
	for k := range l {
		if l[k] < far {
			l[k] += s.byFeed[k]*byFeed + s.byTravel[k]*byTravel
		}
	}
	return marginOf(&l, &s.byFeed, &s.byTravel)
}

// marginOf is how far limits are from the nearest edge, as a logarithmic change of feed or travel; below zero where an
// edge is not met.
func marginOf(l, byFeed, byTravel *[limitCount]float64) float64 {
	var d [limitCount]float64
	for k := range d {
		d[k] = reach(l[k], byFeed[k], byTravel[k])
	}
	if _, worst := nearest(&d); worst > -far {
		return worst
	}
	return -far + max(-far, unmet(l))
}

// room is the logarithmic step one way after which the slopes have the first limit at zero, at most 1.
func (s *spot) room(slopes *[limitCount]float64, way float64) float64 {
	least := 1.0
	for k, l := range s.logs {
		if fall := -slopes[k] * way; fall > 0 && l < far {
			least = min(least, l/fall)
		}
	}
	return least
}

// climb goes from a spot to the one furthest from every edge about it: step by step to where the slopes promise most,
// within a reach that shrinks where they promised too much.
func (h *heatField) climb(m *margins, from spot, feeds, travels axis) spot {
	const steps, least, gain = 5, 0.02, 0.003
	wide := 2.0 / 3 * max(feeds.cell(), travels.cell())
	for range steps {
		byFeed, byTravel, promised := from.uphill(wide, feeds, travels)
		if promised < from.margin+gain {
			break
		}
		next, ok := h.spotAt(m, from.feed*math.Exp(byFeed), from.travel*math.Exp(byTravel))
		if ok && next.margin > from.margin {
			from = next
			continue
		}
		if wide /= 3; wide < least {
			break
		}
	}
	return from
}

// uphill is the step within a reach, and within both axes, from which the slopes promise the greatest margin.
func (s *spot) uphill(wide float64, feeds, travels axis) (byFeed, byTravel, margin float64) {
	margin = s.margin
	across := wide
	for range 3 {
		f0, v0 := byFeed, byTravel
		const scan = 10
		for i := -scan; i <= scan; i++ {
			f := feeds.within(s.feed, f0+across*float64(i)/scan, wide)
			for j := -scan; j <= scan; j++ {
				v := travels.within(s.travel, v0+across*float64(j)/scan, wide)
				if p := s.marginAt(f, v); p > margin {
					byFeed, byTravel, margin = f, v, p
				}
			}
		}
		across /= 8
	}
	return byFeed, byTravel, margin
}

// cell is the logarithm between two points, 0 where the axis is one value.
func (a axis) cell() float64 {
	if a.n == 1 {
		return 0
	}
	return a.step()
}

// within keeps a logarithmic step from a value inside a reach and the axis.
func (a axis) within(from, by, wide float64) float64 {
	if a.n == 1 {
		return 0
	}
	return max(math.Log(a.low/from), -wide, min(math.Log(a.high/from), wide, by))
}

// Peaks that are climbed from: the first always, more where those lead to nothing good or to a thin zone.
const (
	firstPeaks, morePeaks = 3, 5
	thinZone              = 0.04
)

// best climbs from a map's peaks and takes the highest place reached; false where the model has no answer at any.
func (c *limitMap) best(h *heatField, m *margins, feeds, travels axis) (spot, bool) {
	tops := c.peaks(firstPeaks + morePeaks)
	first := min(firstPeaks, len(tops))
	best, ok := c.highest(h, m, feeds, travels, tops[:first])
	if ok && best.margin > thinZone {
		return best, true
	}
	if other, found := c.highest(h, m, feeds, travels, tops[first:]); found && (!ok || other.margin > best.margin) {
		return other, true
	}
	return best, ok
}

// highest climbs from each of some peaks, side by side.
func (c *limitMap) highest(h *heatField, m *margins, feeds, travels axis, tops []peak) (best spot, found bool) {
	reached, ok := make([]spot, len(tops)), make([]bool, len(tops))
	var wg crew.Crew
	for i, p := range tops {
		wg.Go(func() {
			if reached[i], ok[i] = h.spotAt(m, c.feeds.at(p.x), c.travels.at(p.y)); ok[i] {
				reached[i] = h.climb(m, reached[i], feeds, travels)
			}
		})
	}
	wg.Wait()
	for i := range reached {
		if ok[i] && (!found || reached[i].margin > best.margin) {
			best, found = reached[i], true
		}
	}
	return best, found
}
