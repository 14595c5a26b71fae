package calc

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"brazebooth/calc/limit"
	"brazebooth/calc/limit/grid"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// room is how wide a job's good zone is: the best margin of its window, %; below zero where it has none.
func room(t *testing.T, j Job) float64 {
	t.Helper()
	best := math.Inf(-1)
	var used Card
	if err := resolve(j, &used); err != nil {
		t.Fatal(err)
	}
	b := newBoard(&used)
	h := b.heatField(&used)
	low, high := b.steadyFeeds()
	c := grid.New(grid.Axis{Low: low, High: high, N: 12}, grid.Axis{Low: h.slow, High: h.fast, N: 8})
	if j.Feed.Set || j.Amps.Set {
		o, err := b.electric()
		if err != nil {
			t.Fatal(err)
		}
		feed := o[oFeed]
		c = grid.New(grid.Axis{Low: feed, High: feed, N: 1}, grid.Axis{Low: h.slow, High: h.fast, N: 16})
	}
	if j.Travel.Set {
		c = grid.New(grid.Axis{Low: low, High: high, N: 16}, grid.Axis{Low: j.Travel.V, High: j.Travel.V, N: 1})
	}
	for i := range c.Feeds.N {
		for k := range c.Travels.N {
			c.Put(i, k, h.beside(c.Feeds.At(float64(i)), c.Travels.At(float64(k))))
		}
	}
	const perCell = 4
	at := j
	at.Amps = Opt{}
	for i := range (c.Feeds.N-1)*perCell + 1 {
		for k := range (c.Travels.N-1)*perCell + 1 {
			x, y := float64(i)/perCell, float64(k)/perCell
			l := c.Between(x, y)
			f, g := c.Slopes(x, y, 0.3)
			if _, worst := limit.Nearest(limit.Reaches(&l, &f, &g)); worst > best {
				best, at.Feed, at.Travel = worst, Some(c.Feeds.At(x)*0.06), Some(c.Travels.At(y))
			}
		}
	}
	margin, _ := card(t, at).Figure("margin")
	return margin.Value
}

// place is what a card suggests.
type place struct {
	feed, travel, heat, chance, margin float64
	ends                               [4]float64 // of the ranges beside feed and travel
	card                               *Card
}

func placeOf(t *testing.T, j Job) place {
	t.Helper()
	c := card(t, j)
	value := func(name string) Figure { f, _ := c.Figure(name); return f }
	feed, travel := value("wire_feed"), value("travel")
	return place{feed.Value, travel.Value, value("net_heat").Value, c.Chance.Good, value("margin").Value,
		[4]float64{feed.Low, feed.High, travel.Low, travel.High}, c}
}

func (p *place) String() string {
	return fmt.Sprintf("%.3f m/min %.3f mm/s %.1f J/mm, %.0f in 100, %s, ranges %.3g", p.feed, p.travel, p.heat,
		p.chance,
		p.card.Verdict(), p.ends)
}

// apart is the distance of two places, a logarithm.
func (p *place) apart(q *place) float64 {
	return max(math.Abs(math.Log(p.feed/q.feed)), math.Abs(math.Log(p.travel/q.travel)))
}

// The furthest that feed, travel and the ends of the ranges beside them may move where a job's input changes a little,
// a logarithm, and the least share of the heat of thinner sheet.
const (
	furthestStep = 0.05
	leastHeat    = 0.94
)

// From one step of a job to the next neither feed nor travel changes by more than 5 % where the good zone is wider than
// a hand repeats, and the suggestion lies inside every edge there; where the zone is narrower or splits, the card does
// not say good. Nor does an end of a range move further, unless it lies on an edge that does; where an edge of the zone
// itself moves faster over the step, the suggestion may follow as fast. Thicker sheet gets at most 6 % less net heat
// than thinner sheet, except where the ridge turns to faster travels; see turns.
func TestSuggestionsMoveBitByBit(t *testing.T) {
	deep.Turn(t)
	r := deep.Rand(t)
	for _, s := range deep.Of(t, scans(), 5) {
		t.Run(s.name, func(t *testing.T) { s.bitByBit(t, r) })
	}
}

