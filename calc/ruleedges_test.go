package calc

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc/effort"
	"brazebooth/calc/limit"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// Volts are unusual beyond one and a half bands from the load line, as readings have moved it, and not before.
func TestUnusualVoltsByTheLearnedLine(t *testing.T) {
	job := Job{Metal: "mild-steel", Gauge: 16, Joint: "lap", Feed: Some(5), Travel: Some(6), VoltFactor: Some(1.2),
		VoltFactorSigma: Some(0.02)}
	f, _ := card(t, job).Figure("volts")
	for by, want := range map[float64]bool{1.4: false, 1.6: true, -1.4: false, -1.6: true} {
		job.Volts = Some(f.Value + by*tables.DipVoltBand.V)
		if c := card(t, job); c.Warned("volts-unusual") != want {
			t.Errorf("%.2f V where %.2f are usual, %.1f bands off: told %v", job.Volts.V, f.Value, by, !want)
		}
	}
}

// A calibration learned with a wire includes the wire's errors; a calibration voltage that was typed in does not.
func TestOnlyLearnedVoltageHoldsTheWiresErrors(t *testing.T) {
	job := Job{Metal: "mild-steel", Gauge: 16, Joint: "lap", Feed: Some(5), Travel: Some(6), Phi: Some(3.2)}
	alone := card(t, job)
	job.PhiSigma = Some(0.15)
	learned := card(t, job)
	dependsOnWire := func(c *Card) bool {
		f, _ := c.Figure("current")
		for _, in := range f.Basis.Inputs {
			if in.Name == inputNames[inWire].name && math.Abs(in.Sensitivity) > 0.5 {
				return true
			}
		}
		return false
	}
	if !dependsOnWire(alone) || dependsOnWire(learned) {
		t.Errorf("the current leans on the wire's diameter: alone %v, learned %v", dependsOnWire(alone),
			dependsOnWire(learned))
	}
}

// On and off times are at most ten seconds: that long is accepted, a little more is not.
func TestLongestOnOff(t *testing.T) {
	job := Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: Some(2), Mode: "timed", ArcOn: Some(LongestOnOff),
		ArcOff: Some(1)}
	ctx, stop := context.WithCancel(t.Context())
	stop()
	if _, err := runTimed(effort.New(ctx), job); err != nil && strings.Contains(err.Error(),
		"too long for a timed arc") {
		t.Errorf("%g s on: %v", job.ArcOn.V, err)
	}
	job.ArcOn = Some(LongestOnOff + 0.001)
	if _, err := runTimed(effort.New(ctx), job); err == nil || !strings.Contains(err.Error(),
		"too long for a timed arc") {
		t.Errorf("%g s on: %v", job.ArcOn.V, err)
	}
}

// A setting that is good but nearer to an edge than a hand repeats is called just good.
func TestOnlyJustGoodIsSaid(t *testing.T) {
	for margin, want := range map[float64]bool{-1: false, 0: true, 4.9: true, 5: false, 30: false} {
		v := verdict{modelled: true, zone: "good", chance: Chance{Good: 80}}
		for i := range v.d {
			v.d[i] = 60
		}
		v.d[limit.Floor], v.logs[limit.Floor] = margin, margin
		w := warnings{card: &Card{}}
		if w.justGood(&v); (len(w.list) == 1) != want {
			t.Errorf("%g %% away: %+v", margin, w.list)
		}
	}
	c := card(t, Job{Metal: "stainless-304", Gauge: 24, Joint: "butt"})
	if m, _ := c.Figure("margin"); c.Warned("just-good") != (c.Verdict() == "good" &&
		m.Value < tables.HandRepeats.V) || c.Warned("marginal") != (c.Verdict() == "marginal") {
		t.Errorf("margin %g %%, %s: %v", m.Value, c.Verdict(), c.Warnings)
	}
}

// Two gauges thicker is a remedy as long as there are such sheets.
func TestThickerSheetIsARemedyFromElevenGauge(t *testing.T) {
	for gauge, want := range map[int]bool{10: false, 11: true, 24: true} {
		j := Job{Metal: "mild-steel", Gauge: gauge, Joint: "lap"}
		c := card(t, j)
		has := slices.ContainsFunc(candidates(&j, c), func(x candidate) bool {
			return x.change == "sheet two gauges thicker"
		})
		if has != want {
			t.Errorf("%d ga: %v", gauge, has)
		}
	}
}

// A spot is filled with the wire that the card feeds.
func TestASpotTakesTheCardsWire(t *testing.T) {
	deep.Turn(t)
	s, err := SolveTimed(t.Context(), Job{Metal: "mild-steel", Gauge: 18, Joint: "butt", Mode: "timed", Gap: Some(1),
		Feed: Some(6)}, nil)
	if err != nil {
		t.Fatal(err)
	}
	rate, _ := s.Card.Figure("deposition_rate")
	found := 0
	for _, f := range s.Figures {
		for _, in := range f.Basis.Inputs {
			if in.Name == "filler laid" {
				if found++; math.Abs(in.Value/rate.Value-1) > 1e-9 {
					t.Errorf("%s: %g %s of the card's %g", f.Name, in.Value, in.Unit, rate.Value)
				}
			}
		}
	}
	if found == 0 {
		t.Error("no figure names it")
	}
}

// A timed arc is a remedy where it has a rhythm.
func TestTimedRemedyOpens(t *testing.T) {
	timed := Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: Some(2), Mode: "timed"}
	same := candidate{"timed arc", func(*Job) {}}
	if r := same.timed(effort.New(t.Context()), timed); !r.Opens || !(r.Margin > 0) {
		t.Errorf("%+v", r)
	}
}
