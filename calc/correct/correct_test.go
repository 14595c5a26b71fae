package correct

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// booth simulates a shop whose true heat differs from the computed one: it lays a bead and returns its look.
func booth(t *testing.T, job calc.Job, shift float64) string {
	t.Helper()
	p, err := calc.ProbeOf(t.Context(), &job)
	if err != nil {
		t.Fatal(err)
	}
	l, ok := p.Limits(shift)
	if !ok {
		return "burn-through"
	}
	return map[string]string{"cold": "rolled-edge", "good": "good", "hot": "thin-wide",
		"burn-through": "burn-through"}[l.Zone()]
}

// In booths whose heat is off by as much as the intervals allow, from settings that are off by a third, the
// corrections lead to a good bead and never repeat a setting that was tried.
func TestCorrectionsFindTheGoodBead(t *testing.T) {
	if testing.Short() {
		t.Skip("slow, and other tests cover its concurrency")
	}
	var jobs []calc.Job
	for _, metal := range []string{"galvanized", "mild-steel", "stainless-304"} {
		for _, gauge := range []int{16, 20} {
			for _, joint := range []string{"lap", "butt", "tee"} {
				jobs = append(jobs, calc.Job{Metal: metal, Gauge: gauge, Joint: joint})
			}
		}
	}
	starts, beads := 0, 0
	for _, job := range deep.Of(t, jobs, 2) {
		c := card(t, job)
		if c.Zone != "good" {
			continue
		}
		for _, shift := range deep.Of(t, []float64{-0.2, 0, 0.2}, 2) {
			for _, off := range []float64{0.7, 1.4} {
				j := calc.Laid(c)
				j.Travel = calc.Some(min(14, max(4, math.Round(10*j.Travel.V*off)/10)))
				if n := beadsUntilGood(t, j, shift); n > 0 {
					starts, beads = starts+1, beads+n
				}
			}
		}
	}
	if mean := float64(beads) / float64(starts); starts < 5 || mean > 3 {
		t.Errorf("%d starts, %.2f corrections to a good bead", starts, mean)
	}
}

func beadsUntilGood(t *testing.T, j calc.Job, shift float64) int {
	t.Helper()
	var tries []Try
	for n := range 7 {
		seen := booth(t, j, shift)
		if seen == "good" {
			return n
		}
		tries = append(tries, Try{j, seen})
		p, err := Next(context.Background(), tries)
		if err != nil {
			t.Fatal(err)
		}
		c := p.Correction
		if c.Change == nil || c.Change.What == "mode" {
			t.Errorf("%s %d ga %s, shift %g: %+v after %d beads: %s", j.Metal, j.Gauge, j.Joint, shift, c.Change, n+1,
				c.Why)
			return 0
		}
		for _, old := range tries {
			if old.Job == c.Next {
				t.Errorf("%s: a setting that was tried: %+v", j.Metal, c.Change)
			}
		}
		j = c.Next
	}
	t.Errorf("%s %d ga %s, shift %g: no good bead in seven: %+v", j.Metal, j.Gauge, j.Joint, shift, tries)
	return 0
}

// modelJobs are beads whose corrections are compared with the model.
func modelJobs() (jobs []calc.Job) {
	for _, metal := range []string{"galvanized", "mild-steel", "copper", "stainless-304"} {
		for _, joint := range []string{"lap", "butt", "tee", "corner"} {
			for _, travel := range []float64{6, 11} {
				jobs = append(jobs, calc.Job{Metal: metal, Gauge: 18, Joint: joint, Feed: calc.Some(5.5),
					Travel: calc.Some(travel)})
			}
		}
	}
	return jobs
}

