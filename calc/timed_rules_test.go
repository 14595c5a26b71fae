package calc

import (
	"strings"
	"testing"

	"brazebooth/calc/thinsheet"
)

// The remedies for a gap: less feed where it is too hot, more feed and warm members where it never wets, a thinner wire
// except where more heat is wanted, always a closer gap.
func TestTimedRemediesByHand(t *testing.T) {
	for _, x := range []struct {
		why  thinsheet.Reason
		wire float64
		gap  float64
		want string
	}{
		{thinsheet.TooHot, 1.2, 2, "wire feed down to 4.0 m/min; wire feed down to 3.2 m/min; .030 in wire; gap " +
			"closed to 1.2 mm"},
		{thinsheet.TooHot, 0.762, 0, "wire feed down to 4.0 m/min; wire feed down to 3.2 m/min"},
		{thinsheet.NeverWets, 1.2, 2, "wire feed up to 6.2 m/min; wire feed up to 7.5 m/min; parts warmed to 150 " +
			"°C; gap closed to 1.2 mm"},
		{thinsheet.WideGap, 0.9, 5, ".030 in wire; gap closed to 2.0 mm"},
	} {
		u := Job{Feed: Some(5), Wire: Some(x.wire), Gap: Some(x.gap)}
		var got []string
		for _, c := range timedCandidates(u, false, x.why) {
			got = append(got, c.change)
		}
		if list := strings.Join(got, "; "); !strings.HasPrefix(list, x.want) {
			t.Errorf("%s: %s", x.why, list)
		}
	}
}

// A given step is compared with the largest that overlaps or fills; a step that was found is not.
func TestStepsThatStrain(t *testing.T) {
	for _, x := range []struct {
		fixed, step float64
		by          thinsheet.Reason
		code        string
	}{{3, 3, thinsheet.StepFill, "timed-step-fill"}, {3, 3, "", "timed-step-far"}, {0.4, 0.4, "", "timed-step-short"},
		{2, 2, "", ""}, {0, 3, thinsheet.StepFill, ""}, {0, 0.4, "", ""}} {
		g := &timedRun{}
		g.in.FixedStep = x.fixed
		g.times.OnMin, g.times.OnMax, g.times.OffMin, g.times.OffMax = 0.2, 0.6, 0.3, 0.9
		g.times.OnOff.On, g.times.OnOff.Off, g.times.OnOff.Step, g.times.OnOff.StepMost, g.times.OnOff.StepBy = 0.4,
			0.6, x.step, 2, x.by
		var codes []string
		for _, w := range g.strained() {
			codes = append(codes, w.Code)
		}
		if got := strings.Join(codes, " "); got != x.code {
			t.Errorf("a step of %g by %q: %q, want %q", x.step, x.by, got, x.code)
		}
	}
}

// The point of a list nearest to a setting, as a ratio: between 2 and 4 the border is at 2.83.
func TestClosestByRatio(t *testing.T) {
	for v, want := range map[float64]int{0.1: 0, 1: 0, 1.4: 0, 1.42: 1, 2.8: 1, 2.85: 2, 4: 2, 100: 3} {
		if got := closest([]float64{1, 2, 4, 8}, v); got != want {
			t.Errorf("%g is closest to number %d, want %d", v, got, want)
		}
	}
}

// The error of the plane's cells is shown in per cent.
func TestGridErrorIsPerCent(t *testing.T) {
	g := &timedRun{board: new(board), card: *card(t, Job{Metal: "mild-steel", Gauge: 18, Joint: "butt", Mode: "timed",
		Gap: Some(1.5)})}
	g.times.Grid = 0.02
	for _, in := range g.inputs() {
		if strings.Contains(in.Name, "cells of half the side") && in.Value == 2 && in.Unit == "%" {
			return
		}
	}
	t.Errorf("%+v", g.inputs())
}

// A timed arc that finds no rhythm says why; one that does gives no reason.
func TestTimedSaysWhyNot(t *testing.T) {
	c := card(t, Job{Metal: "mild-steel", Gauge: 18, Joint: "butt", Mode: "timed", Gap: Some(1.5)})
	for _, s := range []Timed{{}, {Reason: "too-hot", Why: "why not"}} {
		g, to := &timedRun{card: *c}, Card{}
		g.warn(&to, &s)
		said := 0
		for _, w := range to.Warnings {
			if strings.HasPrefix(w.Code, "timed-") && w.Code != "timed-own" {
				said++
				if w.Code != "timed-too-hot" || w.Text != "why not" {
					t.Errorf("%+v", w)
				}
			}
		}
		if want := map[bool]int{true: 1}[s.Reason != ""]; said != want {
			t.Errorf("%q is said %d times", s.Reason, said)
		}
	}
}
