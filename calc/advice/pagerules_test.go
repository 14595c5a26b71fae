package advice

import (
	"math"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/tables"
)

// A high build-up is laid in layers: more height needs no hotter bead, but one more layer.
func TestAHighOverlayIsLaidInLayers(t *testing.T) {
	job := calc.Job{Metal: "mild-steel", Thickness: calc.Some(40), Joint: "overlay", ShaftDia: calc.Some(40),
		Length: calc.Some(60)}
	one := card(t, job)
	job.Layer = calc.Some(2)
	high := card(t, job)
	for _, name := range []string{"wire_feed", "travel", "base_peak_temperature"} {
		a, _ := one.Figure(name)
		b, _ := high.Figure(name)
		if a.Value != b.Value {
			t.Errorf("%s %g for one layer, %g for 2 mm", name, a.Value, b.Value)
		}
	}
	if !high.Met() || high.Warned("underfilled") {
		t.Errorf("2 mm is built on a setting that is %s", high.Verdict())
	}
	p, err := Overlay(high)
	if err != nil {
		t.Fatal(err)
	}
	height, _ := p.Figure("layer_height")
	if n, ok := p.Figure("layers"); !ok || n.Value != math.Ceil((2+tables.MachiningAllowance.V)/height.Value) ||
		n.Value < 2 {
		t.Errorf("%+v layers of %g mm", n, height.Value)
	}
}

// The alternative to a braze that gets too hot depends on the metal: cast iron must not be welded. A stop gives
// no advice that it forbids.
func TestAlternativesDependOnTheMetal(t *testing.T) {
	for _, x := range []struct {
		metal, metal2 string
		want, not     string
	}{
		{"grey-iron", "", "stitched or bolted cold", "weld it"}, {"ductile-iron", "mild-steel",
			"stitched or bolted cold", "weld it"}, {"mild-steel", "", "weld it, or bolt it", "stitched"},
		{"copper", "", "bolt or rivet", "weld it, or"}, {"stainless-304", "", "stainless filler", "stitched"},
		{"stainless-304", "mild-steel", "suits both", "stitched"},
	} {
		job := calc.Job{Metal: x.metal, Metal2: x.metal2, Thickness: calc.Some(2), Joint: "butt",
			ServiceTemp: calc.Some(300), Feed: calc.Some(5), Travel: calc.Some(8)}
		p, err := Fit(card(t, job))
		if err != nil {
			t.Fatal(err)
		}
		if text := strings.Join(p.Instead, "; "); p.Verdict != AnotherWay || !strings.Contains(text, x.want) ||
			strings.Contains(text, x.not) {
			t.Errorf("%s %s is %s: %s", x.metal, x.metal2, p.Verdict, text)
		}
		job.Hazard = "fire-part"
		if p, err = Fit(card(t, job)); err != nil {
			t.Fatal(err)
		}
		if h, _ := tables.Hazards.ByID("fire-part"); p.Verdict != StopWork || len(p.Instead) != 1 ||
			p.Instead[0] != h.Instead {
			t.Errorf("%s as a fire part is %s: %v", x.metal, p.Verdict, p.Instead)
		}
	}
	p, err := Fit(card(t, calc.Job{Metal: "mild-steel", Thickness: calc.Some(1), Feed: calc.Some(4),
		Travel: calc.Some(8)}))
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range p.Reasons {
		if strings.Contains(r.Text, "joint holds") || strings.HasPrefix(r.Text, "service temperature") &&
			!strings.Contains(r.Text, "strength falls above about 200 °C (400 °F)") {
			t.Errorf("%q reads as a promise", r.Text)
		}
	}
}

// The time of a timed seam and its arc time are two figures; for a steady arc there is only the arc time.
func TestCostSeparatesSeamTimeFromArcTime(t *testing.T) {
	job := calc.Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: calc.Some(2), Mode: "timed",
		Length: calc.Some(1000), Feed: calc.Some(5), ArcOn: calc.Some(0.3), ArcOff: calc.Some(0.5),
		SpotStep: calc.Some(2)}
	p, err := Cost(card(t, job))
	if err != nil {
		t.Fatal(err)
	}
	seam, ok1 := p.Figure("seam_time")
	arc, ok2 := p.Figure("arc_time")
	if !ok1 || !ok2 || math.Abs(seam.Value-1000/2*0.8) > 1e-6 || math.Abs(arc.Value-1000/2*0.3) > 1e-6 {
		t.Errorf("seam %g s, arc %g s", seam.Value, arc.Value)
	}
	job.Mode, job.ArcOn, job.ArcOff, job.SpotStep, job.Travel = "dip", calc.Opt{}, calc.Opt{}, calc.Opt{}, calc.Some(5)
	if p, err = Cost(card(t, job)); err != nil {
		t.Fatal(err)
	}
	if arc, _ := p.Figure("arc_time"); math.Abs(arc.Value-200) > 1e-9 {
		t.Errorf("arc %g s", arc.Value)
	}
	if _, ok := p.Figure("seam_time"); ok {
		t.Error("a steady seam has two times")
	}
}
