package suggest

import "math"

// column holds the results at one travel: each edge's margin along the feeds, how the two other heats change
// it, and the heat's logarithm. Values between the points are read from curves, because margins bend little and
// the chance much.
type column struct {
	margins []line    // by edge
	shifts  [3][]line // by heat and edge, at every third feed; nil for the computed heat
	heat    line
}

// columns computes every feed of each travel, all at once. The two other heats are computed at one travel in every.
func (s *search) columns(feeds axis, travels []float64, every int) ([]column, error) {
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
	list := make([]column, len(travels))
	for j := range list {
		list[j], points = columnOf(points, feeds.n, len(s.p.Doubts), j%every == 0)
	}
	return list, nil
}

// columnOf sorts the points of one travel, with or without the two other heats, and returns the remaining
// points.
func columnOf(points []Point, feeds, edges int, heats bool) (column, []Point) {
	c := column{margins: make([]line, edges)}
	c.shifts[0], c.shifts[2] = make([]line, edges), make([]line, edges)
	for i := range feeds {
		here := &points[0]
		c.heat = append(c.heat, math.Log(here.Heat))
		for e, m := range here.Margins {
			c.margins[e] = append(c.margins[e], m)
			if heats && i%heatEvery == 0 {
				c.shifts[0][e] = append(c.shifts[0][e], points[1].Margins[e]-m)
				c.shifts[2][e] = append(c.shifts[2][e], points[2].Margins[e]-m)
			}
		}
		points = points[1:]
		if heats && i%heatEvery == 0 {
			points = points[2:]
		}
	}
	return c, points
}

// at fills in each edge's margins at the three heats and returns the heat's logarithm, at a feed counted in
// points.
func (c *column) at(x float64, margins *[3][]float64) float64 {
	for e := range c.margins {
		m := c.margins[e].at(x)
		margins[0][e] = m + c.shifts[0][e].at(x/heatEvery)
		margins[1][e] = m
		margins[2][e] = m + c.shifts[2][e].at(x/heatEvery)
	}
	return c.heat.at(x)
}

// threeHeats allocates each edge's margins at the three heats.
func threeHeats(edges int) (m [3][]float64) {
	for k := range m {
		m[k] = make([]float64, edges)
	}
	return m
}

// meanFeed is the mean feed of one travel, counted in points.
func (s *search) meanFeed(c *column, feeds axis) float64 {
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
func (s *search) alongRidge(columns []column, feeds, travels axis) (travel, feed float64) {
	r := newRidge(len(s.p.Doubts), 1)
	var crest line
	m := threeHeats(len(s.p.Doubts))
	for j := range columns {
		crest = append(crest, s.meanFeed(&columns[j], feeds))
		r.heat = append(r.heat, columns[j].at(crest[j], &m))
		for e := range r.margins {
			r.margins[e] = append(r.margins[e], m[1][e])
			r.shifts[0][e] = append(r.shifts[0][e], m[0][e]-m[1][e])
			r.shifts[2][e] = append(r.shifts[2][e], m[2][e]-m[1][e])
		}
	}
	best := s.meanTravel(&r, travels, 0)
	return travels.at(best), feeds.at(crest.at(best))
}

// place is the mean feed of the travel that was found or chosen, moved inside the edges, with the values of the
// curves there.
func (s *search) place(c *column, feeds axis, travel float64) (Place, error) {
	x, m := s.meanFeed(c, feeds), threeHeats(len(s.p.Doubts))
	if feeds.n > 1 {
		var err error
		along := path{axis: feeds, margins: c.margins}
		if x, err = s.inside(&along, x, func(feed float64) Setting { return Setting{feed, travel, 1} }); err != nil {
			return Place{}, err
		}
	}
	heat := c.at(x, &m)
	return Place{Feed: feeds.at(x), Travel: travel, Heat: math.Exp(heat),
		Chance: Chance(m, s.p.Doubts, s.p.Hand, travel), Asked: s.asked}, nil
}
