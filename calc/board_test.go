package calc

import (
	"math"
	"testing"

	"brazebooth/calc/limit"
	"brazebooth/tables"
)

// ISO 544 gives +0.01/−0.04 mm up to 1.6 mm and +0.01/−0.06 above; AWS A5.02 ±0.001 in to .045 in and ±0.002 above
// (memory medium). A size between two of these has the tolerance of its neighbour.
func TestWireToleranceIsTheStandards(t *testing.T) {
	for mm, want := range map[float64][2]float64{0.9: {0.86, 0.91}, 1.2: {1.16, 1.21}, 2.4: {2.34, 2.41},
		0.889: {0.8636, 0.9144}, 1.5875: {1.5367, 1.6383}, 1.205: {1.165, 1.215}} {
		low, high := wireTolerance(mm)
		if math.Abs(low-want[0]) > 1e-9 || math.Abs(high-want[1]) > 1e-9 {
			t.Errorf("%g mm: %g to %g, want %g to %g", mm, low, high, want[0], want[1])
		}
	}
}

// A φ that is given without its spread keeps the spread of its wire's row.
func TestPhiKeepsItsRowsSpread(t *testing.T) {
	c := card(t, Job{Metal: "mild-steel", Gauge: 18, Phi: Some(4)})
	f, d := c.Setup.Filler.Phi, newBoard(c).intervals[inPhi]
	if half := (f.High - f.Low) / 2; math.Abs(d.low-(4-half)) > 1e-9 || math.Abs(d.high-(4+half)) > 1e-9 {
		t.Errorf("φ from %g to %g, its row's half-width is %g", d.low, d.high, half)
	}
	c = card(t, Job{Metal: "mild-steel", Gauge: 18, Phi: Some(4), PhiSigma: Some(0.1)})
	if d := newBoard(c).intervals[inPhi]; math.Abs(d.low-3.8) > 1e-9 || math.Abs(d.high-4.2) > 1e-9 {
		t.Errorf("φ 4 ± 0.1 from %g to %g", d.low, d.high)
	}
}

// Warnings that are dropped from a copy stay on the card that was copied.
func TestDroppingLeavesTheCard(t *testing.T) {
	c := Card{Warnings: []Warning{{Code: "a"}, {Code: "b"}, {Code: "c"}}}
	d := c
	d.dropWarnings("a", "c")
	if len(d.Warnings) != 1 || d.Warnings[0].Code != "b" || c.Warnings[0].Code != "a" || c.Warnings[1].Code != "b" {
		t.Errorf("%v, and the card %v", d.Warnings, c.Warnings)
	}
}

// The hotter member is the one whose skin lies closer to its own solidus, not the one with the higher figure.
func TestHotterIsCloserToItsSolidus(t *testing.T) {
	for _, x := range []struct {
		skin, solid [2]float64
		members     int
		want        int
	}{{[2]float64{1000, 590}, [2]float64{1500, 600}, 2, 1}, {[2]float64{1490, 100}, [2]float64{1500, 600}, 2, 0},
		{[2]float64{1000, 590}, [2]float64{1500, 600}, 1, 0}, {[2]float64{900, 900}, [2]float64{1000, 1000}, 2, 0}} {
		var v verdict
		v.field.solid, v.field.members, v.state.skin = x.solid, x.members, x.skin
		if got := v.hotter(); got != x.want {
			t.Errorf("%v of %v: member %d", x.skin, x.solid, got)
		}
	}
}

// The wetting edge compares with the same angle that the card shows.
func TestWettingEdgeShowsTheCardsAngle(t *testing.T) {
	c := card(t, Job{Metal: "mild-steel", Gauge: 18, Joint: "lap"})
	angle, ok := c.Figure("wetting_angle")
	if !ok || len(c.Edges) == 0 {
		t.Fatalf("%+v", c.Edges)
	}
	for _, e := range c.Edges {
		if e.Name == limit.Wets.Edge() {
			if in := e.Basis.Inputs; math.Abs(in[1].Value-angle.Value) > 1e-9 ||
				math.Abs(in[0].Value-tables.ColdAngleFillet.V) > 1e-9 {
				t.Errorf("%+v beside an angle of %g", in, angle.Value)
			}
			return
		}
	}
	t.Errorf("no such edge in %+v", c.Edges)
}

// Values that were given or bought are not called assumed; a stick-out that was not measured is.
func TestAssumedIsWhatNobodyGave(t *testing.T) {
	c := card(t, Job{Metal: "mild-steel", Gauge: 18, StickOut: Some(12), VoltFactor: Some(1.02), Phi: Some(4),
		Eta: Some(0.8), Gap: Some(0.5)})
	b := newBoard(c)
	for _, k := range []input{inThick1, inThick2, inStick, inVoltFactor, inPhi, inEta, inWire, inGap, inVolts} {
		if b.intervals[k].assumed {
			t.Errorf("%s is called assumed", inputNames[k].name)
		}
	}
	b = newBoard(card(t, Job{Metal: "mild-steel", Gauge: 18}))
	for _, k := range []input{inStick, inRoom, inGap} {
		if !b.intervals[k].assumed {
			t.Errorf("%s is not called assumed", inputNames[k].name)
		}
	}
}
