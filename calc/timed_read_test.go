package calc

import (
	"math"
	"testing"

	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// Amps and volts that were read at a known feed are the power of a timed arc: the more, the sooner the edge melts, and
// the band of that end is narrower than where both are computed.
func TestReadingsRuleTheTimedArc(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	job := Job{Metal: "mild-steel", Thickness: Some(1.2), Joint: "butt", Gap: Some(1.5), Feed: Some(5), Mode: "timed"}
	run := func(j Job) (g *timedRun, most Figure, heat Figure) {
		g = wholeRun(t, j)
		s := Timed{Job: j}
		g.fill(&s)
		return g, figure(t, &s, "arc_on_max"), figure(t, &s, "net_heat")
	}
	g, computed, _ := run(job)
	job.Amps, job.Volts = Some(1.1*g.o[oAmps]), Some(g.o[oVolts])
	read, most, heat := run(job)
	if p := read.in.Power / g.in.Power; math.Abs(p-1.1) > 1e-9 {
		t.Errorf("a tenth more amps are %.4f of the power", p)
	}
	fall := math.Log(computed.Value/most.Value) / math.Log(1.1)
	if fall < tables.GapOnMaxPower.Low-0.5 || fall > tables.GapOnMaxPower.High {
		t.Errorf("longest on %.3f s, then %.3f: the %.1fth power", computed.Value, most.Value, fall)
	}
	if wide, narrow := math.Log(computed.High/computed.Low), math.Log(most.High/most.Low); narrow > 0.9*wide {
		t.Errorf("longest on's band %.2f with readings, %.2f without", narrow, wide)
	}
	b := &read.times.OnOff
	want := tables.ArcEfficiency.V * job.Amps.V * job.Volts.V * b.On / b.Step
	if math.Abs(heat.Value/want-1) > 1e-6 ||
		!(heat.Low < heat.Value && heat.Value < heat.High) {
		t.Errorf("net heat %g (%g to %g), by the meter %g", heat.Value, heat.Low, heat.High, want)
	}
}

// A timer is set to the arc's own time and the run-in, as assumed or as read.
func TestTimerHoldsTheRunIn(t *testing.T) {
	for _, x := range []struct {
		job        Job
		v, low, up float64
	}{{Job{}, 0.06, 0.03, 0.1}, {Job{RunIn: Some(0.08)}, 0.08, 0.08, 0.08}} {
		g := &timedRun{card: Card{Job: x.job}}
		g.times.OnOff.On = 0.3
		g.timer(func(name, unit, formula string, value, low, high float64, in ...Input) {
			if name != "timer_on" || unit != "s" || math.Abs(value-0.3-x.v) > 1e-12 ||
				math.Abs(low-0.3-x.low) > 1e-12 ||
				math.Abs(high-0.3-x.up) > 1e-12 || in[1].Assumed == x.job.RunIn.Set {
				t.Errorf("%s %g (%g to %g) %s, %+v", name, value, low, high, unit, in)
			}
		})
	}
}
