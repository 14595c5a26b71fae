package calc

import (
	"math"
	"strings"
	"testing"

	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// From thin sheet to plate, whatever the joint, zinc boils nearer to the arc than it melts, boils nowhere on a member
// whose skin stays under its boiling point, and no band jumps where the cross-section stops judging: it ends there.
func TestZincBandsFitTheirSection(t *testing.T) {
	if testing.Short() {
		t.Skip("dozens of sections")
	}
	var all []Job
	for _, joint := range []string{"lap", "tee", "butt", "corner", "edge", "overlay"} {
		for thick := 0.6; thick < 12; thick *= 1.12 {
			for _, travel := range []float64{3, 6, 11, 18} {
				all = append(all, Job{Metal: "galvanized", Joint: joint, Thickness: Some(thick), Feed: Some(6),
					Travel: Some(travel)})
			}
		}
	}
	all = append(deep.Of(t, all, 60), Job{Metal: "galvanized", Joint: "corner", Thickness: Some(4.75)},
		Job{Metal: "galvanized", Joint: "lap", Thickness: Some(7.2)},
		Job{Metal: "galvanized", Joint: "tee", Thickness: Some(2), Feed: Some(3.5), Travel: Some(12)})
	for _, j := range all {
		c, err := Solve(j)
		if err != nil {
			continue
		}
		thick := j.Thickness.V
		boiled, ok1 := c.Figure("zinc_boiled_halfwidth")
		melted, ok2 := c.Figure("zinc_melted_halfwidth")
		name := strings.Join([]string{j.Joint, Number(thick), Number(j.Travel.V)}, " ")
		if ok1 && ok2 && (boiled.Value > melted.Value || boiled.Low > melted.Low || boiled.High > melted.High) {
			t.Errorf("%s: zinc boils %g (%g–%g) mm, melts %g (%g–%g) mm", name, boiled.Value, boiled.Low, boiled.High,
				melted.Value, melted.Low, melted.High)
		}
		if c.Zone == "not-modelled" && thick > tables.SheetThickest.V && (ok1 || ok2) {
			t.Errorf("%s: not judged, with a zinc band", name)
		}
		peak, ok := c.Figure("base_peak_temperature")
		if ok && ok1 && peak.Value < tables.ZincBoils.V && boiled.Value > 0 {
			t.Errorf("%s: the skin reaches %.0f °C and zinc boils %g mm wide", name, peak.Value, boiled.Value)
		}
		if ok1 && math.IsNaN(boiled.High) {
			t.Errorf("%s: a band without an end", name)
		}
	}
}
