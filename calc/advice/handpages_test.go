package advice

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/tables"
)

// within compares a figure with values computed by hand, to six digits.
func within(t *testing.T, p *Page, name string, v, low, high float64) {
	t.Helper()
	f := value(t, p, name)
	for _, x := range [][2]float64{{f.Value, v}, {f.Low, low}, {f.High, high}} {
		if !(math.Abs(x[0]-x[1]) <= 1e-6*x[1]) {
			t.Errorf("%s is %.7g, %.7g to %.7g; by hand %.7g, %.7g to %.7g", name, f.Value, f.Low, f.High, v, low, high)
			return
		}
	}
}

// byHand is a card of round figures whose pages can be worked out by hand.
func byHand(joint string) *calc.Card {
	c := &calc.Card{Used: calc.Job{Joint: joint, Length: calc.Some(100)}}
	for name, v := range map[string][3]float64{"bead_width": {10, 8, 12}, "bead_area": {24, 20, 28}, "travel": {5, 4,
		6}, "deposition_rate": {60, 50, 70}, "gas_flow": {12, 10, 14}} {
		c.Figures = append(c.Figures, calc.Figure{Name: name, Value: v[0], Low: v[1], High: v[2]})
	}
	return c
}

// A shaft of 40 mm, 100 mm long, with 5 mm to lay and 1 mm to turn off: beads 10 mm wide lie 7.38 mm apart by
// Ding's tangent model and 6.67 mm by Suryakumar's flat top; each model gives one end of the interval.
func TestOverlayByHand(t *testing.T) {
	c := byHand("overlay")
	c.Job.ShaftDia, c.Job.Layer = calc.Some(40), calc.Some(5)
	p, layers, err := overlayBead(c)
	if err != nil || layers != 2 {
		t.Fatalf("%g layers, %v", layers, err)
	}
	within(t, &p, "overlay_pitch", 7.38, 5.336, 8.856)
	within(t, &p, "feed_per_turn", 7.38, 5.336, 8.856)
	within(t, &p, "layer_height", 24/7.38, 20/8.856, 28/5.336)
	within(t, &p, "layers", 2, 2, 3)
	within(t, &p, "shaft_speed", 300/(40*math.Pi), 240/(40*math.Pi), 360/(40*math.Pi))
	seam := (40 + 24/7.38 + 40 + 3*24/7.38) * math.Pi * 100 // each layer at its own middle
	within(t, &p, "arc_time", seam/(7.38*5), seam/(8.856*6), seam/(5.336*4))
	// 93 % of the wire is deposited
	within(t, &p, "wire_used", seam/(7.38*5)/0.93, seam/(8.856*6)*50/60/0.93, seam/(5.336*4)*70/60/0.93)
	c.Used.Mode = "pulsed"
	if q, _, _ := overlayBead(c); value(t, &q, "wire_used").Value != value(t, &p,
		"wire_used").Value*tables.DepositionDip.V/tables.DepositionPulsed.V {
		t.Error("a pulsed arc wastes as much as a short one")
	}
}

// Without a shaft the overlay is a plate 100 mm wide; without a height it is one layer.
func TestPlateOverlayByHand(t *testing.T) {
	p, layers, err := overlayBead(byHand("overlay"))
	if err != nil || layers != 1 {
		t.Fatalf("%g layers, %v", layers, err)
	}
	within(t, &p, "arc_time", 1e4/(7.38*5), 1e4/(8.856*6), 1e4/(5.336*4))
	if _, ok := p.Figure("shaft_speed"); ok {
		t.Error("a plate turns")
	}
}

// 2 g/m of zinc (1 to 4) at 5 mm/s are 36 g/h. A share of 0.35 (0.1 to 0.8) becomes oxide, which weighs 1.2447
// times as much (81.38 over 65.38 g/mol): 4.3565 mg/s, low end by √(ln²2 + ln²3.5), high end by √(ln²2 +
// ln²2.2857). Its strictest limit is the ACGIH's 2 mg/m³: with 57 m³/min of air and the arc on all the time the
// hood has to catch 100·(1 − 0.95/(4.3565/2)) = 56.4 %.
func TestZincByHand(t *testing.T) {
	var p Page
	f := plume{p: &p, operating: tables.Datum{V: 100}}
	f.zinc(ends{1, 2, 4}, calc.Basis{}, calc.Figure{Value: 5})
	f.compareLimits(&p.Card)
	within(t, &p, "zinc_per_length", 2, 1, 4)
	within(t, &p, "zinc_rate", 36, 18, 72)
	const oxide, down, up = 81.38 / 65.38, 4.1860, 2.9412
	rate := value(t, &p, "zinc_oxide_rate")
	if math.Abs(rate.Value/(36*0.35*oxide)-1) > 5e-4 ||
		math.Abs(rate.Value/rate.Low-down) > 1e-3 || math.Abs(rate.High/rate.Value-up) > 1e-3 {
		t.Errorf("zinc oxide: %g, %g to %g; by hand %g", rate.Value, rate.Low, rate.High, 36*0.35*oxide)
	}
	if c := value(t, &p, "capture_needed"); math.Abs(c.Value-56.4) > 0.1 {
		t.Errorf("the hood has to catch %g %%, by hand 56.4", c.Value)
	}
}

