package calc

import (
	"math"
	"testing"

	"brazebooth/calc/section"
)

// An edge joint is two fins that share the heat by thickness and effusivity: two alike get half each, as a butt's
// sheets do. Folding them moves no heat, so temperatures, zinc and hot widths are a butt's to the last bit.
func TestAnEdgeJointIsTwoFins(t *testing.T) {
	for _, j := range []Job{
		{Metal: "mild-steel", Thickness: Some(0.8)}, {Metal: "galvanized", Thickness: Some(1.2)},
		{Metal: "stainless-304", Thickness: Some(2), Thickness2: Some(1)},
	} {
		j.Feed, j.Travel = Some(4), Some(9)
		var cards [2]Card
		for i, joint := range []string{"edge", "butt"} {
			j.Joint = joint
			var err error
			if cards[i], err = Solve(j); err != nil {
				t.Fatal(err)
			}
		}
		for _, name := range []string{"net_heat", "base_peak_temperature", "wetted_width_1", "wetted_width_2",
			"zinc_boiled_halfwidth", "zinc_melted_halfwidth"} {
			a, ok := cards[0].Figure(name)
			b, ok2 := cards[1].Figure(name)
			if ok != ok2 || a.Value != b.Value {
				t.Errorf("%s %g mm: %s is %g on the edge, %g on the butt", j.Metal, j.Thickness.V, name, a.Value,
					b.Value)
			}
		}
	}
}

// The bead on two edges: its area follows from its angle; a wider sheet or more heat makes it flatter, more bead
// steeper, and nothing jumps where the metal flows round the corner.
func TestTheBeadOnTwoEdges(t *testing.T) {
	angle := func(area, w, thick float64) float64 {
		toes, err := section.Edge(area, w, w, thick, thick, 0)
		if err != nil {
			t.Fatal(err)
		}
		girth := 2 * section.EdgeWidth(w, thick)
		if back := girth * girth / 4 * section.Segment(toes.Phi); math.Abs(back/area-1) > 1e-9 {
			t.Errorf("%g mm2 comes back as %g", area, back)
		}
		return toes.Larger()
	}
	for thick := 0.5; thick < 3; thick *= 1.3 {
		last := math.Inf(1)
		for w := 0.3; w < 6; w *= 1.02 {
			got := angle(3, w, thick)
			if got > last+1e-12 || last-got > 0.1 && !math.IsInf(last, 1) {
				t.Errorf("%g mm, hot to %g mm: %g after %g rad", thick, w, got, last)
			}
			if last = got; angle(3.3, w, thick) <= got {
				t.Errorf("%g mm, hot to %g mm: a larger bead lies flatter", thick, w)
			}
			if angle(3, w, thick*1.1) > got+1e-12 {
				t.Errorf("%g mm, hot to %g mm: a thicker edge makes the bead steeper", thick, w)
			}
		}
	}
}

// Edges that the section cannot compute are not judged and say what to try: sheets that stand apart, edges wider than a
// bead.
func TestEdgesThatAreNotJudged(t *testing.T) {
	for _, j := range []Job{
		{Metal: "mild-steel", Thickness: Some(1), Gap: Some(1)}, {Metal: "mild-steel", Thickness: Some(6)},
	} {
		j.Joint, j.Feed, j.Travel = "edge", Some(4), Some(9)
		card, err := Solve(j)
		if err != nil {
			t.Fatal(err)
		}
		if len(card.Edges) > 0 || !hasWarning(&card, "not-modelled") {
			t.Errorf("%+v: judged as %s", j, card.Zone)
		}
	}
}

func hasWarning(card *Card, code string) bool {
	for _, w := range card.Warnings {
		if w.Code == code {
			return true
		}
	}
	return false
}
