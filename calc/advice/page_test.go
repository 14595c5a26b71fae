package advice

import (
	"errors"
	"math"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
)

// Thicker sheet is never weaker, strength grows in proportion to length, and a safety factor divides the load.
func TestStrengthGrows(t *testing.T) {
	last := 0.0
	for _, thick := range []float64{0.8, 1, 1.2, 1.5, 2} {
		p := pageOf(t, Strength, calc.Job{Metal: "mild-steel", Thickness: calc.Some(thick), Joint: "tee",
			Throat: calc.Some(2)})
		if v := value(t, p, "sheet_capacity").Value; v <= last {
			t.Errorf("%g mm carries %g kN, less than the thinner", thick, v)
		} else {
			last = v
		}
	}
	job := calc.Job{Metal: "mild-steel", Thickness: calc.Some(1.5), Joint: "lap", Throat: calc.Some(1),
		Length: calc.Some(50)}
	one := value(t, pageOf(t, Strength, job), "allowable_load").Value
	job.Length = calc.Some(100)
	// The loads are rounded down to two figures, so each loses a tenth at most.
	if two := value(t, pageOf(t, Strength, job), "allowable_load").Value; two/one < 1.8 || two/one > 2.2 {
		t.Errorf("twice as long carries %g times as much", two/one)
	}
	job.Safety, job.Load = calc.Some(6), calc.Some(1000)
	p := pageOf(t, Strength, job)
	if half := value(t, p, "allowable_load").Value; math.Abs(half/one-1) > 1e-9 { // the same number, rounded alike
		t.Errorf("twice the safety on twice the length gives %g times", half/one)
	}
	if p.Warnings[0].Code != "overloaded" {
		t.Errorf("a load of 1000 kN is not spoken of: %+v", p.Warnings)
	}
	var fe *mistake.Error
	if _, err := Strength(card(t, calc.Job{Metal: "mild-steel", Thickness: calc.Some(1),
		Joint: "corner"})); !errors.As(err, &fe) || fe.Field != "throat" {
		t.Errorf("a corner without a throat: %v", err)
	}
}

// The pages agree: cost counts the bead that overlay lays, and filler the wire that cost counts.
func TestPagesAgreeOnWire(t *testing.T) {
	over := calc.Job{Metal: "mild-steel", Thickness: calc.Some(10), Joint: "overlay", Filler: "cual8",
		ShaftDia: calc.Some(40), Length: calc.Some(30), Layer: calc.Some(2), Feed: calc.Some(7.6), Travel: calc.Some(6)}
	a, b := value(t, pageOf(t, Overlay, over), "arc_time").Value, value(t, pageOf(t, Cost, over), "arc_time").Value
	if math.Abs(a/b-1) > 1e-9 {
		t.Errorf("overlay burns %g s, cost counts %g", a, b)
	}
	g, h := value(t, pageOf(t, Overlay, over), "wire_used").Value, value(t, pageOf(t, Cost, over), "wire_used").Value
	if math.Abs(g/h-1) > 1e-9 {
		t.Errorf("overlay lays %g g, cost counts %g", g, h)
	}
	timed := calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "butt", Mode: "timed", Gap: calc.Some(1.5),
		Length: calc.Some(1000)}
	c := card(t, timed)
	r, err := Fillers(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range r.Ranking {
		if want := value(t, pageOf(t, Cost, timed), "wire_used").Value; f.ID == c.Used.Filler &&
			math.Abs(*f.Wire/want-1) > 1e-6 {
			t.Errorf("filler takes %g g a metre, cost %g", *f.Wire, want)
		}
	}
	thick := pageOf(t, Cost, calc.Job{Metal: "mild-steel", Thickness: calc.Some(8), Joint: "butt", Feed: calc.Some(7),
		Travel: calc.Some(5), Length: calc.Some(100)})
	if n := value(t, thick, "passes").Value; n < 3 || math.Abs(value(t, thick, "arc_time").Value-n*100/5) > 1e-9 {
		t.Errorf("an 8 mm butt in %g beads", n)
	}
}

