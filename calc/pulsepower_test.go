package calc

import (
	"math"
	"testing"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// A pulse throws one drop. What pulses add to the power is nothing at no slope of the volts, at the least current, and
// from the peak up. Between, over every wire and current, nothing jumps and the mean current is kept.
func TestPulsesAddWithoutAJump(t *testing.T) {
	for _, wire := range []float64{0.4, 0.8, 0.889, 1.2, 1.6, 3.2} {
		detach := PulseDetach(wire)
		transition, err := formula.SprayTransition(wire)
		if err != nil {
			t.Fatal(err)
		}
		last := math.NaN()
		for mean := 5.0; mean < 3*transition; mean *= 1.002 {
			w, err := formula.OnePulse(mean, 1.8*mean/math.Pow(wire/0.9, 3), transition, detach.V, detach.Low)
			if err != nil {
				t.Fatal(err)
			}
			if back := w.Peak*w.Share + w.Base*(1-w.Share); math.Abs(back/mean-1) > 1e-9 || w.Base < 0 ||
				w.Alight && w.Base < min(mean, tables.PulseBaseLeast.V)-1e-9 {
				t.Fatalf("%g mm, %g A: mean %g, base %g", wire, mean, back, w.Base)
			}
			gain, err := formula.PulseGain(w.Effective(), mean, 17, tables.ArcSlope.V)
			if err != nil || gain < 1 || math.Abs(gain-last) > 0.04 {
				t.Fatalf("%g mm, %g A: %g after %g, %v", wire, mean, gain, last, err)
			}
			last = gain
			none, _ := formula.PulseGain(w.Effective(), mean, 17, 0)
			if none != 1 || (mean <= tables.PulseBaseLeast.V || mean >= w.Peak) && math.Abs(gain-1) > 1e-9 {
				t.Fatalf("%g mm, %g A: %g without pulses, %g without slope", wire, mean, gain, none)
			}
		}
	}
}

// Card, window and timed arc count the same power: a pulsed arc's net heat is the efficiency times volts, amps and what
// its pulses add; in other modes there is no such factor.
func TestPulsesReachTheHeat(t *testing.T) {
	job := Job{Metal: "mild-steel", Thickness: Some(1.5), Joint: "lap", Feed: Some(4), Travel: Some(8)}
	for _, mode := range []string{"dip", "pulsed"} {
		job.Mode = mode
		card, err := Solve(job)
		if err != nil {
			t.Fatal(err)
		}
		value := func(name string) float64 { f, _ := card.Figure(name); return f.Value }
		gain, pulsed := card.Figure("pulse_power")
		if pulsed != (mode == "pulsed") ||
			pulsed && !(gain.Low > 100 && gain.Low < gain.Value && gain.Value < gain.High) {
			t.Errorf("%s: pulses give %+v", mode, gain)
		}
		if !pulsed {
			gain.Value = 100
		}
		arc := value("volts") * value("current") * gain.Value / 100 / value("travel")
		if math.Abs(value("arc_energy")/arc-1) > 1e-9 ||
			math.Abs(value("net_heat")/(tables.ArcEfficiency.V*arc)-1) > 1e-9 {
			t.Errorf("%s: arc energy %g, net heat %g, by hand %g", mode, value("arc_energy"), value("net_heat"), arc)
		}
		var h Card
		if err := resolve(job, &h); err != nil {
			t.Fatal(err)
		}
		f := newBoard(&h).heatField(&h)
		in, _, err := f.fed(4000/60.0, 8)
		if err != nil || math.Abs(in.Heat/value("net_heat")-1) > 1e-9 {
			t.Errorf("%s: the window's section gets %g J/mm, the card says %g, %v", mode, in.Heat, value("net_heat"),
				err)
		}
	}
}
