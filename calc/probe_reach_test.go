package calc

import (
	"math"
	"testing"

	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// Faster travel makes the changed zone of a thick tee, whose corner stays colder than the skin beside it, narrower at
// both ends of its interval, down to nothing. At its end a width goes as the root of what is left of the peak, and a
// kelvin by which the grid shifts it makes some tenths of a millimetre; a distance from the line would jump by more.
func TestReachVanishesWithoutAJump(t *testing.T) {
	deep.Turn(t)
	for _, feed := range deep.Of(t, []float64{4.5, 5, 5.5, 6, 7, 8, 9, 10}, 2) {
		const steps = 120
		var last Reach
		for i := range steps + 1 {
			travel := 4 * math.Pow(4.5, float64(i)/steps)
			c := card(t, Job{Metal: "mild-steel", Joint: "tee", Thickness: Some(8), Feed: Some(feed),
				Travel: Some(travel)})
			reach, ok := ReachOf(t.Context(), c, tables.Ac1.V)
			if !ok {
				t.Fatalf("feed %g, travel %.2f: no reach", feed, travel)
			}
			r := reach[0][0]
			if i > 0 {
				for end, x := range map[string][2]float64{"low": {last.Low, r.Low}, "value": {last.V, r.V},
					"high": {last.High, r.High}} {
					if rise := x[1] - x[0]; rise > 0.3 || rise < -0.75 {
						t.Errorf("feed %g, travel %.2f: %s end %.2f mm after %.2f", feed, travel, end, x[1], x[0])
					}
				}
			}
			last = r
		}
	}
}
