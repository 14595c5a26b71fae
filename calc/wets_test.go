package calc

import (
	"math"
	"testing"

	"brazebooth/calc/limit"
)

// The margin of cold falls without a jump while a member stops being wetted: on colder and colder corners and laps.
func TestWetsHasNoCliff(t *testing.T) {
	for _, joint := range []string{"corner", "edge", "lap", "tee", "butt"} {
		job := Job{Metal: "mild-steel", Thickness: Some(2), Joint: joint, Feed: Some(6), Travel: Some(7)}
		c := card(t, job)
		b := newBoard(c)
		h := b.heatField(c)
		in, o, err := h.fed(b.inputs[inFeed], b.inputs[inTravel])
		if err != nil {
			t.Fatal(err)
		}
		last, gone := math.NaN(), false
		heat := in.Heat
		for share := 1.0; share > 0.2; share *= 0.995 {
			in.Heat = heat * share
			s, err := h.solve(&in, &o, false)
			if err != nil {
				t.Fatal(err)
			}
			next := h.logs(&s)[limit.Wets]
			if d := math.Abs(next - last); d > 0.09 && next > -0.8 { // nobody lays a bead that cold
				t.Errorf("%s at %.3f of the heat: %.3f after %.3f, wet %.2f", joint, share, next, last, s.wet)
			}
			last, gone = next, gone || !s.bridged
		}
		if !gone || last > -0.5 {
			t.Errorf("%s: never cold, at last %.3f", joint, last)
		}
	}
}

// Copper and grey iron melt wherever this filler wets them: their cards say so and judge the rest. Steel's skin stays
// solid, and a lap's upper edge must.
func TestWeldBraze(t *testing.T) {
	for _, x := range []struct {
		metal, joint string
		thick        float64
		melts        bool
	}{{"copper", "butt", 0.6, true}, {"grey-iron", "butt", 2, true}, {"grey-iron", "lap", 2, false}, {"mild-steel",
		"butt", 2, false}, {"brass", "butt", 1, false}} {
		c := card(t, Job{Metal: x.metal, Thickness: Some(x.thick), Joint: x.joint})
		said, edge := false, false
		for _, w := range c.Warnings {
			said = said || w.Code == "weld-braze"
		}
		for _, e := range c.Edges {
			edge = edge || e.Name == limit.Solid.Edge()
		}
		if said != x.melts || edge == x.melts {
			t.Errorf("%s %s: said %v, edge %v", x.metal, x.joint, said, edge)
		}
	}
}

// A pass is never asked for more than it lays; the other passes are counted.
func TestOnePass(t *testing.T) {
	c := card(t, Job{Metal: "mild-steel", Thickness: Some(3), Joint: "tee", Leg: Some(8)})
	want := wantedOf(c)
	if need := want.bead(want.in); need != 11 {
		t.Errorf("one pass of %g mm2", need)
	}
	for _, w := range c.Warnings {
		if w.Code == "passes" {
			return
		}
	}
	t.Error("32 mm2 in one pass")
}