// Two seams of 300 mm at 5 mm/s take two minutes of arc, with 12 L and 60 g a minute, at 20 a kilogram, 10 a
// cubic metre and 50 an hour.
func TestCostByHand(t *testing.T) {
	c := byHand("lap")
	c.Used.Length, c.Used.Count = calc.Some(300), calc.Some(2)
	c.Used.WirePrice, c.Used.GasPrice, c.Used.LabourRate, c.Used.Operating = calc.Some(20), calc.Some(10),
		calc.Some(50), calc.Some(40)
	p, err := Cost(c)
	if err != nil {
		t.Fatal(err)
	}
	within(t, &p, "seam_length", 300, 300, 300)
	within(t, &p, "arc_time", 120, 100, 150)
	within(t, &p, "wire_used", 120/0.93, 100*50/60.0/0.93, 150*70/60.0/0.93)
	within(t, &p, "gas_used", 24, 100*10/60.0, 150*14/60.0)
	within(t, &p, "labour_time", 120/3600.0/0.4, 100/3600.0/0.4, 150/3600.0/0.4)
	within(t, &p, "wire_cost", 2.4/0.93, 100*50/60.0*0.02/0.93, 150*70/60.0*0.02/0.93)
	within(t, &p, "gas_cost", 0.24, 1/6.0, 0.35)
	within(t, &p, "labour_cost", 50/12.0, 50*100/1440.0, 50*150/1440.0)
	within(t, &p, "total_cost", 2.4/0.93+0.24+50/12.0, 100*50/60.0*0.02/0.93+1/6.0+50*100/1440.0,
		150*70/60.0*0.02/0.93+0.35+50*150/1440.0)
}

// In a skipped seam every second piece comes first; from four pieces on, no neighbours are laid in succession.
func TestSkipOrderByHand(t *testing.T) {
	for n, want := range map[int]string{1: "1", 2: "1 2", 3: "1 3 2", 4: "3 1 4 2", 5: "1 4 2 5 3", 6: "4 1 5 2 6 3"} {
		if got := strings.Join(SkipOrder(n), " "); got != want {
			t.Errorf("%d pieces: %s, want %s", n, got, want)
		}
	}
}

// Between every two layers there is a wait: one wait fewer than layers.
func TestTimeOfAllLayers(t *testing.T) {
	two := timeOfAllLayers(t, 3)
	if more := timeOfAllLayers(t, 6); two != 2 || more <= 2 {
		t.Errorf("%g and %g layers", two, more)
	}
}

func timeOfAllLayers(t *testing.T, high float64) (layers float64) {
	t.Helper()
	p := pageOf(t, Overlay, calc.Job{Metal: "mild-steel", Thickness: calc.Some(12), Joint: "overlay", Filler: "cual8",
		Feed: calc.Some(7.6), Travel: calc.Some(6), ShaftDia: calc.Some(100), Length: calc.Some(30),
		Layer: calc.Some(high)})
	layers, time, hold := value(t, p, "layers").Value, value(t, p, "arc_time").Value, value(t, p,
		"interpass_hold").Value
	want := fmt.Sprintf("%.0f layers with the holds between them: about %.0f minutes in all", layers,
		(time+(layers-1)*hold)/60)
	if hold/60 < 1 || layers < 2 {
		t.Fatalf("%g layers, a hold of %g s", layers, hold)
	}
	for _, in := range value(t, p, "interpass_hold").Basis.Inputs {
		if in.Name == "one layer's arc time" && math.Abs(in.Value-time/layers) > 1e-9 {
			t.Errorf("a layer takes %g s of %g for %g", in.Value, time, layers)
		}
	}
	for _, r := range p.Reasons {
		if strings.Contains(r.Text, "layers with the holds") {
			if r.Text != want {
				t.Errorf("%s\nwant %s", r.Text, want)
			}
			return layers
		}
	}
	t.Errorf("nothing says how long it takes: %+v", p.Reasons)
	return layers
}

// An input that is another figure of the page or the card is marked as derived, because nobody gave it.
func TestOverlayInputsAreDerived(t *testing.T) {
	c := byHand("overlay")
	c.Job.ShaftDia, c.Job.Layer = calc.Some(40), calc.Some(5)
	p, _, err := overlayBead(c)
	if err != nil {
		t.Fatal(err)
	}
	derived := map[string]bool{"bead width": true, "bead area": true, "pitch": true, "layer height": true,
		"travel": true, "layers": true, "diameter": false,
		"wanted height": false, "to machine off": false, "length of one bead, mean over the layers": true,
		"length along the axis": false,
		"arc time":              true, "deposition": true, "deposition efficiency": false}
	for _, f := range p.Figures {
		for _, in := range f.Basis.Inputs {
			if want, known := derived[in.Name]; !known || in.Derived != want {
				t.Errorf("%s of %s: derived %v", in.Name, f.Name, in.Derived)
			}
		}
	}
}

// On a plate the wire of a timed arc melts only while the arc burns, here a third of the time.
func TestOverlayWireOfATimedArc(t *testing.T) {
	steady, timed := byHand("overlay"), byHand("overlay")
	timed.Used.Mode, timed.Used.ArcOn, timed.Used.ArcOff = "timed", calc.Some(0.5), calc.Some(1)
	var wire [2]float64
	for i, c := range []*calc.Card{steady, timed} {
		p, _, err := overlayBead(c)
		if err != nil {
			t.Fatal(err)
		}
		wire[i] = value(t, &p, "wire_used").Value
	}
	if math.Abs(wire[1]/wire[0]-1.0/3) > 1e-12 {
		t.Errorf("%g g steady, %g g a third of the time", wire[0], wire[1])
	}
}
