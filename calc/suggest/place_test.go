package suggest

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"brazebooth/calc/formula"
)

// joint is a joint with margins that are linear in the logarithms, similar to real ones.
type joint struct {
	cold, hot  float64 // heats at which it begins to wet and to melt, J/mm
	need       float64 // feed over travel that fills it
	notch      float64 // half-width, a logarithm, of a band of travels that is excluded in the middle; below 0 none
	feedNotch  float64 // the same for feeds
	heatPerArc float64 // J/mm at feed 80, travel 7
}

var (
	usual  = joint{cold: 55, hot: 95, need: 7, notch: -9, feedNotch: -9, heatPerArc: 75}
	steady = Range{50, 180}
	hand   = Range{4, 14}
	doubts = []float64{0.20, 0.06, 0.05, 0.09, 0.09, 0.1, 0.1}
)

func (j joint) margins(s Setting) (heat float64, m []float64) {
	heat = j.heatPerArc * math.Pow(s.Feed/80, 0.75) / (s.Travel / 7)
	h := heat * s.Factor
	return heat, []float64{
		math.Log(h / j.cold), math.Log(j.hot / h), math.Log(s.Feed / s.Travel / j.need),
		0.8 * math.Log(s.Feed/steady.Low), 0.8 * math.Log(steady.High/s.Feed),
		math.Abs(math.Log(s.Travel/7.5)) - j.notch, math.Abs(math.Log(s.Feed/90)) - j.feedNotch,
	}
}

func (j joint) problem() *Problem {
	return &Problem{Steady: steady, Hand: hand, HeatDoubt: heatDoubt, Doubts: doubts, Field: func(at []Setting,
		into []Point) error {
		for i := range at {
			var m []float64
			into[i].Heat, m = j.margins(at[i])
			copy(into[i].Margins, m)
		}
		return nil
	}}
}

func find(t testing.TB, p *Problem) Place {
	t.Helper()
	at, err := Find(p)
	if err != nil {
		t.Fatal(err)
	}
	return at
}

// chance is the chance to meet every edge at a place.
func (j joint) chance(at Place) float64 {
	var m [3][]float64
	for k, factor := range Factors(heatDoubt) {
		_, m[k] = j.margins(Setting{at.Feed, at.Travel, factor})
	}
	return Chance(m, doubts, hand, at.Travel)
}

// best is the highest objective on a fine grid, and its setting.
func (j joint) best() (feed, travel, value float64) {
	s := search{j.problem()}
	value = math.Inf(-1)
	for f := steady.Low; f < steady.High; f *= 1.03 {
		for v := hand.Low; v < hand.High; v *= 1.03 {
			if at := j.objective(&s, f, v); at > value {
				feed, travel, value = f, v, at
			}
		}
	}
	return feed, travel, value
}

func (j joint) objective(s *search, feed, travel float64) float64 {
	var at []Setting
	for _, factor := range Factors(heatDoubt) {
		at = append(at, Setting{feed, travel, factor})
	}
	points, err := s.ask(at)
	if err != nil {
		return math.Inf(-1)
	}
	chance, off := hand.hand(travel)
	return LogChance([3][]float64{points[0].Margins, points[1].Margins, points[2].Margins}, doubts) -
		heatPrice*math.Log(points[0].Heat) + chance - handPrice*off
}

// TestPlaceIsInTheZone: wherever the zone is as wide as its doubts, every margin is met, and little is lost
// compared with the best setting of a fine search.
func TestPlaceIsInTheZone(t *testing.T) {
	for hot := 68.0; hot < 130; hot += 8 {
		for _, heat := range []float64{40, 60, 75, 100, 130} {
			for _, need := range []float64{4, 7, 10, 13} {
				j := usual
				j.hot, j.heatPerArc, j.need = hot, heat, need
				feed, travel, top := j.best()
				_, m := j.margins(Setting{feed, travel, 1})
				inside := math.Inf(1)
				for i := range m {
					inside = min(inside, m[i]/doubts[i])
				}
				if inside < 0.8 {
					continue // hardly any zone
				}
				at := find(t, j.problem())
				what := fmt.Sprintf("%+v: %+v, best at %.1f and %.2f", j, at, feed, travel)
				_, m = j.margins(Setting{at.Feed, at.Travel, 1})
				for i := range m {
					if m[i] < 0 {
						t.Errorf("%s: margin %d is %.3f", what, i, m[i])
					}
				}
				if at.Travel < hand.Low || at.Travel > hand.High {
					t.Errorf("%s: no hand holds it", what)
				}
				s := search{j.problem()}
				if lost := top - j.objective(&s, at.Feed, at.Travel); lost > 0.1 {
					t.Errorf("%s: %.3f of the objective is lost", what, lost)
				}
			}
		}
	}
}

