package correct

import (
	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/deep"
	"brazebooth/tables"
	"context"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// Volts two deviations from the usual make a cause several times likelier, and more deviations count no more;
// three on the other side nearly rule it out. The usual volts, and volts that were not read, count as 1.
func TestWeightOfVolts(t *testing.T) {
	c := card(t, calc.Job{Metal: "mild-steel", Gauge: 18, Volts: calc.Some(15)})
	v := &posterior{card: *c}
	usual, band := calc.UsualVolts(&c.Used)
	at := func(deviations, side float64) float64 {
		j := c.Used
		j.Volts = calc.Some(usual + deviations*band/2)
		return v.voltsOff(&j, side)
	}
	for _, x := range [][3]float64{{0, 1, 1}, {1, 1, math.E}, {2, 1, 7.389056}, {4, 1, 7.389056}, {-4, -1, 7.389056},
		{-3, 1, 0.04978707}, {-5, 1, 0.04978707}, {5, -1, 0.04978707}} {
		if got := at(x[0], x[1]); math.Abs(got/x[2]-1) > 1e-6 {
			t.Errorf("%g deviations to the side %g count %g times, want %g", x[0], x[1], got, x[2])
		}
	}
	open := &posterior{card: *card(t, calc.Job{Metal: "mild-steel", Gauge: 18})}
	if got := open.voltsOff(&c.Used, 1); got != 1 {
		t.Errorf("volts that nobody read count %g times", got)
	}
}

// The window explains a change for the heat, but not for other causes; without a change, the words differ as
// well.
func TestWhySeparatesHeatFromOtherCauses(t *testing.T) {
	v, c := &posterior{laid: make([]Try, 1)}, &advice.Correction{Change: &advice.Change{What: "travel"},
		GoodAfter: 60, GoodBefore: 20}
	v.card.Used.Joint = "lap"
	heat := []string{tables.CauseCold, tables.CauseHot, tables.CauseMelts, tables.CauseOnLong, tables.CauseOnShort,
		tables.CauseOffLong, tables.CauseOffShort}
	none := func(id string, before float64) *advice.Correction {
		c := &advice.Correction{GoodBefore: before}
		v.noChange(&advice.Likely{ID: id, Do: "the cure"}, c)
		return c
	}
	for _, id := range heat {
		if text := v.why(&advice.Likely{ID: id}, c, &move{}); !strings.Contains(text,
			"good with this in 60 of 100, without it in 20") {
			t.Errorf("%s: %s", id, text)
		}
		if c := none(id, 20); !strings.Contains(c.Why, "No single setting has room left") || !strings.HasSuffix(c.Do,
			"the cure") {
			t.Errorf("%s: %+v", id, c)
		}
	}
	for _, id := range []string{tables.CauseGas, tables.CauseVoltsLow, tables.CauseVapour} {
		if text := v.why(&advice.Likely{ID: id}, c, &move{}); !strings.Contains(text,
			"not about heat, which stays as likely right by the window: in 60 of 100 with it, 20 without") {
			t.Errorf("%s: %s", id, text)
		}
	}
	lower := &advice.Correction{Change: &advice.Change{What: "volts"}, GoodAfter: 40, GoodBefore: 60}
	if text := v.why(&advice.Likely{ID: tables.CauseVoltsHi}, lower, &move{}); !strings.Contains(text,
		"comes before the heat") {
		t.Error(text)
	}
	if text := v.why(&advice.Likely{ID: tables.CauseCold}, &advice.Correction{Change: &advice.Change{What: "travel"},
		GoodAfter: 4.9}, &move{far: "This is the first of several steps."}); !strings.Contains(text,
		"first of several steps") {
		t.Error(text)
	}
	for before, want := range map[float64]string{49.9: "look at it next", 50: "they are right in 50 of 100"} {
		for _, id := range []string{tables.CauseGas, tables.CauseVapour, tables.CauseStiff} {
			if c := none(id, before); !strings.Contains(c.Why, "No setting is at fault") || !strings.Contains(c.Why,
				want) || c.Do != "the cure" {
				t.Errorf("%s: %+v", id, c)
			}
		}
	}
	for _, id := range []string{tables.CauseVoltsLow, tables.CauseVoltsHi, tables.CauseHollow} {
		if c := none(id, 60); !strings.Contains(c.Why, "would spoil the heat") || c.Do != "the cure" {
			t.Errorf("%s: %+v", id, c)
		}
	}
	for before, want := range map[float64]string{49.9: "is like it in 50 of 100 only", 50: "Nothing to change: keep"} {
		if c := none(tables.CauseFine, before); !strings.Contains(c.Why, want) || c.Do != "" {
			t.Errorf("%g: %+v", before, c)
		}
	}
}

// Each lever's sign of more heat is 1 or −1.
func TestLeversHaveSigns(t *testing.T) {
	for _, l := range levers {
		if math.Abs(l.hotter) != 1 {
			t.Errorf("%s: %g", l.what, l.hotter)
		}
	}
}

// Volts far from the usual prove their cause; volts near it, or on the other side, do not.
func TestWhenVoltsProveACause(t *testing.T) {
	for volts, want := range map[float64][2]bool{10: {true, false}, 14.3: {false, false}, 20: {false, true}} {
		v, err := newPosterior(t.Context(), []Try{{calc.Job{Metal: "galvanized", Gauge: 20, Joint: "lap",
			Feed: calc.Some(4.1), Travel: calc.Some(8), Volts: calc.Some(volts)}, "spatter"}})
		if err != nil {
			t.Fatal(err)
		}
		j := &v.laid[0].Job
		if got := [2]bool{v.proven(tables.CauseVoltsLow, j), v.proven(tables.CauseVoltsHi, j)}; got != want {
			t.Errorf("%g V: %v", volts, got)
		}
	}
}

// No cause is named that the job cannot have: zinc vapour without zinc, liquid copper in metal that is no steel.
func TestNoCauseWithoutItsMetal(t *testing.T) {
	type seen struct{ metal, metal2, look string }
	var all []seen
	for _, a := range tables.Metals {
		for _, b := range []string{a.ID, "mild-steel", "galvanized", "copper"} {
			for _, look := range []string{"pores", "crack", "spatter"} {
				all = append(all, seen{a.ID, b, look})
			}
		}
	}
	for _, x := range deep.Of(t, all, 24) {
		j := calc.Job{Metal: x.metal, Metal2: x.metal2, Thickness: calc.Some(1.5), Joint: "lap", Feed: calc.Some(6),
			Travel: calc.Some(7)}
		p, err := Next(context.Background(), []Try{{j, x.look}})
		if err != nil {
			t.Fatalf("%+v: %v", x, err)
		}
		if p.Correction == nil { // the job is stopped
			continue
		}
		for _, c := range p.Correction.Causes {
			zinc := calc.Applies("zinc", &p.Card)
			steel := calc.Applies(string(tables.Steel), &p.Card) || calc.Applies(string(tables.Stainless), &p.Card)
			if c.ID == tables.CauseVapour && !zinc || c.ID == tables.CauseCopper && !steel {
				t.Errorf("%s on %s, %s: %s", x.metal, x.metal2, x.look, c.ID)
			}
		}
	}
}

// A change of a setting is advised only where the chance that it brings is larger as shown, and a vent gap only between
// sheets that lie on each other.
func TestAChangeGainsWhatIsShown(t *testing.T) {
	deep.Turn(t)
	gains := regexp.MustCompile(`good with this in (\d+) of 100, without it in (\d+)`)
	type seen struct {
		j    calc.Job
		look string
	}
	var all []seen
	for _, joint := range []string{"lap", "tee", "butt", "corner", "edge"} {
		for _, mm := range []float64{0.8, 1, 1.5, 2} {
			for _, travel := range []float64{4, 5.5, 7, 9} {
				for _, look := range []string{"rolled-edge", "thin-wide", "burn-through", "pores", "spatter"} {
					all = append(all, seen{calc.Job{Metal: "galvanized", Thickness: calc.Some(mm), Joint: joint,
						Feed: calc.Some(5.5), Travel: calc.Some(travel)}, look})
				}
			}
		}
	}
	changed := 0
	for _, x := range deep.Of(t, all, 30) {
		p, err := Next(context.Background(), []Try{{x.j, x.look}})
		if err != nil {
			t.Fatalf("%+v: %v", x, err)
		}
		text := p.Correction.Why
		for _, r := range p.Reasons {
			text += "\n" + r.Text
		}
		if m := gains.FindStringSubmatch(text); m != nil {
			with, _ := strconv.Atoi(m[1])
			without, _ := strconv.Atoi(m[2])
			if changed++; with <= without {
				t.Errorf("%s %g mm at %g mm/s, %s: %s", x.j.Joint, x.j.Thickness.V, x.j.Travel.V, x.look, m[0])
			}
		}
		for _, c := range p.Correction.Causes {
			if strings.Contains(c.Do, "vent gap") && x.j.Joint != "lap" && x.j.Joint != "tee" {
				t.Errorf("%s: %s", x.j.Joint, c.Do)
			}
		}
	}
	if changed == 0 {
		t.Error("no change of a setting was advised")
	}
}