// Where the sheet is weakest no throat is advised; the advised length carries the load.
func TestStrengthAdviceOnWeakSheet(t *testing.T) {
	weak := calc.Job{Metal: "mild-steel", Thickness: calc.Some(0.5), Joint: "lap", Throat: calc.Some(3),
		Length: calc.Some(100), Load: calc.Some(6), Feed: calc.Some(4), Travel: calc.Some(9)}
	p := pageOf(t, Strength, weak)
	for _, r := range p.Reasons {
		if strings.Contains(r.Text, "or a throat of") {
			t.Errorf("%s", r.Text)
		}
	}
	weak.Length = calc.Some(134)
	if v := value(t, pageOf(t, Strength, weak), "allowable_load").Value; v < 5.9 {
		t.Errorf("134 mm carry %g kN", v)
	}
	plug := pageOf(t, Strength, calc.Job{Metal: "mild-steel", Thickness: calc.Some(0.5), Joint: "plug",
		Feed: calc.Some(5), Hole: calc.Some(plugHoleLeast(0.5))})
	sheet := value(t, plug, "sheet_capacity")
	// AISI S100, low end (memory high)
	if want := 1.4 * 0.5 * plugHoleLeast(0.5) * 270 / 1000; math.Abs(sheet.Low-want) > 1e-9 {
		t.Errorf("tear-out from %g kN, by hand %g", sheet.Low, want)
	}
	if v := value(t, plug, "allowable_load").Value; v > sheet.Low/3+1e-9 {
		t.Errorf("a plug is allowed %g kN of a sheet's %g", v, sheet.Low)
	}
}

// plugHoleLeast is the smallest hole for a sheet, mm.
func plugHoleLeast(t float64) float64 { least, _ := formula.PlugHole(t); return least }

// A named hazard stops the card and every page of it.
func TestHazardsStopEverything(t *testing.T) {
	c := card(t, calc.Job{Metal: "mild-steel", Gauge: 18, Feed: calc.Some(5), Travel: calc.Some(9), Hazard: "tank"})
	if c.Warnings[0].Severity != calc.Stop || !strings.Contains(c.Warnings[0].Text, "explodes") {
		t.Errorf("%+v", c.Warnings[0])
	}
	for _, page := range Contents() {
		if page.Of == nil || page.Name == "fit" {
			continue
		}
		p, err := page.Answer(t.Context(), c)
		if err != nil || len(p.Figures) != 0 || len(p.Instead) == 0 || len(p.Reasons) == 0 {
			t.Errorf("%s of a used drum: %+v, %v", page.Name, p.Figures, err)
		}
	}
	if _, err := calc.Solve(calc.Job{Hazard: "\x1b[2J"}); err == nil {
		t.Error("a hazard that is none has a card")
	}
}

// Thicker sheet is never weaker.
func TestThickerIsNotWeaker(t *testing.T) {
	last := 0.0
	for _, mm := range []float64{0.5, 0.8, 1.2, 2, 3} {
		v := value(t, pageOf(t, Strength, calc.Job{Metal: "mild-steel", Thickness: calc.Some(mm), Joint: "lap",
			Throat: calc.Some(1), Feed: calc.Some(5), Travel: calc.Some(9)}), "sheet_capacity").Value
		if v <= last {
			t.Errorf("%g mm carries %g kN", mm, v)
		}
		last = v
	}
}

// More zinc needs more extraction; without zinc there is no zinc fume.
func TestAirGrowsWithZinc(t *testing.T) {
	last := 0.0
	for _, coat := range []string{"G30", "G60", "G90", "G115"} {
		p := pageOf(t, Air, calc.Job{Metal: "galvanized", Thickness: calc.Some(1.2), Coating: coat,
			Feed: calc.Some(5), Travel: calc.Some(8)})
		if v := value(t, p, "capture_needed").Value; v <= last {
			t.Errorf("%s asks for %g %% at the hood, no more than the thinner coat", coat, v)
		} else {
			last = v
		}
	}
	if _, ok := pageOf(t, Air, calc.Job{Metal: "mild-steel", Thickness: calc.Some(1.2)}).Figure("zinc_rate"); ok {
		t.Error("bare steel gives zinc")
	}
}

