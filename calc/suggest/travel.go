package suggest

import "math"

// warmer fills in the margins at the three heats, with all of them hotter by a share of the distance from the
// middle heat to the hottest; between the three a margin is a parabola in the heat's logarithm.
func (r *profile) warmer(x, hotter float64, m *[3][]float64) {
	for e := range r.margins {
		cold, mid, hot := r.shifts[0][e].at(x/r.every), r.margins[e].at(x), r.shifts[2][e].at(x/r.every)
		slope, bend := (hot-cold)/2, (hot+cold)/2
		for k := range m {
			z := float64(k-1) + hotter
			m[k][e] = mid + z*(slope+z*bend)
		}
	}
}

// meanTravel is the mean travel, counted in points. The hand's part is exact between the points.
func (s *search) meanTravel(r *profile, travels axis, hotter float64) float64 {
	x, m := travels.fine(), threeHeats(len(s.p.Doubts))
	chances, value := make([]float64, len(x)), make([]float64, len(x))
	for i := range x {
		r.warmer(x[i], hotter, &m)
		chance, off := s.p.Hand.hand(travels.at(x[i]))
		chances[i] = LogChance(m, s.p.Doubts) + chance
		value[i] = chances[i] - s.p.heatPrice()*r.heat.at(x[i]) - handPrice*off
		if s.p.Feed > 0 {
			value[i] -= nearPrice * near(m[1], s.p.Doubts)
		}
	}
	if s.p.Feed > 0 {
		return mean(x, value, travelSoftAlone)
	}
	return mean(x, value, widened(travelSoft, chances))
}

// If the feed is chosen, nothing else changes as the travel moves, and an edge may move along the travels many
// times faster than the feed changes. So the mean is wider, settings nearer to an edge than its doubt cost
// extra, and the travel is a mean over hotter and colder heats: it begins to move before the edge arrives, and
// continues behind it.
const (
	travelSoftAlone = 0.3
	nearPrice       = 0.5
	hotterBy        = 0.18 // the hottest of them, a logarithm: twelve steps of 2 % of feed
	hotterSteps     = 4    // from the computed heat to there, where the weight is zero
)

// travelForFeed is the travel for a chosen feed, mm/s.
func (s *search) travelForFeed(columns []profile, travels axis) (float64, error) {
	r := newProfile(len(s.p.Doubts), heatEveryAlone)
	for j := range columns {
		r.heat = append(r.heat, columns[j].heat[0])
		for e := range r.margins {
			r.margins[e] = append(r.margins[e], columns[j].margins[e][0])
			if j%heatEveryAlone == 0 {
				r.shifts[0][e] = append(r.shifts[0][e], columns[j].shifts[0][e][0])
				r.shifts[2][e] = append(r.shifts[2][e], columns[j].shifts[2][e][0])
			}
		}
	}
	sum, all := 0.0, 0.0
	for k := 1 - hotterSteps; k < hotterSteps; k++ {
		share := float64(k) / hotterSteps
		hotter := share * hotterBy / (heats[2].z * s.p.HeatDoubt)
		w := 1 - math.Abs(share)
		p := s.along(&r, travels, hotter)
		sum, all = sum+w*p.least(s.meanTravel(&r, travels, hotter)), all+w
	}
	p := s.along(&r, travels, 0)
	x, err := s.inside(&p, sum/all, func(travel float64) Setting { return Setting{s.p.Feed, travel, 1} })
	return travels.at(x), err
}

// along returns the margins along the travels at a heat.
func (s *search) along(r *profile, travels axis, hotter float64) path {
	p := path{axis: travels, margins: make([]line, len(r.margins)), hand: &s.p.Hand, doubts: s.p.Doubts}
	m := threeHeats(len(r.margins))
	for i := range travels.n {
		r.warmer(float64(i), hotter, &m)
		for e := range p.margins {
			p.margins[e] = append(p.margins[e], m[1][e])
		}
	}
	return p
}

// near is the closeness of the edges at the computed heat: the sum of the squares of what each margin lacks of
// its doubt, in doubts.
func near(margins, doubts []float64) (sum float64) {
	for i, m := range margins {
		if short := 1 - m/doubts[i]; short > 0 {
			sum += min(short*short, 9)
		}
	}
	return sum
}
