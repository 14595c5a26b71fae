package calc

import (
	"errors"
	"math"
	"strings"
	"testing"

	"brazebooth/tables"
)

// A high build-up is laid in layers: wanting more of it asks for no hotter bead, and one more layer is counted.
func TestAHighOverlayIsLaidInLayers(t *testing.T) {
	job := Job{Metal: "mild-steel", Thickness: Some(40), Joint: "overlay", ShaftDia: Some(40), Length: Some(60)}
	one := card(t, job)
	job.Layer = Some(2)
	high := card(t, job)
	for _, name := range []string{"wire_feed", "travel", "base_peak_temperature"} {
		a, _ := one.Figure(name)
		b, _ := high.Figure(name)
		if a.Value != b.Value {
			t.Errorf("%s %g for one layer, %g for 2 mm", name, a.Value, b.Value)
		}
	}
	if high.Verdict() != "good" || high.Warned("underfilled") {
		t.Errorf("2 mm is built on a setting that is %s", high.Verdict())
	}
	p, err := Overlay(high)
	if err != nil {
		t.Fatal(err)
	}
	height, _ := p.Figure("layer_height")
	if n, ok := p.Figure("layers"); !ok || n.Value != math.Ceil((2+tables.MachiningAllowance.V)/height.Value) || n.Value < 2 {
		t.Errorf("%+v layers of %g mm", n, height.Value)
	}
}

// What a shop does in place of a braze that gets too hot goes by the metal: cast iron is not to be welded. Beside a stop
// nothing is advised that the stop forbids.
func TestInsteadGoesByTheMetal(t *testing.T) {
	for _, x := range []struct {
		metal, metal2 string
		want, not     string
	}{
		{"grey-iron", "", "stitched or bolted cold", "weld it"}, {"ductile-iron", "mild-steel", "stitched or bolted cold", "weld it"}, {"mild-steel", "", "weld it, or bolt it", "stitched"},
		{"copper", "", "bolt or rivet", "weld it, or"}, {"stainless-304", "", "stainless filler", "stitched"}, {"stainless-304", "mild-steel", "suits both", "stitched"},
	} {
		job := Job{Metal: x.metal, Metal2: x.metal2, Thickness: Some(2), Joint: "butt", ServiceTemp: Some(300), Feed: Some(5), Travel: Some(8)}
		p, err := Fit(card(t, job))
		if err != nil {
			t.Fatal(err)
		}
		if text := strings.Join(p.Instead, "; "); p.Verdict != AnotherWay || !strings.Contains(text, x.want) || strings.Contains(text, x.not) {
			t.Errorf("%s %s is %s: %s", x.metal, x.metal2, p.Verdict, text)
		}
		job.Hazard = "fire-part"
		if p, err = Fit(card(t, job)); err != nil {
			t.Fatal(err)
		}
		if h, _ := tables.HazardByID("fire-part"); p.Verdict != StopWork || len(p.Instead) != 1 || p.Instead[0] != h.Instead {
			t.Errorf("%s as a fire part is %s: %v", x.metal, p.Verdict, p.Instead)
		}
	}
	p, err := Fit(card(t, Job{Metal: "mild-steel", Thickness: Some(1), Feed: Some(4), Travel: Some(8)}))
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range p.Reasons {
		if strings.Contains(r.Text, "joint holds") || strings.HasPrefix(r.Text, "service temperature") && !strings.Contains(r.Text, "strength falls above about 204") {
			t.Errorf("%q reads as a promise", r.Text)
		}
	}
}