// TestUnitsDoNotMatter: twice the feeds and three times the travels.
func TestUnitsDoNotMatter(t *testing.T) {
	at := find(t, usual.problem())
	p := usual.problem()
	p.Steady, p.Hand = Range{2 * steady.Low, 2 * steady.High}, Range{3 * hand.Low, 3 * hand.High}
	field := p.Field
	p.Field = func(list []Setting, into []Point) error {
		for i := range list {
			list[i].Feed, list[i].Travel = list[i].Feed/2, list[i].Travel/3
		}
		return field(list, into)
	}
	scaled := find(t, p)
	check(t, "feed", scaled.Feed, 2*at.Feed, 1e-9*at.Feed)
	check(t, "travel", scaled.Travel, 3*at.Travel, 1e-9*at.Travel)
}

// TestAnEdgeThatAsksNothing: an edge that is always met changes nothing.
func TestAnEdgeThatAsksNothing(t *testing.T) {
	at := find(t, usual.problem())
	p := usual.problem()
	p.Doubts = append(append([]float64{}, doubts...), 0.28)
	field := p.Field
	p.Field = func(list []Setting, into []Point) error {
		for i := range into {
			into[i].Margins[len(doubts)] = 20
		}
		return field(list, into)
	}
	more := find(t, p)
	check(t, "feed", more.Feed, at.Feed, 1e-9)
	check(t, "travel", more.Travel, at.Travel, 1e-9)
}

func TestLessHeatOfTwoAlike(t *testing.T) {
	// No edge except the arc's: the colder half of the feeds and the hand's middle travel or faster.
	j := usual
	j.cold, j.hot, j.need = 1e-3, 1e6, 1e-3
	at := find(t, j.problem())
	if at.Feed > math.Sqrt(steady.Low*steady.High) || at.Travel < math.Sqrt(hand.Low*hand.High) {
		t.Errorf("%+v", at)
	}
	check(t, "good almost surely", j.chance(at), 1, 0.1)
}

func TestChosenSettings(t *testing.T) {
	p, asked := usual.problem(), 0
	field := p.Field
	p.Field = func(at []Setting, into []Point) error {
		asked += len(at)
		return field(at, into)
	}
	open := find(t, p)
	if asked != 6*(7+2*3)+4+2*2+1 {
		t.Errorf("%d cross-sections", asked)
	}
	p = usual.problem()
	p.Travel = open.Travel
	byFeed := find(t, p)
	// The last feeds lie around the ridge: a curve gives it at the travel found, an answer at a chosen travel.
	check(t, "feed at the travel found", math.Log(byFeed.Feed/open.Feed), 0, 1e-3)
	check(t, "travel stays", byFeed.Travel, open.Travel, 0)
	check(t, "the chance with it", usual.chance(byFeed), usual.chance(open), 1e-4)
	p = usual.problem()
	p.Feed = open.Feed
	byTravel := find(t, p)
	check(t, "feed stays", byTravel.Feed, open.Feed, 0)
	check(t, "travel, along one feed instead of the ridge", math.Log(byTravel.Travel/open.Travel), 0, 0.15)
	p.Travel = 30 // faster than a hand
	if at := find(t, p); at.Feed != open.Feed || at.Travel != 30 || usual.chance(at) > 1e-3 {
		t.Errorf("%+v", at)
	}
}

func TestFindRefuses(t *testing.T) {
	broken := errors.New("no section")
	for i, spoil := range []func(*Problem){
		func(p *Problem) { p.Steady.High = p.Steady.Low }, func(p *Problem) { p.Hand.Low = 0 },
		func(p *Problem) { p.Doubts = nil }, func(p *Problem) { p.HeatDoubt = 0 },
		func(p *Problem) { p.Doubts = []float64{0} }, func(p *Problem) { p.Field = nil },
		func(p *Problem) { p.Feed = math.NaN() },
		func(p *Problem) { p.Travel = -1 },
		func(p *Problem) { p.Field = func(_ []Setting, into []Point) error { return nil } }, // no heat
		func(p *Problem) {
			p.Field = func(_ []Setting, into []Point) error {
				for i := range into {
					into[i].Heat, into[i].Margins[0] = 1, math.NaN()
				}
				return nil
			}
		},
	} {
		p := usual.problem()
		spoil(p)
		if at, err := Find(p); !errors.Is(err, formula.ErrRange) {
			t.Errorf("%d: %+v, %v", i, at, err)
		}
	}
	p := usual.problem()
	p.Field = func([]Setting, []Point) error { return broken }
	if _, err := Find(p); !errors.Is(err, broken) {
		t.Error(err)
	}
}

func BenchmarkFind(b *testing.B) {
	p := usual.problem()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Find(p); err != nil {
			b.Fatal(err)
		}
	}
}