func TestOverlayPage(t *testing.T) {
	job := calc.Job{Metal: "mild-steel", Thickness: calc.Some(12), Joint: "overlay", Filler: "cual8",
		Feed: calc.Some(7.6), Travel: calc.Some(6), ShaftDia: calc.Some(40), Length: calc.Some(30), Layer: calc.Some(2)}
	p := pageOf(t, Overlay, job)
	if v := value(t, p, "shaft_speed").Value; math.Abs(v-2.864789) > 1e-6 { // worked: v 6, D 40
		t.Errorf("%g turns a minute", v)
	}
	pitch, height, layers := value(t, p, "overlay_pitch"), value(t, p, "layer_height"), value(t, p, "layers")
	if layers.Value*height.Value < 3 || (layers.Value-1)*height.Value >= 3 {
		t.Errorf("%g layers of %g mm for 2 mm and one to turn off", layers.Value, height.Value)
	}
	round := math.Pi * (40 + layers.Value*height.Value) // mean over the layers, mm
	if v := value(t, p, "arc_time").Value; math.Abs(v-layers.Value*round*30/(pitch.Value*6)) > 1e-6 {
		t.Errorf("arc time %g s", v)
	}
	var fe *mistake.Error
	if _, err := Overlay(card(t, calc.Job{Metal: "mild-steel", Thickness: calc.Some(1),
		Joint: "lap"})); !errors.As(err, &fe) {
		t.Errorf("a lap as an overlay: %v", err)
	}
}

func TestMachinePage(t *testing.T) {
	job := calc.Job{Metal: "galvanized", Gauge: 16, Amps: calc.Some(95), RatedAmps: calc.Some(100),
		RatedDuty: calc.Some(25), NozzleBore: calc.Some(12.7), Flow: calc.Some(25)}
	p := pageOf(t, Machine, job)
	if v := value(t, p, "duty_cycle").Value; math.Abs(v-25*100*100/(95*95.0)) > 1e-6 {
		t.Errorf("duty %g", v)
	}
	codes := map[string]bool{}
	for _, w := range p.Warnings {
		codes[w.Code] = true
	}
	if !codes["duty-low"] || !codes["gas-turbulent"] {
		t.Errorf("28 %% duty and 25 L/min in a half-inch nozzle: %v", codes)
	}
}

// Up to the rated amps the duty is at least the rated duty. Above them, or without a rated duty, there is none
// and the page says why. The load is shown wherever the amps are known.
func TestNoDutyOverThePlate(t *testing.T) {
	pace := 1.15
	if !deep.Run() {
		pace = 1.5 + 0.1*deep.Rand(t).Float64()
	}
	for _, mode := range []string{"dip", "pulsed"} {
		for rated := 20.0; rated < 250; rated *= pace {
			for _, duty := range []calc.Opt{{}, calc.Some(20), calc.Some(60), calc.Some(100)} {
				p := pageOf(t, Machine, calc.Job{Metal: "galvanized", Gauge: 18, Mode: mode, Feed: calc.Some(5),
					Travel:    calc.Some(8),
					RatedAmps: calc.Some(rated), RatedDuty: duty})
				said := ""
				for _, r := range p.Reasons {
					said += r.Text + "\n"
				}
				amps, _ := p.Card.Figure("current")
				if rms, ok := p.Card.Figure("effective_current"); ok {
					amps = rms
				}
				f, ok := p.Figure("duty_cycle")
				over := strings.Contains(said, "more than its plate allows")
				if ok != (duty.Set && amps.Value <= rated) || ok && f.Value < duty.V-1e-9 || over != (duty.Set &&
					amps.Value > rated) ||
					strings.Contains(said, "plate's duty was not given") == duty.Set || strings.Contains(said,
					"amps and duty") {
					t.Errorf("%s %.0f A at %.0f A, %g %%: duty %+v\n%s", mode, amps.Value, rated, duty.V, f, said)
				}
				value(t, p, "load")
			}
		}
	}
}