// Every change moves the model as it claims: a smaller wetting angle for a cold bead, a cooler base for a hot
// one.
func TestCorrectionsMoveTheModel(t *testing.T) {
	if testing.Short() {
		t.Skip("slow, and other tests cover its concurrency")
	}
	held, jobs := 0, deep.Of(t, modelJobs(), 3)
	for _, job := range jobs {
		for seen, figure := range map[string]string{"rolled-edge": "wetting_angle",
			"thin-wide": "base_peak_temperature", "burn-through": "base_peak_temperature"} {
			p, err := Next(context.Background(), []Try{{job, seen}})
			if err != nil {
				t.Fatal(err)
			}
			c := p.Correction
			if c.Change == nil || c.Change.What == "mode" || c.Causes[0].ID != tables.CauseCold &&
				seen == "rolled-edge" {
				continue
			}
			before, after := card(t, calc.Laid(&p.Card)), card(t, c.Next)
			a, ok1 := before.Figure(figure)
			b, ok2 := after.Figure(figure)
			if !ok1 || !ok2 { // no bridge before: it needs more heat
				a, _ = before.Figure("net_heat")
				b, _ = after.Figure("net_heat")
				a.Value, b.Value = -a.Value, -b.Value
			}
			held++
			if !(b.Value < a.Value) {
				t.Errorf("%s %s at %g mm/s, %s: %+v takes %s from %.4g to %.4g", job.Metal, job.Joint, job.Travel.V,
					seen, c.Change, figure, a.Value, b.Value)
			}
			laid := calc.Laid(&p.Card)
			// a given feed also fixes the volts
			if n := changed(AsSet(job, &laid), c.Next); n != 1 && !(n == 2 && c.Change.What == "wire_feed") {
				t.Errorf("%s: %d settings changed at once by %+v", seen, n, c.Change)
			}
		}
	}
	if held < len(jobs) {
		t.Errorf("only %d corrections were held against the model", held)
	}
}

// Against vapour that can escape, the bead drives off less zinc; a hollow bead gets more metal.
func TestOtherCorrectionsMoveTheModel(t *testing.T) {
	zinc := calc.Job{Metal: "galvanized", Gauge: 18, Joint: "butt", Feed: calc.Some(5), Travel: calc.Some(9)}
	p, err := Next(context.Background(), []Try{{zinc, "pores"}})
	if err != nil || p.Correction.Change == nil {
		t.Fatalf("%+v, %v", p.Correction, err)
	}
	a, _ := p.Card.Figure("zinc_boiled_halfwidth")
	b, _ := card(t, p.Correction.Next).Figure("zinc_boiled_halfwidth")
	if !(b.Value < a.Value) {
		t.Errorf("boiled %g mm, then %g", a.Value, b.Value)
	}
	v := &posterior{card: p.Card, laid: []Try{{calc.Laid(&p.Card), "crack"}}, off: true,
		request: &request{ctx: t.Context()}}
	m := v.remedy(&v.laid[0], tables.CauseHollow, 0)
	if m == nil {
		t.Fatal("nothing against a hollow bead")
	}
	a, _ = p.Card.Figure("bead_area")
	b, _ = card(t, m.job).Figure("bead_area")
	if !(b.Value > a.Value) {
		t.Errorf("a hollow bead of %g mm2 is to be %g", a.Value, b.Value)
	}
}

// Looks that have nothing to do with heat hardly change what is known about it.
func TestPoresHardlyChangeTheHeat(t *testing.T) {
	job := calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(5.5), Travel: calc.Some(9)}
	before, err := newPosterior(context.Background(), []Try{{job, "good"}})
	if err != nil {
		t.Fatal(err)
	}
	plain := before.good(&before.laid[0].Job)
	for _, seen := range []string{"pores", "crater", "crack", "stubbing", "spatter"} {
		v, err := newPosterior(context.Background(), []Try{{job, seen}})
		if err != nil {
			t.Fatal(err)
		}
		v.learn(&v.laid[0])
		if g := v.good(&v.laid[0].Job); v.over() || math.Abs(g-plain) > 0.12 {
			t.Errorf("%s: good in %.2f, before %.2f", seen, g, plain)
		}
	}
}