func (s *scan) bitByBit(t *testing.T, r *rand.Rand) {
	l := &listed{}
	for i := 1; i <= s.steps; i++ {
		if !deep.Run() && r.IntN(s.steps) >= 1 {
			continue
		}
		if l.last.card == nil || !deep.Run() {
			l.last = placeOf(t, s.job(i-1))
		}
		now := placeOf(t, s.job(i))
		if now.card.Zone != "not-modelled" && l.last.card.Zone != "not-modelled" {
			s.step(t, i, &now, l)
		}
		l.last = now
	}
	if l.say(); len(l.narrow)+len(l.edges) > 0 || l.most > 0 {
		t.Log(l.say())
	}
}

// listed is what a scan found.
type listed struct {
	last, hottest place // before, and the one with the most heat
	most          float64
	narrow, edges []string
}

func (l *listed) say() string {
	return fmt.Sprintf("steps up to %.1f %%; where the zone is narrow %s; edges that run %s", 100*l.most,
		strings.Join(l.narrow, ", "), strings.Join(l.edges, ", "))
}

func (s *scan) step(t *testing.T, i int, now *place, l *listed) {
	before, job := &l.last, s.job(i)
	moved, met := now.apart(before), now.card.Met()
	known := shortfalls[s.name]
	fastest := 0.0 // of the edges
	if met && before.card.Met() {
		fastest = s.ends(t, i, now, l)
	}
	switch narrow := func() bool { return min(room(t, s.job(i-1)), room(t, job)) <= tables.HandRepeats.V }; {
	case moved <= max(furthestStep, fastest, known.step) && (met || !before.card.Met() || known.outside):
		l.most = max(l.most, moved)
	case !narrow():
		t.Errorf("step %d: %v, then %v", i, before, now)
	case moved > furthestStep && now.card.Verdict() == "good":
		t.Errorf("step %d of %.0f %% in a narrow zone: %v", i, 100*moved, now)
	default:
		l.narrow = append(l.narrow, fmt.Sprintf("%d: %.0f %%, %.0f in 100", i, 100*moved, now.chance))
	}
	if v := now.card.Verdict(); v == "good" && now.card.Chance.shown() < tables.MarginalUnder.V {
		t.Errorf("step %d: %v", i, now)
	}
	if met {
		turned := turns[s.name] != "" && now.travel > l.hottest.travel && now.feed > l.hottest.feed
		if s.thicker && now.heat < l.hottest.heat*leastHeat && !turned && !known.heat &&
			room(t, job) > tables.HandRepeats.V {
			t.Errorf("step %d: %v after %v", i, now, &l.hottest)
		}
		if now.heat > l.hottest.heat {
			l.hottest = *now
		}
	}
}

// ends compares each end of a range that moves far with the edge on which it lies, and returns the furthest such step.
func (s *scan) ends(t *testing.T, i int, now *place, l *listed) (fastest float64) {
	for k := range now.ends {
		by := math.Abs(math.Log(now.ends[k] / l.last.ends[k]))
		if by <= furthestStep {
			continue
		}
		fastest = max(fastest, by)
		l.edges = append(l.edges, fmt.Sprintf("%d: %.0f %%", i, 100*by))
		for _, p := range []*place{&l.last, now} {
			near, further := edgeOf(t, p, k, 0.003), edgeOf(t, p, k, -0.003)
			low, high := min(near, further)/1.015, max(near, further)*1.015
			if e := p.ends[k]; (e < low || e > high) && !shortfalls[s.name].ends {
				t.Errorf("step %d: %v, and the edge at its range's end %d lies from %.3f to %.3f", i, p, k, near,
					further)
			}
		}
	}
	return fastest
}

// edgeOf is where, from a place toward one of the four ends of its ranges, the first limit falls below a level, as
// steps of 1 % find it. An end is searched for until a limit is 0.003 or less: a flat limit is known no better.
func edgeOf(t *testing.T, p *place, end int, level float64) float64 {
	t.Helper()
	var used Card
	if err := resolve(p.card.Used, &used); err != nil {
		t.Fatal(err)
	}
	b := newBoard(&used)
	h := b.heatField(&used)
	low, high := b.steadyFeeds()
	feed, travel, step := p.feed/0.06, p.travel, 1.01
	if end%2 == 0 {
		step = 1 / step
	}
	most := [4]float64{min(low, feed), max(high, feed), h.slow, h.fast}[end]
	at := [2]float64{feed, travel}
	for x := &at[end/2]; ; *x *= step {
		if l := h.beside(at[0], at[1]); !(l.Worst() >= level) || (*x-most)*(step-1) >= 0 {
			edge := *x
			if (edge-most)*(step-1) > 0 {
				edge = most
			}
			if end < 2 {
				edge *= 0.06
			}
			return edge
		}
	}
}
