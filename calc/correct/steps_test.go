package correct

import (
	"context"
	"strings"
	"testing"

	"brazebooth/calc"
)

// After a cold and a hot bead, the next setting lies between theirs, with or without a window.
func TestCorrectionsBisect(t *testing.T) {
	for _, job := range []calc.Job{{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(5.5)},
		{Metal: "mild-steel", Thickness: calc.Some(12), Joint: "plug", Feed: calc.Some(5.5)}} {
		at := func(x float64) calc.Job {
			j := job
			if j.Joint == "plug" {
				j.Feed = calc.Some(20 / x)
				return j
			}
			j.Travel = calc.Some(x)
			return j
		}
		p, err := Next(context.Background(), []Try{{at(5), "burn-through"}, {at(6), "rolled-edge"}})
		if err != nil {
			t.Fatal(err)
		}
		c := p.Correction
		if c.Change == nil || c.Change.What == "travel" && (c.Change.To <= 5 || c.Change.To >= 6) ||
			c.Change.What == "wire_feed" && (c.Change.To <= 20.0/6 || c.Change.To >= 4) {
			t.Errorf("%s: between a hole and a cold bead: %+v", job.Joint, c.Change)
		}
	}
}

// After a hole a steady arc is kept if less wire, faster travel or both would do, and given up otherwise.
func TestWhenASteadyArcIsKept(t *testing.T) {
	for _, x := range []struct {
		gauge        int
		feed, travel float64
		want         bool
	}{{24, 10, 14, true}, {24, 13, 14, true}, {24, 6, 4, true}, {24, 13, 4, true}, {24, 4, 4, true}, {30, 10, 8,
		false}, {30, 4, 14, false}} {
		v, err := newPosterior(context.Background(), []Try{{calc.Job{Metal: "mild-steel", Gauge: x.gauge,
			Joint: "butt", Feed: calc.Some(x.feed), Travel: calc.Some(x.travel)}, "burn-through"}})
		if err != nil {
			t.Fatal(err)
		}
		if steadyMayWork := v.steadyMayWork(&v.laid[0]); v.over() || steadyMayWork != x.want {
			t.Errorf("%d ga at %g mm/s and %g m/min: kept %v, %v", x.gauge, x.travel, x.feed, steadyMayWork, v.err)
		}
	}
}

// After a hole the heat is probably greater than computed, so that the card's own setting is no longer good,
// but less wire or faster travel still is.
func TestHopeAfterAHole(t *testing.T) {
	for _, x := range []struct {
		metal, joint     string
		mm, feed, travel float64
	}{{"mild-steel", "lap", 0.5, 2.6, 7}, {"mild-steel", "lap", 0.8, 2.6, 3}, {"mild-steel", "lap", 2, 7, 7},
		{"galvanized", "butt", 2, 4, 3}, {"stainless-304", "butt", 0.8, 2.6, 7}} {
		p, err := Next(context.Background(), []Try{{calc.Job{Metal: x.metal, Thickness: calc.Some(x.mm),
			Joint: x.joint, Feed: calc.Some(x.feed), Travel: calc.Some(x.travel)}, "burn-through"}})
		if err != nil {
			t.Fatal(err)
		}
		if c := p.Correction.Change; c == nil || c.What == "mode" {
			t.Errorf("%s %g mm %s at %g m/min and %g mm/s: %+v", x.metal, x.mm, x.joint, x.feed, x.travel, c)
		}
	}
}

// A hole where the window says cold does not mean that no feed and travel are good: the cure in words stays.
func TestAHoleWhereItIsCold(t *testing.T) {
	for _, x := range [][3]float64{{0.5, 2.6, 14}, {0.8, 2.6, 7}, {1.5, 3.4, 9}} {
		p, err := Next(context.Background(), []Try{{calc.Job{Metal: "galvanized", Thickness: calc.Some(x[0]),
			Joint: "lap", Feed: calc.Some(x[1]), Travel: calc.Some(x[2])}, "burn-through"}})
		if err != nil {
			t.Fatal(err)
		}
		c := p.Correction
		if c.Change != nil || !strings.Contains(c.Do, "close the gap") || strings.Contains(c.Why,
			"No feed and travel") || !strings.Contains(c.Why, "with the settings as they are") &&
			!strings.Contains(c.Why, "no answer before that is clear") {
			t.Errorf("%v: %+v, %q, %q", x, c.Change, c.Do, c.Why)
		}
	}
}

// Far from any good setting a correction goes as far as one change may, and not to a timed arc if a steady one
// is good.
func TestLongStepWhenFarOff(t *testing.T) {
	for _, x := range []struct {
		feed, travel float64
		what         string
		ratio        float64 // at least
	}{{13, 4, "travel", 1.25}, {10, 8, "travel", 1.25}, {13, 14, "wire_feed", 1.15}} {
		p, err := Next(context.Background(), []Try{{calc.Job{Metal: "mild-steel", Gauge: 24, Joint: "butt",
			Feed: calc.Some(x.feed), Travel: calc.Some(x.travel)}, "burn-through"}})
		if err != nil {
			t.Fatal(err)
		}
		c := p.Correction.Change
		if c == nil || c.What != x.what || max(c.To/c.From, c.From/c.To) < x.ratio {
			t.Errorf("24 ga burnt through at %g m/min and %g mm/s: %+v", x.feed, x.travel, c)
		}
	}
}

// In a row that turns good, the first good one is found wherever it lies; in a row without one the likeliest,
// and in a row without any chance the last.
func TestSmallestGood(t *testing.T) {
	for last := range 20 {
		for turn := range last + 2 {
			best, good := smallestGood(0, last, func(i int) float64 {
				if i >= turn {
					return 0.6
				}
				return 0.3
			})
			want, chance := turn, 0.6
			if turn > last {
				want, chance = 0, 0.3
			}
			if best != want || good != chance {
				t.Errorf("of %d the %dth is the first good one: found %d, %g", last+1, turn+1, best, good)
			}
		}
		if best, _ := smallestGood(0, last, func(int) float64 { return 0 }); best != last {
			t.Errorf("of %d hopeless ones the %dth", last+1, best+1)
		}
	}
}