// A correction of heat never makes a good bead less likely, and returns from far outside a hand's range.
func TestCorrectionsDoNotHarm(t *testing.T) {
	if testing.Short() {
		t.Skip("slow, and other tests cover its concurrency")
	}
	var tries []Try
	for _, metal := range []string{"galvanized", "mild-steel", "copper"} {
		for _, mm := range []float64{0.7, 1, 3} {
			for _, joint := range []string{"lap", "corner"} {
				for _, seen := range []string{"rolled-edge", "thin-wide"} {
					tries = append(tries, Try{calc.Job{Metal: metal, Thickness: calc.Some(mm), Joint: joint,
						Mode: "pulsed", Feed: calc.Some(5.5), Travel: calc.Some(12)}, seen})
				}
			}
		}
	}
	for _, try := range deep.Of(t, tries, 3) {
		p, err := Next(context.Background(), []Try{try})
		if err != nil {
			t.Fatal(err)
		}
		if c := p.Correction; c.Change != nil && c.Change.What != "mode" && OfHeat(c.Causes[0].ID) &&
			c.GoodAfter < c.GoodBefore-1e-6 {
			t.Errorf("%s %g mm %s, %s: %+v takes the chance from %.1f to %.1f", try.Job.Metal, try.Job.Thickness.V,
				try.Job.Joint, try.Seen, c.Change, c.GoodBefore, c.GoodAfter)
		}
	}
	sheet := calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(5.5), Travel: calc.Some(9)}
	far := sheet
	far.Volts = calc.Some(26)
	p, err := Next(context.Background(), []Try{{far, "burn-back"}})
	if err != nil || p.Correction.Change == nil || p.Correction.Change.What != "volts" || p.Correction.Change.To >= 26 {
		t.Errorf("26 V, burnt back: %+v, %v", p.Correction, err)
	}
	quick := sheet
	quick.Travel = calc.Some(25)
	if p, err = Next(context.Background(), []Try{{quick, "rolled-edge"}}); err != nil || p.Correction.Change == nil ||
		p.Correction.Change.What != "travel" {
		t.Errorf("25 mm/s, rolled: %+v, %v", p.Correction.Change, err)
	}
}

// changed counts the settings in which two jobs differ.
func changed(a, b calc.Job) int {
	n := 0
	for i := range levers {
		if *levers[i].opt(&a) != *levers[i].opt(&b) {
			n++
		}
	}
	return n
}

// For each look, the change that a welder makes first: common practice, no source.
func TestCorrectionsFollowTheTrade(t *testing.T) {
	if testing.Short() {
		t.Skip("every sight")
	}
	sheet := calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(5.5), Travel: calc.Some(9)}
	zinc, timed := sheet, calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "butt", Mode: "timed", Gap: calc.Some(1.5)}
	zinc.Metal = "galvanized"
	stainless := calc.Job{Metal: "stainless-304", Gauge: 18, Joint: "lap", Filler: "cusi3", Feed: calc.Some(5),
		Travel: calc.Some(9)}
	for _, x := range []struct {
		job         calc.Job
		seen, cause string
		what        string
		sign        float64
	}{
		{sheet, "stubbing", tables.CauseVoltsLow, "volts", 1},
		{sheet, "burn-back", tables.CauseVoltsHi, "volts", -1},
		{sheet, "spatter", tables.CauseStiff, "", 0},
		{zinc, "pores", tables.CauseVapour, "", 0},
		{sheet, "crater", tables.CauseAbrupt, "", 0},
		{sheet, "good", tables.CauseFine, "", 0},
		{stainless, "crack", tables.CauseCopper, "", 0},
		{timed, "drops-through", tables.CauseOnLong, "arc_on", -1},
		{timed, "burn-through", tables.CauseOnLong, "arc_on", -1},
		{timed, "spots-apart", tables.CauseOffLong, "spot_step", -1},
		{timed, "rolled-edge", tables.CauseOnShort, "arc_on", 1},
	} {
		p, err := Next(context.Background(), []Try{{x.job, x.seen}})
		if err != nil {
			t.Fatal(err)
		}
		c := p.Correction
		if c.Causes[0].ID != x.cause {
			t.Errorf("%s: %+v, want %s", x.seen, c.Causes, x.cause)
		}
		if cure, _ := causeByID(x.cause); (c.Do != "") != (x.what == "" && x.cause != tables.CauseFine) ||
			c.Do != "" && c.Do != cure.Do {
			t.Errorf("%s: to do %q, want %q", x.seen, c.Do, cure.Do)
		}
		switch {
		case x.what == "" && c.Change == nil:
		case c.Change == nil || c.Change.What != x.what || x.sign*(c.Change.To-c.Change.From) <= 0:
			t.Errorf("%s: %+v, want %s by sign %g", x.seen, c.Change, x.what, x.sign)
		case strings.HasPrefix(x.what, "arc_"):
			by := math.Abs(c.Change.To/c.Change.From - 1)
			if by < 0.05 || by > 0.2+1e-9 || math.Abs(c.Change.To-c.Change.From) < 0.019 {
				t.Errorf("%s: a beat's step of %.0f %%: %+v", x.seen, 100*by, c.Change)
			}
		}
		sum := 0.0
		for i, l := range c.Causes {
			sum += l.Likelihood
			if l.Known == "" || l.Source == "" || l.Do == "" || i > 0 && l.Likelihood > c.Causes[i-1].Likelihood {
				t.Errorf("%s: cause %+v", x.seen, l)
			}
		}
		if sum > 100.001 || c.Why == "" {
			t.Errorf("%s: causes sum to %g; why %q", x.seen, sum, c.Why)
		}
	}
}

