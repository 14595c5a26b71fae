package calc

import (
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
						c.DecidingEdge())
				}
				if c := at(end.at * end.out); c.Met() {
					t.Errorf("%+v: beyond the end of %s, at %g, the card is still good", job, name, end.at*end.out)
				}
			}
		}
	}
}

// Where no setting is good, the one that misses least is shown: with far too much wire that is the fastest travel.
func TestAWildFeedGetsTheFastestTravel(t *testing.T) {
	card, err := Solve(Job{Metal: "galvanized", Gauge: 20, Feed: Some(25)})
	if err != nil {
		t.Fatal(err)
	}
	if v := card.Used.Travel.V; v < 13.5 {
		t.Errorf("25 m/min is to travel at %g mm/s", v)
	}
	if e := card.DecidingEdge(); e.Name != "no burn-through" || card.Verdict() != "burn-through" {
		t.Errorf("%s is told by its edge %s", card.Verdict(), e.Name)
	}
	// What kills at once comes first, then what the setting does.
	for i, want := range []string{"stops", "shock", "solvent", "burn-through"} {
		if w := card.Warnings[i]; w.Code != want {
			t.Errorf("caution %d is %s", i+1, w.Code)
		}
	}
}

// Good means that every edge is met: with an unsteady arc a good heat is outside.
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
