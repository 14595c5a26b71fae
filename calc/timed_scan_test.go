package calc

import (
	"math"
	"strings"
	"testing"

	"brazebooth/calc/thinsheet"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// The answer of a timed arc changes evenly with sheet and gap: where both neighbours have a rhythm of the same kind, no
// setting jumps as the sheet grows by 0.02 mm or the gap by 0.04. The ends of off follow a puddle that freezes on a
// grid of half millimetres and scatter by a few per cent, as much as a step of 2 % moves them.
func TestTimedMovesEvenly(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	positions := []string{"flat", "flat", "vertical-down", "overhead"}
	r := deep.Rand(t)
	for range deep.Many(1, 40) {
		job := Job{Metal: "mild-steel", Thickness: Some(0.5 + 2.5*r.Float64()), Joint: "butt",
			Gap:      Some(3.7 * r.Float64()),
			Position: positions[r.IntN(len(positions))]}
		if !deep.Run() { // where there is a rhythm, at a feed that is not searched for
			job.Thickness, job.Gap, job.Feed = Some(1+0.5*r.Float64()), Some(0.2+2*r.Float64()), Some(5.5)
		}
		thicker, wider := job, job
		thicker.Thickness.V += 0.02
		wider.Gap.V += 0.04
		more := deep.Of(t, []struct {
			what string
			job  Job
		}{{"sheet", thicker}, {"gap", wider}}, 1)
		at := func(j Job) *timedRun {
			j.Mode = "timed"
			return wholeRun(t, j)
		}
		base := at(job)
		for _, m := range more {
			name, g := m.what, at(m.job)
			if !base.rhythmic() || !g.rhythmic() {
				continue
			}
			a, b := &base.times, &g.times
			// Longest on goes with the power of two and a half of sheet or gap, shortest on with that of one and a
			// quarter; both scatter by a few per cent.
			part := 0.02 / job.Thickness.V
			if name == "gap" {
				part = 0.04 / max(job.Gap.V, 1)
			}
			for _, v := range []struct {
				what     string
				from, to float64
				most     float64
			}{{"shortest on", a.OnMin, b.OnMin, 0.06 + 1.25*part}, {"longest on", a.OnMax, b.OnMax, 0.04 + 2.5*part},
				{"off", a.OnOff.Off, b.OnOff.Off, 0.08}, {"shortest off", a.OffMin, b.OffMin, 0.1},
				{"longest off", a.OffMax, b.OffMax, 0.1}, {"step", a.OnOff.Step, b.OnOff.Step, 0.08},
				{"feed", base.o[oFeed], g.o[oFeed], 0.05}} {
				if d := math.Log(v.to / v.from); math.Abs(d) > v.most {
					t.Errorf("%.3f mm, gap %.3f, %s, a little more %s: %s %.4g, then %.4g, by %.1f %%", job.Thickness.V,
						job.Gap.V, job.Position, name, v.what, v.from, v.to, 100*d)
				}
			}
		}
	}
}

// Where tension does not carry the puddle there is no rhythm, whatever the heat says; a wider gap in the answer takes
// less feed before it is called too hot.
func TestTimedFalls(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	g := rangeOfOn(t, Job{Metal: "mild-steel", Thickness: Some(2), Joint: "butt", Gap: Some(3.4), Feed: Some(8)})
	if g.rhythmic() || g.times.Reason != thinsheet.Falls || g.sentence() == "" {
		t.Errorf("8 m/min across 3.4 mm: rhythm %v, %q, %s", g.rhythmic(), g.times.Reason, g.sentence())
	}
	s := timedOf(t, Job{Metal: "mild-steel", Thickness: Some(1), Joint: "butt", Gap: Some(1.2)})
	feed, _ := s.Card.Figure("wire_feed")
	if s.Wider == nil || s.Wider.Reason != "" || !(s.Wider.Feed < feed.Value) {
		t.Errorf("with %.2f m/min; a quarter wider: %+v", feed.Value, s.Wider)
	}
}

// Filler over cast iron may freeze sooner than a hand strikes again. Then there is no rhythm, and the answer says so.
func TestTimedWithoutAPause(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	least := tables.QuickestOff.V
	for _, metal := range []string{"ductile-iron", "grey-iron"} {
		for _, joint := range deep.Of(t, []string{"edge", "lap", "corner", "overlay"}, 1) {
			for _, thick := range deep.Of(t, []float64{1, 1.4, 1.8, 2.2, 2.6, 3}, 2) {
				s := timedOf(t, Job{Metal: metal, Joint: joint, Thickness: Some(thick)})
				off, has := s.Card.Figure("arc_off")
				switch {
				case s.Reason == string(thinsheet.NoPause):
					if s.Good || has || len(s.Figures) > 0 || !strings.Contains(s.Why, "freezes") {
						t.Errorf("%s %g mm, %s: good %v, off %v, %s", metal, thick, joint, s.Good, has, s.Why)
					}
				case has && off.Value < least:
					t.Errorf("%s %g mm, %s: off %g s", metal, thick, joint, off.Value)
				}
			}
		}
	}
	// The shortest on of this tee is 0.02 s in one cycle and 0.06 in the next.
	for joint, want := range map[string]string{"edge": "no-pause", "tee": "does-not-cycle"} {
		if s := timedOf(t, Job{Metal: "ductile-iron", Joint: joint, Thickness: Some(2)}); s.Reason != want {
			t.Errorf("ductile iron of 2 mm, %s: %q", joint, s.Reason)
		}
	}
}
