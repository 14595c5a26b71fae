package calc_test

import (
	"fmt"
	"math"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// solved is the card of a job, which must have one.
func solved(t *testing.T, job calc.Job) *calc.Card {
	t.Helper()
	card, err := calc.Solve(job)
	if err != nil {
		t.Fatalf("%+v: %v", job, err)
	}
	return &card
}

func edgeOf(card *calc.Card, name string) (calc.Edge, bool) {
	for _, e := range card.Edges {
		if e.Name == name {
			return e, true
		}
	}
	return calc.Edge{}, false
}

func warned(card *calc.Card, code string) bool {
	for _, w := range card.Warnings {
		if w.Code == code {
			return true
		}
	}
	return false
}

// Over gaps from none to more than the arc's width, in every thickness, an open root is bridged, refused or not judged,
// and edge, verdict, warning and largest gap agree.
func TestAGapIsBridgedOrRefused(t *testing.T) {
	gaps, sheets := deep.Many(5, 40), deep.Many(3, 14)
	for i := range sheets + 1 {
		thick := 0.4 * math.Pow(10, float64(i)/float64(sheets))
		for g := range gaps + 1 {
			gap := 4 * float64(g) / float64(gaps)
			card := solved(t, calc.Job{Metal: "mild-steel", Thickness: calc.Some(thick), Joint: "butt",
				Gap: calc.Some(gap)})
			at := fmt.Sprintf("%.2f mm, gap %.2f", thick, gap)
			e, asked := edgeOf(card, "gap bridged")
			switch {
			case card.Zone == "not-modelled":
				if gap > 0.7 && !warned(card, "gap-not-judged") {
					t.Errorf("%s: no word on the gap: %v", at, card.Warnings)
				}
				continue
			case gap == 0 && asked, gap > 0 && !asked && !warned(card, "gap-not-judged") && gap > 0.2:
				t.Errorf("%s: edge asked %v, warnings %v", at, asked, card.Warnings)
			case asked && e.Met == warned(card, "gap-not-bridged"):
				t.Errorf("%s: edge met %v, warned %v", at, e.Met, !e.Met)
			case asked && !e.Met && card.Verdict() == "good":
				t.Errorf("%s: good with a gap that is not bridged", at)
			}
			if gap >= 2.9 && thick < 3 && card.Verdict() == "good" {
				t.Errorf("%s: such a root is never bridged without pauses", at)
			}
			// The largest gap is the first that is not bridged.
			if f, ok := card.Figure("largest_gap"); ok && asked && !e.Met && f.Value > gap*1.03 {
				t.Errorf("%s: not bridged, and the largest gap is %.2f", at, f.Value)
			}
		}
	}
}

// An open corner, and a root in sheet of unknown behaviour, are not judged; their settings are never called good.
func TestWhatIsNotJudgedIsNotGood(t *testing.T) {
	gap := func(joint string, thick, thick2, gap float64) calc.Job {
		return calc.Job{Metal: "mild-steel", Thickness: calc.Some(thick), Thickness2: calc.Some(thick2), Joint: joint,
			Gap: calc.Some(gap)}
	}
	for _, job := range []calc.Job{gap("corner", 1.5, 1.5, 0.61), gap("corner", 2, 2, 3), gap("butt", 0.45, 0.45, 0.1),
		gap("butt", 2, 3.2, 0.5)} {
		card := solved(t, job)
		if f, ok := card.Figure("wire_feed"); card.Verdict() == "good" || ok && f.Suggested() {
			t.Errorf("%+v: %s, wire feed suggested %v", job, card.Verdict(), f.Suggested())
		}
	}
	for _, job := range []calc.Job{gap("corner", 1.5, 1.5, 0.6), gap("butt", 0.5, 0.5, 0.1), gap("butt", 2, 3, 0.5)} {
		if card := solved(t, job); card.Zone == "not-modelled" {
			t.Errorf("%+v: not judged", job)
		}
	}
}

// Overhead holds no more metal than a wall, a wall no more than flat; a bead larger than what hangs is refused.
func TestPositionsAskForSmallerBeads(t *testing.T) {
	for _, joint := range []string{"lap", "tee", "butt", "corner", "overlay"} {
		beads := map[string]float64{}
		for _, position := range []string{"flat", "horizontal", "overhead", "vertical-up", "vertical-down"} {
			card := solved(t, calc.Job{Metal: "mild-steel", Thickness: calc.Some(2), Joint: joint, Position: position,
				Feed: calc.Some(7), Travel: calc.Some(7)})
			e, asked := edgeOf(card, "metal stays up")
			if asked != (position != "flat") {
				t.Errorf("%s %s: edge asked %v", joint, position, asked)
			}
			if asked && e.Met == warned(card, "metal-runs") {
				t.Errorf("%s %s: met %v", joint, position, e.Met)
			}
			f, ok := card.Figure("largest_bead")
			if ok {
				beads[position] = f.Value
				if area, _ := card.Figure("bead_area"); asked && (area.Value <= f.Value*0.99) != e.Met &&
					math.Abs(area.Value/f.Value-1) > 0.02 {
					t.Errorf("%s %s: bead %.2f, largest %.2f, met %v", joint, position, area.Value, f.Value, e.Met)
				}
			}
		}
		if !(beads["overhead"] < beads["horizontal"]) {
			t.Errorf("%s: overhead holds %.2f mm2, a wall %.2f", joint, beads["overhead"], beads["horizontal"])
		}
	}
}

// With feed and travel given, a wider gap is never easier to bridge than the full root allows, and nothing jumps from
// gap to gap.
func TestBridgingFallsWithTheGap(t *testing.T) {
	steps := deep.Many(10, 60)
	for _, thick := range []float64{0.8, 1.5, 2.5} {
		last := math.Inf(1)
		for i := range steps {
			gap := 0.3 + 2*float64(i)/float64(steps)
			card := solved(t, calc.Job{Metal: "mild-steel", Thickness: calc.Some(thick), Joint: "butt",
				Gap:  calc.Some(gap),
				Feed: calc.Some(3 + thick), Travel: calc.Some(7)})
			e, ok := edgeOf(card, "gap bridged")
			if !ok {
				continue
			}
			over := e.Basis.Inputs[len(e.Basis.Inputs)-1].Value
			if over > last*1.15 {
				t.Errorf("%g mm: at a gap of %.2f it bridges %.3f times as much as it must, %.3f before", thick, gap,
					over, last)
			}
			last = over
		}
	}
}
