package correct

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/learned"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// A cause that no setting cures gets its cure in words and no change of a setting. A setting for a cause other
// than heat leaves the heat as likely right as before, except where the volts that were read are proven wrong.
func TestNoSettingSpoilsTheHeat(t *testing.T) {
	words := map[string]bool{}
	for _, id := range []string{tables.CauseStiff, tables.CauseSluggish, tables.CauseDirt, tables.CauseGas,
		tables.CauseCopper, tables.CauseHeld, tables.CauseAbrupt, tables.CauseSlips} {
		words[id] = true
	}
	jobs := []calc.Job{{Metal: "galvanized", Gauge: 20, Joint: "lap"}, {Metal: "mild-steel", Gauge: 20, Joint: "lap"}}
	if !testing.Short() {
		jobs = append(jobs, calc.Job{Metal: "galvanized", Gauge: 16, Joint: "tee"}, calc.Job{Metal: "galvanized",
			Gauge: 18, Joint: "butt"}, calc.Job{Metal: "mild-steel", Gauge: 14, Joint: "corner"},
			calc.Job{Metal: "stainless-304", Gauge: 18, Joint: "lap", Mode: "pulsed"})
	}
	for _, job := range deep.Of(t, jobs, 2) {
		for _, seen := range []string{"spatter", "stubbing", "burn-back", "pores", "crack", "crater"} {
			p, err := Next(t.Context(), []Try{{job, seen}})
			if err != nil {
				t.Fatal(err)
			}
			c := p.Correction
			top := c.Causes[0].ID
			if (c.Change == nil) == (c.Do == "") {
				t.Errorf("%s %d ga %s, %s: change %+v beside %q", job.Metal, job.Gauge, job.Joint, seen, c.Change, c.Do)
			}
			if vent := top == tables.CauseVapour && job.Joint != "butt"; (words[top] || vent) && c.Change != nil {
				t.Errorf("%s %d ga %s, %s: %+v against %s", job.Metal, job.Gauge, job.Joint, seen, c.Change, top)
			}
			if !OfHeat(top) && c.GoodAfter < c.GoodBefore-100*chanceNoise {
				t.Errorf("%s %d ga %s, %s: %+v takes the heat from %.0f to %.0f of 100", job.Metal, job.Gauge,
					job.Joint, seen, c.Change, c.GoodBefore, c.GoodAfter)
			}
		}
	}
}

// If a bead with the same settings still shows the same after a cure, the next cause follows.
func TestNextCauseAfterAFailedCure(t *testing.T) {
	bead := Try{calc.Job{Metal: "galvanized", Gauge: 20, Joint: "lap", Feed: calc.Some(4.1), Travel: calc.Some(8)},
		"pores"}
	done := map[string]bool{}
	var tries []Try
	for range 3 {
		tries = append(tries, bead)
		p, err := Next(t.Context(), tries)
		if err != nil {
			t.Fatal(err)
		}
		c := p.Correction
		if c.Do == "" || done[c.Do] {
			t.Errorf("after %d beads with pores: %q again, change %+v", len(tries), c.Do, c.Change)
		}
		done[c.Do] = true
	}
}

// A current below the steady range causes spatter, and more feed corrects it.
func TestSpatterBelowTheSteadyArc(t *testing.T) {
	job := calc.Job{Metal: "galvanized", Gauge: 22, Joint: "lap", Feed: calc.Some(2.6), Travel: calc.Some(7)}
	p, err := Next(t.Context(), []Try{{job, "spatter"}})
	if err != nil {
		t.Fatal(err)
	}
	c := p.Correction
	if c.Causes[0].ID != tables.CauseUneven || c.Change == nil || c.Change.What != "wire_feed" ||
		c.Change.To <= c.Change.From {
		t.Errorf("%+v, change %+v", c.Causes[0], c.Change)
	}
}

// If the suggested setting is computed to boil the zinc off the back, its loss is no sign of too much heat: the
// coat is repaired, and a bead that shows nothing else counts as good. Otherwise it is such a sign.
func TestZincGoneBehindAsComputed(t *testing.T) {
	job := calc.Job{Metal: "galvanized", Gauge: 20, Joint: "lap"}
	for _, seen := range []string{"zinc-gone-behind", "rolled-edge,zinc-gone-behind", "pores,zinc-gone-behind"} {
		p, err := Next(t.Context(), []Try{{job, seen}})
		if err != nil {
			t.Fatal(err)
		}
		if b := p.Card.Section.BoiledBack; b[0]+b[1] == 0 {
			t.Fatalf("the good setting leaves the zinc behind: %v", b)
		}
		c, alone := p.Correction, seen == "zinc-gone-behind"
		if id := c.Causes[0].ID; id == tables.CauseHot || id == tables.CauseMelts {
			t.Errorf("%s is called %s", seen, id)
		}
		if alone && (c.Change != nil || !strings.Contains(c.Do, "zinc-rich paint") || !strings.Contains(c.Why,
			"as computed at this setting") || !strings.Contains(c.Why, "arrower only by")) {
			t.Errorf("%s: %+v, %q, %q", seen, c.Change, c.Do, c.Why)
		}
		if !alone && strings.Contains(c.Do, "repair") {
			t.Errorf("%s: %q", seen, c.Do)
		}
	}
	hot := calc.Job{Metal: "galvanized", Thickness: calc.Some(3), Joint: "lap", Feed: calc.Some(7),
		Travel: calc.Some(13)}
	p, err := Next(t.Context(), []Try{{hot, "zinc-gone-behind"}})
	if err != nil {
		t.Fatal(err)
	}
	if b := p.Card.Section.BoiledBack; b[0]+b[1] > 0 {
		t.Fatalf("the model expects it: %v", b)
	}
	if id := p.Correction.Causes[0].ID; id != tables.CauseHot && id != tables.CauseMelts ||
		strings.Contains(p.Correction.Do, "zinc-rich") {
		t.Errorf("%s, %q", id, p.Correction.Do)
	}
	if learned.HeatOf("zinc-gone-behind", "bad") != "" || learned.HeatOf("thin-wide,zinc-gone-behind", "bad") != "hot" {
		t.Error("zinc behind alone tells the booth's efficiency something")
	}
}
