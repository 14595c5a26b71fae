package correct

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// No change of a time makes a good bead less likely; if both times have to move, the words give the other one
// and the chance with both.
func TestATimedArcIsNotMadeWorse(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("many corrections of one timed arc")
	}
	job := calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "butt", Mode: "timed", Gap: calc.Some(1), Feed: calc.Some(6)}
	s, err := calc.SolveTimed(t.Context(), job, nil)
	if err != nil {
		t.Fatal(err)
	}
	step := figure(t, &s, "spot_step").Value
	type off struct {
		on, off float64 // factors of the times that are good
		seen    string
	}
	var tried []off
	for _, x := range []float64{0.5, 0.7, 1, 1.4} {
		for _, y := range []float64{0.7, 1, 1.4} {
			tried = append(tried, off{x, y, "rolled-edge"}, off{x, y, "burn-through"})
		}
	}
	tried = deep.Of(t, tried, 1)
	both, alone := 0, 0
	for _, x := range tried {
		j := job
		j.ArcOn, j.ArcOff, j.SpotStep = calc.Some(x.on*figure(t, &s, "arc_on").Value), calc.Some(x.off*figure(t, &s,
			"arc_off").Value), calc.Some(step)
		p, err := Next(t.Context(), []Try{{j, x.seen}})
		if err != nil {
			t.Fatal(err)
		}
		c := p.Correction
		if c.Change == nil || c.GoodAfter < c.GoodBefore-1e-9 {
			t.Errorf("%+v: %+v, %.1f, then %.1f", x, c.Change, c.GoodBefore, c.GoodAfter)
		}
		if strings.Contains(c.Why, "Both times have to move") {
			both++
		} else if strings.Contains(c.Why, "That time alone") {
			alone++
		}
	}
	if deep.Run() && min(both, alone) < 3 {
		t.Errorf("of %d tried %d need both times moved, %d the other one", len(tried), both, alone)
	}
}

// The words for two moves give the second one and its chance.
func TestWhyBothTimes(t *testing.T) {
	off := move{lever: &levers[leverOff], job: calc.Job{ArcOff: calc.Some(0.48)}}
	c := &advice.Correction{Change: &advice.Change{What: "arc_on"}, GoodBefore: 20, GoodAfter: 22}
	text := (&posterior{}).why(&advice.Likely{ID: tables.CauseOnLong, Name: "arc on too long"}, c, &move{good: 0.22,
		then: &off, together: 0.41})
	if !strings.Contains(text, "good in 22 of 100, with arc off at 0.48 s too in 41, without either in 20") {
		t.Error(text)
	}
}

// Spots can only lie apart if the arc pauses. A first such bead changes the step, a second one with a smaller
// step the pause. A cold look changes the on time first.
func TestTimedLooksMoveTheirOwnTime(t *testing.T) {
	deep.Turn(t)
	for _, mode := range []string{"", "dip", "pulsed"} {
		_, err := Next(t.Context(), []Try{{calc.Job{Metal: "mild-steel", Gauge: 18, Mode: mode}, "spots-apart"}})
		if err == nil || !strings.Contains(err.Error(), "timed arc") {
			t.Errorf("%q: %v", mode, err)
		}
	}
	if testing.Short() {
		t.Skip("corrections of a timed arc")
	}
	job := calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "butt", Mode: "timed", Gap: calc.Some(1), Feed: calc.Some(6),
		ArcOn: calc.Some(0.3), ArcOff: calc.Some(0.5), SpotStep: calc.Some(4)}
	closer := job
	closer.SpotStep = calc.Some(3.5)
	for _, x := range deep.Of(t, []struct {
		tries []Try
		what  string
		sign  float64
	}{
		{[]Try{{job, "spots-apart"}}, "spot_step", -1},
		{[]Try{{job, "spots-apart"}, {closer, "spots-apart"}}, "arc_off", -1},
		{[]Try{{job, "rolled-edge"}}, "arc_on", 1},
	}, 1) {
		p, err := Next(t.Context(), x.tries)
		if err != nil {
			t.Fatal(err)
		}
		if c := p.Correction.Change; c == nil || c.What != x.what || x.sign*(c.To-c.From) <= 0 {
			t.Errorf("%+v: %+v, want %s", x.tries, c, x.what)
		}
	}
}
