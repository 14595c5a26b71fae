package advice

import (
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// On every zinc coat the page names the hood before the general air, and never calls a movable hood alone
// enough. The fume is never more than the oxide of all zinc driven off, which is at least the zinc of the
// boiled bands.
func TestZincAsksForTheHoodFirst(t *testing.T) {
	var jobs []calc.Job
	for _, coat := range tables.Coatings {
		for _, joint := range []string{"lap", "tee", "butt", "corner", "edge"} {
			for _, mm := range []float64{0.7, 1, 1.5, 2.5} {
				if coat.Zinc {
					jobs = append(jobs, calc.Job{Metal: "galvanized", Coating: coat.ID, Thickness: calc.Some(mm),
						Joint: joint, Feed: calc.Some(3 + mm), Travel: calc.Some(7)})
				}
			}
		}
	}
	for _, j := range deep.Of(t, jobs, 7) {
		p := pageOf(t, Air, j)
		place := func(start string) int {
			return slices.IndexFunc(p.Reasons, func(r Reason) bool { return strings.HasPrefix(r.Text, start) })
		}
		if hood, air := place("a movable hood first"), place("general air is the last resort"); hood < 0 || air < hood {
			t.Errorf("%s %s: hood at %d, general air at %d", j.Coating, j.Joint, hood, air)
		}
		if !slices.ContainsFunc(p.Warnings, func(w calc.Warning) bool { return w.Code == "hood-alone" }) {
			t.Errorf("%s %s %g mm: a movable hood alone is enough for zinc", j.Coating, j.Joint, j.Thickness.V)
		}
		zinc, oxide := value(t, p, "zinc_rate"), value(t, p, "zinc_oxide_rate")
		// where the cold end of the heat boils no zinc, no oxide is the low end of its band
		if !(oxide.Low > 0 == (zinc.Low > 0) && oxide.Low >= 0 && oxide.High <= 1.246*zinc.High &&
			oxide.Value < 1.246*zinc.Value) {
			t.Errorf("%s %s: %g to %g g/h of oxide from %g g/h of zinc", j.Coating, j.Joint, oxide.Low, oxide.High,
				zinc.High)
		}
		boiled, _ := p.Card.Figure("zinc_boiled_halfwidth")
		coat, _ := tables.Coatings.ByID(j.Coating)
		if least := 4 * boiled.Value * coat.Side.V / 1000; value(t, p, "zinc_per_length").Value < 0.9*least {
			t.Errorf("%s %s: %g g/m leave, the boiled bands hold %g", j.Coating, j.Joint, zinc.Value, least)
		}
	}
}
