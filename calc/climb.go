package calc

import (
	"math"

	"brazebooth/internal/crew"
)

// place is a setting with its limits and how each changes along feed and along travel, which give its margin.
type place struct {
	feed, travel float64 // mm/s
	logs         Limits
	courses      [limitCount]courses
	margin       float64 // %, as on the card
}

// placeAt computes a setting and a probe to each side of it; false where the model ends there.
func (h *heatField) placeAt(m *margins, feed, travel float64) (place, bool) {
	s := place{feed: feed, travel: travel}
	if s.logs, h = h.aimed(m, feed, travel); !s.logs.known() {
		return s, false
	}
	var beside [2][2]Limits
	for side, by := range [2]float64{math.Exp(-probe), math.Exp(probe)} {
		beside[0][side], beside[1][side] = m.beside(h, feed*by, travel), m.beside(h, feed, travel*by)
	}
	if !bothWays(&beside) {
		return s, false
	}
	var d Limits
	s.courses, d = s.logs.along(&beside)
	if _, s.margin = nearest(&d); math.IsInf(s.margin, -1) { // no change leads inside: the less is missing the better
		s.margin = -1e6 + max(-1e6, 100*unmet(&s.logs))
	}
	return s, true
}

// marginAt is the margin, as a logarithm, that the slopes predict a logarithmic step away.
func (s *place) marginAt(byFeed, byTravel float64) float64 {
	least := math.Inf(1)
	missing := 0.0
	for k, l := range s.logs {
		if l >= far {
			continue
		}
		f, t := s.courses[k][0].slope, s.courses[k][1].slope
		l += f*byFeed + t*byTravel
		missing += min(0, l)
		least = min(least, reach(l, f, t))
	}
	if least > -far {
		return least
	}
	return -far + max(-far, missing)
}

// marginOf is how far limits are from the nearest edge, as a logarithmic change of feed or travel; below zero where
// an edge is not met.
func marginOf(l, byFeed, byTravel *Limits) float64 {
	if _, worst := nearest(reaches(l, byFeed, byTravel)); worst > -far {
		return worst
	}
	return -far + max(-far, unmet(l))
}

// room is the logarithmic step one way at which the slopes bring the first limit to zero, at most 1.
func (s *place) room(axis int, way float64) float64 {
	least := 1.0
	for k, l := range s.logs {
		if fall := -s.courses[k][axis].slope * way; fall > 0 && l < far {
			least = min(least, l/fall)
		}
	}
	return least
}

// climb goes from a place to the one furthest from every edge near it: step by step to where the slopes predict most,
// within a reach that shrinks where they predicted too much.
func (h *heatField) climb(m *margins, from place, feeds, travels axis) place {
	const steps, least, gain = 5, 0.02, 0.003
	wide := 2.0 / 3 * max(feeds.cell(), travels.cell())
	for range steps {
		byFeed, byTravel, promised := from.uphill(wide, feeds, travels)
		if promised < from.marginAt(0, 0)+gain {
			break
		}
		next, ok := h.placeAt(m, from.feed*math.Exp(byFeed), from.travel*math.Exp(byTravel))
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

// uphill is the step, within a reach and both axes, from which the slopes predict the greatest margin.
func (s *place) uphill(wide float64, feeds, travels axis) (byFeed, byTravel, margin float64) {
	margin = s.marginAt(0, 0)
	across := wide
	for range 3 {
		f0, v0 := byFeed, byTravel
		const scan = 6
		for i := -scan; i <= scan; i++ {
			f := feeds.within(s.feed, f0+across*float64(i)/scan, wide)
			for j := -scan; j <= scan; j++ {
				v := travels.within(s.travel, v0+across*float64(j)/scan, wide)
				if p := s.marginAt(f, v); p > margin {
					byFeed, byTravel, margin = f, v, p
				}
			}
		}
		across /= 5
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

// within limits a logarithmic step from a value to a reach and to the axis.
func (a axis) within(from, by, wide float64) float64 {
	if a.n == 1 {
		return 0
	}
	return max(math.Log(a.low/from), -wide, min(math.Log(a.high/from), wide, by))
}

// Climbs start from the first peaks always, and from more where those lead to nothing good or to a thin zone.
const (
	firstPeaks, morePeaks = 2, 4
	thinZone              = 4 // %
)

// best climbs from the grids' peaks and takes the highest place reached; false where the model has no answer at any.
func (c coarse) best(h *heatField, m *margins, feeds, travels axis) (place, bool) {
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

// highest climbs from each of some peaks, in parallel.
func (c coarse) highest(h *heatField, m *margins, feeds, travels axis, tops []peak) (best place, found bool) {
	reached, ok := make([]place, len(tops)), make([]bool, len(tops))
	var wg crew.Crew
	for i, p := range tops {
		wg.Go(func() {
			if reached[i], ok[i] = h.placeAt(m, feeds.at(p.x), travels.at(p.y)); ok[i] {
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
