package suggest

import "math"

// profile holds the results along the feeds of one travel, or along the travels: each edge's margin, the heat's
// logarithm, and at one place in every how the two other heats change the margins. Values between the places are read
// from curves, because margins bend little and the chance much.
type profile struct {
	margins []line    // by edge
	shifts  [3][]line // by heat and edge; nil for the computed heat
	heat    line
	every   float64
}

func newProfile(edges, every int) profile {
	return profile{margins: make([]line, edges), shifts: [3][]line{make([]line, edges), nil, make([]line, edges)},
		every: float64(every)}
}

// add adds the results of the next place; those of a colder and a hotter arc are nil where they are not computed.
func (p *profile) add(heat float64, colder, margins, hotter []float64) {
	p.heat = append(p.heat, heat)
	for e, m := range margins {
		p.margins[e] = append(p.margins[e], m)
		if colder != nil {
			p.shifts[0][e] = append(p.shifts[0][e], colder[e]-m)
			p.shifts[2][e] = append(p.shifts[2][e], hotter[e]-m)
		}
	}
}

// columns computes every feed of each travel, all at once. The two other heats are computed at one travel in every.
func (s *search) columns(feeds axis, travels []float64, every int) ([]profile, error) {
	factors := Factors(s.p.HeatDoubt)
	var settings []Setting
	for j, v := range travels {
		for i, f := range feeds.places() {
			settings = append(settings, Setting{f, v, 1})
			if i%heatEvery == 0 && j%every == 0 {
				settings = append(settings, Setting{f, v, factors[0]}, Setting{f, v, factors[2]})
			}
		}
	}
	points, err := s.ask(settings)
	if err != nil {
		return nil, err
	}
	list := make([]profile, len(travels))
	for j := range list {
		list[j], points = columnOf(points, feeds.n, len(s.p.Doubts), j%every == 0)
	}
	return list, nil
}

// columnOf sorts the points of one travel, with or without the two other heats, and returns the remaining
// points.
func columnOf(points []Point, feeds, edges int, heats bool) (profile, []Point) {
	c := newProfile(edges, heatEvery)
	for i := range feeds {
		here := points[0]
		points = points[1:]
		var colder, hotter []float64
		if heats && i%heatEvery == 0 {
			colder, hotter, points = points[0].Margins, points[1].Margins, points[2:]
		}
		c.add(math.Log(here.Heat), colder, here.Margins, hotter)
	}
	return c, points
}

// at fills in each edge's margins at the three heats and returns the heat's logarithm, at a place counted in
// points.
func (p *profile) at(x float64, margins *[3][]float64) float64 {
	for e := range p.margins {
		m := p.margins[e].at(x)
		margins[0][e] = m + p.shifts[0][e].at(x/p.every)
		margins[1][e] = m
		margins[2][e] = m + p.shifts[2][e].at(x/p.every)
	}
	return p.heat.at(x)
}

// threeHeats allocates each edge's margins at the three heats.
func threeHeats(edges int) (m [3][]float64) {
	for k := range m {
		m[k] = make([]float64, edges)
	}
	return m
}

// meanFeed is the mean feed of one travel, counted in points.
func (s *search) meanFeed(c *profile, feeds axis) float64 {
	if feeds.n == 1 {
		return 0
	}
	x := feeds.fine()
	chances, value, m := make([]float64, len(x)), make([]float64, len(x)), threeHeats(len(s.p.Doubts))
	for i := range x {
		heat := c.at(x[i], &m)
		chances[i] = LogChance(m, s.p.Doubts)
		value[i] = chances[i] - s.p.heatPrice()*heat
	}
	return mean(x, value, widened(feedSoft, chances))
}

// alongRidge is the mean travel along the mean feeds, and the feed there, both mm/s.
func (s *search) alongRidge(columns []profile, feeds, travels axis) (travel, feed float64) {
	r := newProfile(len(s.p.Doubts), 1)
	var crest line
	m := threeHeats(len(s.p.Doubts))
	for j := range columns {
		crest = append(crest, s.meanFeed(&columns[j], feeds))
		heat := columns[j].at(crest[j], &m)
		r.add(heat, m[0], m[1], m[2])
	}
	best := s.meanTravel(&r, travels, 0)
	return travels.at(best), feeds.at(crest.at(best))
}

// place is the mean feed of the travel that was found or chosen, moved inside the edges.
func (s *search) place(c *profile, feeds axis, travel float64) (Place, error) {
	x := s.meanFeed(c, feeds)
	var err error
	if feeds.n > 1 {
		along := path{axis: feeds, margins: c.margins}
		x, err = s.inside(&along, x, func(feed float64) Setting { return Setting{feed, travel, 1} })
	}
	return Place{Feed: feeds.at(x), Travel: travel}, err
}