// The gas that a card suggests is no more than the machine page says the nozzle carries, of a nozzle that nobody named the
// usual one's.
func TestGasEndsAtTheNozzle(t *testing.T) {
	for _, bore := range []float64{0, 8, 12.7, 16, 19} {
		job := Job{Metal: "mild-steel", Gauge: 18, Feed: Some(5), Travel: Some(8)}
		if bore > 0 {
			job.NozzleBore = Some(bore)
		}
		c := card(t, job)
		gas, _ := c.Figure("gas_flow")
		if bore == 0 {
			job.NozzleBore = Some(12.7)
		}
		p, err := Machine(card(t, job))
		if err != nil {
			t.Fatal(err)
		}
		most, ok := p.Figure("gas_ceiling")
		if !ok || gas.High > most.Value*(1+1e-12) || gas.High < min(18.9, most.Value)*(1-1e-12) || !(gas.Low <= gas.Value && gas.Value <= gas.High) {
			t.Errorf("bore %g: %g, %g to %g, the nozzle carries %g", bore, gas.Value, gas.Low, gas.High, most.Value)
		}
		if c.Used.Flow.V != gas.Value {
			t.Errorf("bore %g: %g is used, %g shown", bore, c.Used.Flow.V, gas.Value)
		}
		if in := gas.Basis.Inputs; bore < 16 && (len(in) != 1 || in[0].Assumed != (bore == 0)) {
			t.Errorf("bore %g: the nozzle is not named: %+v", bore, gas.Basis)
		}
	}
}

// A setting that was left open is called good where settings are judged, usual where they are not.
func TestOnlyWhatIsJudgedIsCalledGood(t *testing.T) {
	for _, x := range []struct {
		job  Job
		good bool
	}{
		{Job{Metal: "mild-steel", Gauge: 18, Joint: "lap"}, true}, {Job{Metal: "mild-steel", Gauge: 18, Joint: "plug"}, false},
		{Job{Metal: "mild-steel", Gauge: 18, Joint: "butt", Gap: Some(3.7)}, false}, {Job{Metal: "mild-steel", Thickness: Some(5), Joint: "butt"}, false},
	} {
		c := card(t, x.job)
		for _, name := range []string{"wire_feed", "travel"} {
			f, ok := c.Figure(name)
			if ok && (f.Suggested() != x.good || f.Usual() == x.good) {
				t.Errorf("%s, zone %s: %s is suggested %v, usual %v", x.job.Joint, c.Zone, name, f.Suggested(), f.Usual())
			}
		}
	}
}

// Every preheat that may be typed has a card; from 500 °C on none has a cooling time from 800 to 500. Where a setting
// cannot be found nobody is told to leave out what he did not give.
func TestEveryPreheatHasACard(t *testing.T) {
	low, high, _, _ := Span("preheat")
	for _, c := range []float64{low, 20, 400, 499, 500, 550, high} {
		k := card(t, Job{Metal: "mild-steel", Thickness: Some(1.5), Preheat: Some(c)})
		if f, ok := k.Figure("cooling_time"); ok != (c < 500) || ok && !(f.Value > 0) {
			t.Errorf("%g °C: cooling time %+v, %v", c, f, ok)
		}
	}
	var fe *FieldError
	none := Card{}
	given := Card{Job: Job{Feed: Some(5)}}
	if err := settingError(outside("x", 1, "y"), &none); !errors.As(err, &fe) || strings.Contains(fe.Accept, "leave") {
		t.Errorf("%v, %s", err, fe.Accept)
	}
	if err := settingError(outside("x", 1, "y"), &given); !errors.As(err, &fe) || !strings.Contains(fe.Accept, "leave feed") {
		t.Errorf("%v, %s", err, fe.Accept)
	}
}

// A timed seam's time and its arc's time are two figures; of a steady arc they are one.
func TestCostTellsSeamFromArc(t *testing.T) {
	job := Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: Some(2), Mode: "timed", Length: Some(1000), Feed: Some(5), ArcOn: Some(0.3), ArcOff: Some(0.5), SpotStep: Some(2)}
	p, err := Cost(card(t, job))
	if err != nil {
		t.Fatal(err)
	}
	seam, ok1 := p.Figure("seam_time")
	arc, ok2 := p.Figure("arc_time")
	if !ok1 || !ok2 || math.Abs(seam.Value-1000/2*0.8) > 1e-6 || math.Abs(arc.Value-1000/2*0.3) > 1e-6 {
		t.Errorf("seam %g s, arc %g s", seam.Value, arc.Value)
	}
	job.Mode, job.ArcOn, job.ArcOff, job.SpotStep, job.Travel = "dip", Opt{}, Opt{}, Opt{}, Some(5)
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
