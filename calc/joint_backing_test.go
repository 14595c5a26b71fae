package calc_test

import (
	"fmt"
	"math"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

var backings = []string{"none", "copper-bar", "steel-strip", "patch"}

func rootJob(metal string, thick, gap float64, backing string) calc.Job {
	return calc.Job{Metal: metal, Thickness: calc.Some(thick), Joint: "butt", Gap: calc.Some(gap), Backing: backing}
}

// Whatever lies behind a butt, its card has a verdict or a reason, its Used gives the same card, and it says what the
// backing changes; over a bar or strip no opening that a section reaches falls through.
func TestAnyBackingIsJudgedOrSaysWhyNot(t *testing.T) {
	rng := deep.Rand(t)
	for range deep.Many(10, 300) {
		metal := []string{"mild-steel", "galvanized", "stainless-304", "copper"}[rng.IntN(4)]
		thick, gap := 0.5*math.Pow(16, rng.Float64()), 6*rng.Float64()
		backing := backings[rng.IntN(4)]
		job := rootJob(metal, thick, gap, backing)
		at := fmt.Sprintf("%s %.2f mm, gap %.2f, %s", metal, thick, gap, backing)
		card := solved(t, job)
		if again := solved(t, card.Used); again.Zone != card.Zone || len(again.Figures) != len(card.Figures) ||
			again.Used != card.Used {
			t.Errorf("%s: computed again %+v, was %+v", at, again.Used, card.Used)
		}
		if card.Zone == "not-modelled" {
			if !warned(card, "not-modelled") {
				t.Errorf("%s: no reason", at)
			}
			continue
		}
		e, asked := edgeOf(card, "gap bridged")
		switch backing {
		case "copper-bar", "steel-strip":
			if !warned(card, backing) || !warned(card, "backing-heat") || asked && !e.Met {
				t.Errorf("%s: asked %v, met %v, %v", at, asked, e.Met, card.Warnings)
			}
			if gap > 3.6 || thick > 3 {
				t.Errorf("%s: judged", at)
			}
		case "patch":
			if card.Used.Joint != "lap" || asked || !warned(card, "patch") {
				t.Errorf("%s: joint %s, asked %v", at, card.Used.Joint, asked)
			}
		}
	}
}

// At one setting a bar or a strip makes the sheet colder, and never the largest gap smaller. A patch is the lap of the
// sheet on a piece of itself, whatever the gap was.
func TestWhatABackingChanges(t *testing.T) {
	for _, thick := range []float64{0.8, 1.5, 2.5} {
		job := rootJob("mild-steel", thick, 1, "none")
		job.Feed, job.Travel = calc.Some(3+thick), calc.Some(7)
		bare := solved(t, job)
		peak, _ := bare.Figure("base_peak_temperature")
		widest, _ := bare.Figure("largest_gap")
		for _, backing := range backings[1:3] {
			job.Backing = backing
			card := solved(t, job)
			if f, _ := card.Figure("base_peak_temperature"); !(f.Value < peak.Value) {
				t.Errorf("%g mm, %s: peak %.0f, without %.0f", thick, backing, f.Value, peak.Value)
			}
			if f, ok := card.Figure("largest_gap"); ok && !(f.Value > widest.Value) || ok == (len(card.Unjudged) > 0) {
				t.Errorf("%g mm, %s: largest gap %.2f, without %.2f", thick, backing, f.Value, widest.Value)
			}
			if _, ok := card.Figure("root_sag"); ok {
				t.Errorf("%g mm, %s: a root that lies on something does not sag", thick, backing)
			}
		}
		job.Backing = "patch"
		lap := job
		lap.Joint, lap.Gap, lap.Backing = "lap", calc.Some(0), ""
		a, b := solved(t, job), solved(t, lap)
		for _, f := range b.Figures {
			if g, ok := a.Figure(f.Name); !ok || g.Value != f.Value {
				t.Errorf("%g mm: %s of the patch %v, of the lap %v", thick, f.Name, g.Value, f.Value)
			}
		}
	}
}

// Backing belongs to a butt: on other joints it is left out, and the card says so.
func TestBackingOfOtherJoints(t *testing.T) {
	for _, joint := range []string{"lap", "tee", "corner", "overlay", "plug"} {
		with := solved(t, calc.Job{Metal: "mild-steel", Joint: joint, Backing: "copper-bar"})
		without := solved(t, calc.Job{Metal: "mild-steel", Joint: joint})
		if with.Used != without.Used || !warned(with, "backing-unused") || warned(without, "backing-unused") {
			t.Errorf("%s: %+v", joint, with.Used)
		}
	}
	if _, err := calc.Solve(calc.Job{Joint: "butt", Backing: "wood"}); err == nil {
		t.Error("a wooden bar")
	}
}
