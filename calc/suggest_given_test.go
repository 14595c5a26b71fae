package calc

import (
	"math"
	"testing"

	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// TestSuggestionsLieInTheZoneOfWhatIsGiven gives the feed or the travel and leaves the other open, over all metals,
// joints and thicknesses of sheet: where any setting of the other meets every edge over 2 % of its length, the
// suggestion does.
func TestSuggestionsLieInTheZoneOfWhatIsGiven(t *testing.T) {
	r, tried, zones := deep.Rand(t), 0, 0
	metals := tables.Metals
	for range deep.Many(7, 1500) {
		j := Job{Metal: metals[r.IntN(len(metals))].ID, Joint: []string{"lap", "tee", "butt", "corner",
			"overlay"}[r.IntN(5)],
			Thickness: Some(0.6 * math.Pow(5, r.Float64())), Wire: Some([]float64{0.762, 0.889, 1, 1.143}[r.IntN(4)])}
		if r.IntN(2) == 0 {
			j.Feed = Some(2.5 * math.Pow(4, r.Float64()))
		} else {
			j.Travel = Some(4 * math.Pow(3.5, r.Float64()))
		}
		c, err := Solve(j)
		if err != nil || c.Zone == "not-modelled" {
			continue
		}
		tried++
		low, high := zoneOfOpen(t, &c, j.Feed.Set)
		if !(high > 1.02*low) {
			continue
		}
		if zones++; !c.Met() {
			t.Errorf("%s %.2f mm %s, wire %g, feed %+v, travel %+v: %.2f m/min at %.2f mm/s misses %s by %.1f %%, "+
				"from %.2f to %.2f mm/s every edge is met",
				j.Metal, j.Thickness.V, j.Joint, j.Wire.V, j.Feed, j.Travel, c.Used.Feed.V, c.Used.Travel.V,
				c.DecidingEdge().Name, -c.DecidingEdge().Margin, low, high)
		}
	}
	t.Logf("%d jobs, %d with a zone", tried, zones)
}

// zoneOfOpen is the longest stretch of the open setting, mm/s, over which every edge is met; 0 and 0 for none.
func zoneOfOpen(t *testing.T, c *Card, feedGiven bool) (low, high float64) {
	t.Helper()
	var used Card
	if err := resolve(c.Used, &used); err != nil {
		t.Fatal(err)
	}
	b := newBoard(&used)
	h := b.heatField(&used)
	first, last := h.slow, h.fast
	if !feedGiven {
		first, last = b.steadyFeeds()
	}
	from, to := 0.0, 0.0
	for x := first; x < last; x *= 1.01 {
		feed, travel := c.Used.Feed.V/0.06, x
		if !feedGiven {
			feed, travel = x, c.Used.Travel.V
		}
		if l := h.beside(feed, travel); !(l.Worst() >= 0) {
			from = 0
			continue
		}
		if from == 0 {
			from = x
		}
		if to = x; low == 0 || to/from > high/low {
			low, high = from, to
		}
	}
	return low, high
}
