package calc_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// At any setting overhead holds no larger bead than a wall, and a bead that runs on a wall never stays overhead; the
// heat is the same in all positions.
func TestOverheadNeverHoldsMore(t *testing.T) {
	rng := deep.Rand(t)
	joints := []string{"lap", "butt", "tee", "corner", "edge", "overlay"}
	for range deep.Many(6, 300) {
		job := calc.Job{Metal: "mild-steel", Thickness: calc.Some(0.5 + 2.5*rng.Float64()),
			Joint: joints[rng.IntN(len(joints))],
			Feed:  calc.Some(3 + 6*rng.Float64()), Travel: calc.Some(3 + 9*rng.Float64())}
		if rng.IntN(2) == 0 && job.Joint != "overlay" {
			job.Gap = calc.Some(0.6 * rng.Float64())
		}
		at := fmt.Sprintf("%s %.2f mm, gap %.2f, %.1f m/min, %.1f mm/s", job.Joint, job.Thickness.V, job.Gap.V,
			job.Feed.V, job.Travel.V)
		cards := map[string]*calc.Card{}
		for _, p := range tables.Positions {
			job.Position = p.ID
			cards[p.ID] = solved(t, job)
		}
		over, wall := cards["overhead"], cards["horizontal"]
		a, okA := over.Figure("largest_bead")
		b, okB := wall.Figure("largest_bead")
		if okA != okB || okA && !(a.Value < b.Value) {
			t.Errorf("%s: overhead holds %.2f mm2, a wall %.2f", at, a.Value, b.Value)
		}
		up, asked := edgeOf(over, "metal stays up")
		side, _ := edgeOf(wall, "metal stays up")
		if asked && up.Met && !side.Met {
			t.Errorf("%s: stays overhead and runs on a wall", at)
		}
		for id, c := range cards {
			f, _ := c.Figure("base_peak_temperature")
			if g, _ := cards["flat"].Figure("base_peak_temperature"); f.Value != g.Value {
				t.Errorf("%s: %s peaks at %.1f, flat at %.1f", at, id, f.Value, g.Value)
			}
		}
	}
}

// Each joint has a technique in each position, each position a lean of the gun with its source, and each card out of
// the flat position has the note on it.
func TestEveryPositionHasATechnique(t *testing.T) {
	for _, joint := range tables.Joints {
		seen := map[string]string{}
		for _, p := range tables.Positions {
			card := solved(t, calc.Job{Metal: "mild-steel", Joint: joint.ID, Position: p.ID, Feed: calc.Some(5),
				Travel: calc.Some(8)})
			text := calc.Technique(card)
			if other, ok := seen[text]; ok || tables.AimOn(joint.ID, p.ID) == "" {
				t.Errorf("%s %s: %q, as %s", joint.ID, p.ID, text, other)
			}
			seen[text] = p.ID
			noted := false
			for _, n := range card.Notes {
				noted = noted || n.Name == "technique" && n.Text == text && n.Source != ""
			}
			if noted == (p.ID == "flat") {
				t.Errorf("%s %s: noted %v", joint.ID, p.ID, noted)
			}
			hold, ok := tables.Holds.ByID(p.ID)
			if f, has := card.Figure("gun_angle"); !ok || !has || f.Value != hold.Lean.V {
				t.Errorf("%s %s: gun angle %v", joint.ID, p.ID, f.Value)
			}
			if p.ID != "flat" && !warned(card, p.ID) {
				t.Errorf("%s %s: no word that the position is computed and untested", joint.ID, p.ID)
			}
		}
	}
}

// How thick the plate under an overlay is hardly changes what hangs on it, up to the thickest that may be typed.
func TestThickPlateHoldsAnOverlayToo(t *testing.T) {
	last := 0.0
	for thick := 60.0; thick <= 150; thick += 10 {
		card := solved(t, calc.Job{Metal: "mild-steel", Thickness: calc.Some(thick), Joint: "overlay",
			Position: "horizontal", Feed: calc.Some(9), Travel: calc.Some(13)})
		i := slices.IndexFunc(card.Edges, func(e calc.Edge) bool { return e.Name == "metal stays up" })
		if i < 0 {
			t.Fatalf("on %g mm nothing says whether the metal stays up", thick)
		}
		holds := card.Edges[i].Basis.Inputs[1].Value // over the metal that is there
		if !card.Edges[i].Met || last > 0 && math.Abs(holds/last-1) > 0.03 {
			t.Errorf("on %g mm it holds %.3f times the metal, on 10 mm less %.3f", thick, holds, last)
		}
		last = holds
	}
}

// A card out of the flat position either has the edge that the metal stays up or says why it is not judged by it and
// what to try, with every filler, also with one whose melt is in no table. A flat card has neither.
func TestStayingIsJudgedOrSaidNotToBe(t *testing.T) {
	const edge = "metal stays up"
	for _, filler := range tables.Fillers {
		for _, joint := range []string{"lap", "butt", "tee", "corner", "edge", "overlay"} {
			for _, p := range tables.Positions {
				c := solved(t, calc.Job{Metal: "mild-steel", Thickness: calc.Some(2), Joint: joint, Filler: filler.ID,
					Position: p.ID, Feed: calc.Some(5), Travel: calc.Some(8)})
				if c.Zone == "not-modelled" {
					continue
				}
				at := slices.IndexFunc(c.Unjudged, func(u calc.Unjudged) bool { return u.Name == edge })
				_, judged := edgeOf(c, edge)
				if said := at >= 0; judged && said || (judged || said) != (p.ID != "flat") {
					t.Errorf("%s %s %s: judged %v, said not to be %v", filler.ID, joint, p.ID, judged, said)
				}
				if at >= 0 && !strings.Contains(c.Unjudged[at].Why, "; try ") {
					t.Errorf("%s %s %s: %q", filler.ID, joint, p.ID, c.Unjudged[at].Why)
				}
			}
		}
	}
}
