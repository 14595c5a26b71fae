package calc_test

import (
	"testing"

	"brazebooth/calc"
	"brazebooth/tables"
)

// No card shows a peak above the boiling point of steel; where the peak is left out the verdict is burn-through.
func TestNoPeakOverBoilingMetal(t *testing.T) {
	left := 0
	for _, feed := range []float64{3, 6, 9, 11} {
		for _, travel := range []float64{1, 2, 4, 8, 16} {
			card := mustSolve(t, calc.Job{Metal: "mild-steel", Thickness: calc.Some(0.8), Joint: "lap",
				Feed:   calc.Some(feed),
				Travel: calc.Some(travel)})
			f, ok := card.Figure("base_peak_temperature")
			if ok && f.Value > tables.IronBoils.V {
				t.Errorf("%g m/min at %g mm/s: %g °C", feed, travel, f.Value)
			}
			if ok || card.Zone == "not-modelled" {
				continue
			}
			if left++; card.Zone != "burn-through" {
				t.Errorf("%g m/min at %g mm/s: no peak, and %q", feed, travel, card.Zone)
			}
		}
	}
	if left == 0 {
		t.Error("no peak was left out: the scan no longer reaches so far")
	}
}
