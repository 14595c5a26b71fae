package calc

import (
	"math"
	"testing"

	"brazebooth/internal/deep"
)

// The range beside a suggested setting holds on the card itself: at its ends every edge is met, a little beyond one
// of them is not, unless the hand's own speed or the arc's steady current ends the search.
func TestSuggestedRangesHoldOnTheCard(t *testing.T) {
	if testing.Short() {
		t.Skip("many cards")
	}
	for _, job := range deep.Of(t, []Job{
		{Metal: "galvanized", Gauge: 20}, {Metal: "galvanized", Gauge: 16, Joint: "tee"}, {Metal: "mild-steel",
			Thickness: Some(1.2), Mode: "pulsed"},
		{Metal: "stainless-304", Thickness: Some(1), Joint: "butt"}, {Metal: "mild-steel", Gauge: 18, Joint: "corner",
			Wire: Some(0.8)},
		{Metal: "mild-steel", Gauge: 18, Feed: Some(5)}, {Metal: "mild-steel", Gauge: 18, Travel: Some(8)},
	}, 4) {
		card, err := Solve(job)
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range []string{"wire_feed", "travel"} {
			f, _ := card.Figure(name)
			if !f.Suggested() {
				continue
			}
			at := func(v float64) Card {
				j := card.Used
				if name == "wire_feed" {
					j.Feed = Some(v)
				} else {
					j.Travel = Some(v)
				}
				c, err := Solve(j)
				if err != nil {
					t.Fatal(err)
				}
				return c
			}
			for _, end := range []struct{ at, out float64 }{{f.Low, 0.93}, {f.High, 1.07}} {
				if c := at(end.at); !c.Met() {
					t.Errorf("%+v: at the end of %s, %g, the card is %s: %+v", job, name, end.at, c.Verdict(),
						c.NearestEdge())
				}
				if c := at(end.at * end.out); c.Met() {
					t.Errorf("%+v: beyond the end of %s, at %g, the card is still good", job, name, end.at*end.out)
				}
			}
		}
	}
}

// The end of a range against a known limit: straight and bent in the logarithms, an end that is never met, a point on
// the edge, one outside, a stretch that is missed before the limit is met again.
func TestLastMetByHand(t *testing.T) {
	edge := func(at, bend float64) func(float64) float64 {
		return func(x float64) float64 { d := math.Log(at / x); return d + bend*d*d*d }
	}
	dip := func(low, high, most float64) func(float64) float64 { // missed between, and met again beyond
		return func(x float64) float64 { return min(most, 5*math.Log(low/x)*math.Log(high/x)) }
	}
	for _, x := range []struct {
		what             string
		from, most, want float64
		worst            func(float64) float64
	}{
		{"straight", 2, 8, 4, edge(4, 0)}, {"bent", 2, 8, 4, edge(4, 30)}, {"no edge", 2, 8, 8, edge(100, 0)},
		{"on the edge", 2, 8, 2, edge(2, 0)},
		{"outside", 2, 8, 2, edge(1.5, 0)}, {"nowhere to go", 8, 8, 8, edge(100, 0)},
		{"no answer beyond", 2, 8, 4, func(x float64) float64 {
			if x > 4.2 {
				return -far
			}
			return math.Log(4 / x)
		}},
		{"no number beyond", 2, 8, 4, func(x float64) float64 {
			if x > 4 {
				return math.NaN()
			}
			return math.Log(4 / x)
		}},
		{"a dip far out", 2, 8, 4, dip(4, 5, 0.3)}, {"a short dip near by", 2, 8, 2.1, dip(2.1, 2.2, 0.01)},
		{"toward less", 8, 2, 5, dip(4, 5, 0.3)},
		{"no number at all", 2, 8, 2, func(float64) float64 { return math.NaN() }},
	} {
		got := lastMet(x.from, x.worst(x.from), x.most, x.worst)
		short := math.Log(x.want / got)
		if x.most < x.from {
			short = -short
		}
		if short < -1e-9 || short > 0.03 {
			t.Errorf("%s: %g, by hand %g", x.what, got, x.want)
		}
	}
}

// Where nothing leads inside, the setting that misses least is shown: with far too much wire that is the fastest
// travel.
func TestAWildFeedGetsTheFastestTravel(t *testing.T) {
	card, err := Solve(Job{Metal: "galvanized", Gauge: 20, Feed: Some(25)})
	if err != nil {
		t.Fatal(err)
	}
	if v := card.Used.Travel.V; v < 13.5 {
		t.Errorf("25 m/min is to travel at %g mm/s", v)
	}
	if e := card.NearestEdge(); e.Name != "no burn-through" || card.Verdict() != "burn-through" {
		t.Errorf("%s is told by its edge %s", card.Verdict(), e.Name)
	}
	// What kills at once comes first, then what the setting does.
	for i, want := range []string{"stops", "shock", "solvent", "burn-through"} {
		if w := card.Warnings[i]; w.Code != want {
			t.Errorf("caution %d is %s", i+1, w.Code)
		}
	}
}

// Good is every edge met: with an unsteady arc a good heat is outside.
func TestVerdictCountsEveryEdge(t *testing.T) {
	edges := func(steady bool) []Edge {
		return []Edge{{Name: "wets", Margin: 5, Met: true}, {Name: "arc steady", Margin: 9, Met: steady}}
	}
	for _, x := range []struct {
		card Card
		want string
	}{
		{Card{Zone: "good", Edges: edges(true)}, "good"}, {Card{Zone: "good", Edges: edges(false)}, "outside"},
		{Card{Zone: "cold", Edges: edges(false)}, "cold"}, {Card{Zone: "good", Edges: edges(true),
			Warnings: []Warning{{Severity: Stop}}}, "stop"},
		{Card{}, ""}, {Card{Zone: "good"}, "good"},
	} {
		if got := x.card.Verdict(); got != x.want {
			t.Errorf("%+v is %q, want %q", x.card, got, x.want)
		}
	}
}