// Twice the seam costs twice as much, the prices add up, and whether bronze or steel is cheaper depends on the
// grinding.
func TestCostAdds(t *testing.T) {
	job := calc.Job{Metal: "galvanized", Gauge: 20, Feed: calc.Some(5), Travel: calc.Some(8), Length: calc.Some(1000),
		Count: calc.Some(2), Flow: calc.Some(12),
		WirePrice: calc.Some(25), GasPrice: calc.Some(8), LabourRate: calc.Some(45), Operating: calc.Some(40),
		SteelPrice: calc.Some(3), Grinding: calc.Some(8), ZincRepair: calc.Some(3), Currency: "EUR"}
	p := pageOf(t, Cost, job)
	if v := value(t, p, "arc_time").Value; math.Abs(v-250) > 1e-9 {
		t.Errorf("2 m at 8 mm/s: %g s", v)
	}
	if v := value(t, p, "gas_used").Value; math.Abs(v-50) > 1e-9 {
		t.Errorf("12 L/min for 250 s: %g L", v)
	}
	// melted: pi/4·0.889²·83.333·8.53e-3 g/s for 250 s
	if v, want := value(t, p, "wire_used").Value, math.Pi/4*0.889*0.889*5000/60*8.53e-3*250; math.Abs(v/want-1) > 1e-6 {
		t.Errorf("wire %g g, mass balance %g", v, want)
	}
	sum := value(t, p, "wire_cost").Value + value(t, p, "gas_cost").Value + value(t, p, "labour_cost").Value +
		value(t, p, "zinc_repair_cost").Value
	total := value(t, p, "total_cost")
	if math.Abs(total.Value-sum) > 1e-9 || total.Unit != "EUR" {
		t.Errorf("total %g %s of %g", total.Value, total.Unit, sum)
	}
	if v := value(t, p, "steel_cost").Value; v <= total.Value {
		t.Errorf("with 11 minutes a metre of work steel costs %g, bronze %g", v, total.Value)
	}
	job.Grinding, job.ZincRepair = calc.Some(0), calc.Some(0)
	bare := pageOf(t, Cost, job)
	total = value(t, bare, "total_cost")
	if v := value(t, bare, "steel_cost").Value; v >= total.Value {
		t.Errorf("without any work steel costs %g, bronze %g", v, total.Value)
	}
	job.Count = calc.Some(4)
	if v := value(t, pageOf(t, Cost, job), "total_cost").Value; math.Abs(v/total.Value-2) > 1e-9 {
		t.Errorf("twice the pieces cost %g times", v/total.Value)
	}
}

// Every page of every usual job has figures inside their intervals, and reasons with a text and a source.
func TestPagesHaveBandsAndSources(t *testing.T) {
	for _, metal := range []string{"mild-steel", "galvanized", "stainless-304", "copper", "brass", "grey-iron"} {
		for _, joint := range []string{"lap", "tee", "butt", "plug", "overlay"} {
			c := card(t, calc.Job{Metal: metal, Thickness: calc.Some(1.5), Joint: joint, Feed: calc.Some(6),
				Travel: calc.Some(7), Throat: calc.Some(1.2), Load: calc.Some(1), RatedAmps: calc.Some(200),
				RatedDuty: calc.Some(60), NozzleBore: calc.Some(15), ShaftDia: calc.Some(30), Layer: calc.Some(1)})
			for name, of := range map[string]func(*calc.Card) (Page, error){"strength": Strength, "air": Air,
				"overlay": Overlay,
				"machine": Machine, "cost": Cost, "fit": Fit} {
				p, err := of(c)
				if err != nil {
					var fe *mistake.Error
					if !errors.As(err, &fe) || fe.Hint == "" {
						t.Errorf("%s of a %s %s: %v", name, metal, joint, err)
					}
					continue
				}
				for _, f := range p.Figures {
					if !(f.Low <= f.Value && f.Value <= f.High) || math.IsInf(f.High, 0) || f.Basis.Source == "" ||
						f.Basis.Known == "" {
						t.Errorf("%s of a %s %s: %s %g (%g to %g) from %q", name, metal, joint, f.Name, f.Value,
							f.Low, f.High, f.Basis.Source)
					}
				}
				for _, r := range p.Reasons {
					if r.Text == "" || r.Known == "" || r.Source == "" {
						t.Errorf("%s: a reason without its mark: %+v", name, r)
					}
				}
			}
		}
	}
}
