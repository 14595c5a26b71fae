package suggest

import "math"

// path is what was found along an axis: each edge's margins at each heat, and the heats' logarithms. Between the points
// it is read off curves: margins bend little, the chance much.
type path struct {
	margins [3][]line // by heat and edge
	heat    line
}

// pathOf takes every three answers as one point.
func (s *search) pathOf(points []Point) path {
	var p path
	n := len(points) / 3
	for k := range heats {
		p.margins[k] = make([]line, len(s.p.Doubts))
		for e := range p.margins[k] {
			l := make(line, n)
			for i := range l {
				l[i] = points[3*i+k].Margins[e]
			}
			p.margins[k][e] = l
		}
	}
	for i := range n {
		p.heat = append(p.heat, math.Log(points[3*i].Heat))
	}
	return p
}

// weigh is the objective, without the hand's part, at places counted in points.
func (p *path) weigh(x, doubts []float64) []float64 {
	var at [3][]float64
	for k := range at {
		at[k] = make([]float64, len(doubts))
	}
	value := make([]float64, len(x))
	for i := range x {
		for k := range at {
			for e := range at[k] {
				at[k][e] = p.margins[k][e].at(x[i])
			}
		}
		value[i] = LogChance(at, doubts) - heatPrice*p.heat.at(x[i])
	}
	return value
}

// meanFeed is the mean feed of one travel, mm/s.
func (p *path) meanFeed(of *Problem, feeds axis) float64 {
	if of.Feed > 0 {
		return of.Feed
	}
	x, logs := feeds.fine()
	return math.Exp(mean(logs, p.weigh(x, of.Doubts), feedSoft))
}

// columns asks at every feed of each travel, all at once; nothing where the feed was chosen.
func (s *search) columns(feeds axis, travels []float64) ([]path, error) {
	if s.p.Feed > 0 {
		return make([]path, len(travels)), nil
	}
	var settings []Setting
	for _, v := range travels {
		for _, f := range feeds.places() {
			settings = append(settings, Setting{Feed: f, Travel: v})
		}
	}
	points, err := s.ask(settings)
	if err != nil {
		return nil, err
	}
	list := make([]path, len(travels))
	for j := range list {
		list[j] = s.pathOf(points[3*j*feeds.n : 3*(j+1)*feeds.n])
	}
	return list, nil
}

// alongRidge is the mean travel, mm/s, along the mean feeds. What the hand adds is exact between the points.
func (s *search) alongRidge(columns []path, feeds, travels axis) (float64, error) {
	settings := make([]Setting, travels.n)
	for j := range settings {
		settings[j] = Setting{Feed: columns[j].meanFeed(s.p, feeds), Travel: travels.at(float64(j))}
	}
	points, err := s.ask(settings)
	if err != nil {
		return 0, err
	}
	ridge := s.pathOf(points)
	x, logs := travels.fine()
	value := ridge.weigh(x, s.p.Doubts)
	for i := range x {
		chance, price := s.p.Hand.hand(travels.at(x[i]))
		value[i] += chance - price
	}
	return math.Exp(mean(logs, value, travelSoft)), nil
}

// place asks once more where the means have come to lie.
func (s *search) place(feed, travel float64) (Place, error) {
	points, err := s.ask([]Setting{{Feed: feed, Travel: travel}})
	if err != nil {
		return Place{}, err
	}
	chance, _ := s.p.Hand.hand(travel)
	chance += LogChance([3][]float64{points[0].Margins, points[1].Margins, points[2].Margins}, s.p.Doubts)
	return Place{Feed: feed, Travel: travel, Heat: points[0].Heat, Chance: math.Exp(chance), Asked: s.asked}, nil
}
