package calc_test

import (
	"context"
	"math"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// The spans of a card are those of its suggestion, for each combination of settings by hand; where the hand's setting
// is not good they say where it would be, and a card laid there is good.
func TestGoodSpans(t *testing.T) {
	jobs := []calc.Job{{Metal: "galvanized", Gauge: 20}, {Metal: "mild-steel", Gauge: 16, Joint: "tee"},
		{Metal: "galvanized", Gauge: 16, Joint: "lap"}}
	for _, job := range deep.Of(t, jobs, 1) {
		card := mustSolve(t, job)
		f, _ := card.Figure("wire_feed")
		v, _ := card.Figure("travel")
		near := func(a, b float64) bool { return math.Abs(math.Log(a/b)) < 0.02 }
		for _, set := range [][2]bool{{false, false}, {true, false}, {false, true}, {true, true}} {
			j := job
			if set[0] {
				j.Feed = calc.Some(f.Value)
			}
			if set[1] {
				j.Travel = calc.Some(v.Value)
			}
			card := mustSolve(t, j)
			feed, travel, ok := calc.GoodSpans(context.Background(), &card)
			if !ok || !near(feed.Low, f.Low) || !near(feed.High, f.High) || !near(travel.Low, v.Low) ||
				!near(travel.High, v.High) {
				if card.Used.Feed.V == f.Value && card.Used.Travel.V == v.Value {
					t.Errorf("%s, set %v: feed %.2f to %.2f (%.2f to %.2f), travel %.2f to %.2f (%.2f to %.2f)",
						job.Metal, set, feed.Low, feed.High, f.Low, f.High, travel.Low, travel.High, v.Low, v.High)
				}
			}
		}
		for _, off := range [][2]float64{{1.5, 1}, {0.7, 1}, {1, 1.8}, {1, 0.6}, {1.4, 1.6}} {
			j := job
			j.Feed, j.Travel = calc.Some(f.Value*off[0]), calc.Some(v.Value*off[1])
			card := mustSolve(t, j)
			feed, travel, ok := calc.GoodSpans(context.Background(), &card)
			if !ok {
				t.Fatalf("%v: not known", off)
			}
			if feed.High > 0 {
				j.Feed = calc.Some(math.Sqrt(feed.Low * feed.High))
				if c := mustSolve(t, j); c.Zone != "good" {
					t.Errorf("%s %v: in the middle of the good feeds the zone is %s", job.Metal, off, c.Zone)
				}
				j.Feed = calc.Some(f.Value * off[0])
			}
			if travel.High > 0 {
				j.Travel = calc.Some(math.Sqrt(travel.Low * travel.High))
				if c := mustSolve(t, j); c.Zone != "good" {
					t.Errorf("%s %v: in the middle of the good travels the zone is %s", job.Metal, off, c.Zone)
				}
			}
			if good := card.Zone == "good"; good != (feed.Low <= j.Feed.V && j.Feed.V <= feed.High) {
				t.Errorf("%s %v: zone %s, feed %.2f of %.2f to %.2f", job.Metal, off, card.Zone, j.Feed.V, feed.Low,
					feed.High)
			}
		}
	}
	timed := mustSolve(t, calc.Job{Metal: "mild-steel", Gauge: 16, Mode: "timed"})
	if _, _, ok := calc.GoodSpans(context.Background(), &timed); ok {
		t.Error("a timed arc has the spans of a steady bead")
	}
}

func BenchmarkGoodSpans(b *testing.B) {
	for name, job := range map[string]calc.Job{
		"good": {Metal: "galvanized", Gauge: 20, Feed: calc.Some(4.3), Travel: calc.Some(7.3)},
		"hot":  {Metal: "galvanized", Gauge: 20, Feed: calc.Some(6), Travel: calc.Some(5)},
	} {
		b.Run(name, func(b *testing.B) {
			card, err := calc.Solve(job)
			if err != nil {
				b.Fatal(err)
			}
			for b.Loop() {
				calc.ForgetSections()
				calc.GoodSpans(context.Background(), &card)
			}
		})
		b.Run(name+"-solve", func(b *testing.B) {
			for b.Loop() {
				calc.ForgetSections()
				_, _ = calc.Solve(job)
			}
		})
	}
}