// No setting helps a job that is stopped, and thin sheet that melts through with no room left gets a timed arc.
func TestCorrectionsStopAndPause(t *testing.T) {
	for _, job := range []calc.Job{{Metal: "brass", Thickness: calc.Some(1), Feed: calc.Some(4),
		Travel: calc.Some(8)}, {Metal: "mild-steel", Gauge: 18, Feed: calc.Some(5), Travel: calc.Some(8),
		Hazard: "tank"}} {
		p, err := Next(context.Background(), []Try{{job, "rolled-edge"}})
		if err != nil || p.Correction.Change != nil || !strings.HasPrefix(p.Correction.Why, "Stop") ||
			len(p.Instead) == 0 {
			t.Errorf("%+v: %+v, %v", job, p.Correction, err)
		}
	}
	p, err := Next(context.Background(), []Try{{calc.Job{Metal: "mild-steel", Thickness: calc.Some(0.4),
		Joint: "butt", Feed: calc.Some(6), Travel: calc.Some(9)}, "burn-through"}})
	if err != nil || p.Correction.Change == nil || p.Correction.Change.ToMode != "timed" {
		t.Errorf("0.4 mm burnt through: %+v, %v", p.Correction, err)
	}
}

func TestSeenIDs(t *testing.T) {
	for text, want := range map[string]string{"good": "good", "Pores, rolled-edge;pores": "rolled-edge,pores",
		" burn-through ": "burn-through"} {
		if got, err := SeenIDs(text); err != nil || got != want {
			t.Errorf("%q: %q, %v", text, got, err)
		}
	}
	var fe *mistake.Error
	for _, text := range []string{"", ",", "ugly", "good,pores", "\x1b[31m"} {
		if got, err := SeenIDs(text); !errors.As(err, &fe) || fe.Hint == "" {
			t.Errorf("%q: %q, %v", text, got, err)
		}
	}
}

// Every evidence row names an existing sight and cause and lies between seldom and always; every sight has a
// drawing.
func TestEvidenceRows(t *testing.T) {
	for _, e := range tables.EvidenceRows {
		_, ok1 := tables.Sights.ByID(e.Sight)
		_, ok2 := causeByID(e.Cause)
		if !ok1 || !ok2 || !(e.Share > tables.SeldomSeen.V && e.Share < 1) {
			t.Errorf("%+v", e)
		}
	}
	for _, s := range tables.Sights {
		if len(s.Drawing) != 4 || s.Name == "" {
			t.Errorf("%s: %d lines", s.ID, len(s.Drawing))
		}
		most := 0.0
		for _, c := range tables.Causes {
			most = max(most, tables.ShareSeen(s.ID, c.ID))
		}
		if most < 0.5 {
			t.Errorf("%s: nothing explains it", s.ID)
		}
	}
}

// BenchmarkCorrect times one answer to a test bead, which looks along every lever. An answer within 100 ms
// feels immediate. Each time it is another job, or calc would have cached its sections.
func BenchmarkCorrect(b *testing.B) {
	job := calc.Job{Metal: "galvanized", Joint: "lap", Feed: calc.Some(5), Travel: calc.Some(9)}
	for n := 0; b.Loop(); n++ {
		job.Thickness = calc.Some(1.2 + 1e-6*float64(n))
		if _, err := Next(context.Background(), []Try{{job, "rolled-edge"}}); err != nil {
			b.Fatal(err)
		}
	}
}
