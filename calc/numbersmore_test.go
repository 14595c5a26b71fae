package calc

import (
	"fmt"
	"strings"
	"testing"
)

// writeOthers are answers that are no card: corrections, times over a gap, a map, what readings and verdicts teach.
func writeOthers(t *testing.T, b *strings.Builder, said texts) {
	good := Job{Metal: "galvanized", Gauge: 20, Joint: "lap", Feed: Some(4.1), Travel: Some(8)}
	for _, seen := range sightIDs() {
		writeCorrection(t, b, "", Try{good, seen})
	}
	at := func(volts float64) Job { j := good; j.Volts = Some(volts); return j }
	for _, volts := range []float64{11, 13, 20} {
		writeCorrection(t, b, "volts read", Try{at(volts), "stubbing"})
		writeCorrection(t, b, "volts read", Try{at(volts), "spatter"})
	}
	writeCorrection(t, b, "volts that ran", Try{at(13.5), "pores"}, Try{at(13.3), "stubbing"})
	writeCorrection(t, b, "twice in vain", Try{good, "pores"}, Try{good, "pores"})
	writeCorrection(t, b, "changed, still", Try{at(14), "pores"}, Try{at(14.4), "pores"})
	for _, filler := range []string{"cusi3", "cual8"} {
		writeCorrection(t, b, filler, Try{Job{Metal: "stainless-304", Gauge: 18, Joint: "lap", Filler: filler, Feed: Some(5), Travel: Some(7)}, "crack"})
	}
	for _, seen := range []string{"rolled-edge", "burn-through", "spatter"} { // no window; far too little feed, and too much
		writeCorrection(t, b, "plate", Try{Job{Metal: "mild-steel", Thickness: Some(5), Joint: "tee", Mode: "pulsed", Feed: Some(8), Travel: Some(6)}, seen})
		writeCorrection(t, b, "uneven", Try{Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: Some(2.6), Travel: Some(5)}, seen})
		writeCorrection(t, b, "spray", Try{Job{Metal: "mild-steel", Gauge: 12, Joint: "lap", Feed: Some(16), Travel: Some(12)}, seen})
	}
	timed := Job{Metal: "mild-steel", Gauge: 18, Joint: "butt", Mode: "timed", Gap: Some(1), Feed: Some(6)}
	short := timed
	short.ArcOn, short.ArcOff, short.SpotStep = Some(0.2), Some(0.6), Some(2.5)
	writeCorrection(t, b, "timed", Try{short, "rolled-edge"})
	aimed := timed
	aimed.Aim = Some(1)
	for _, j := range []Job{{Metal: "mild-steel", Gauge: 16, Joint: "butt", Mode: "timed", Gap: Some(2)}, timed, aimed,
		{Metal: "stainless-304", Thickness: Some(0.5), Joint: "butt", Mode: "timed", Gap: Some(0.3), Wire: Some(0.8)}, // less wire, three times
		{Metal: "mild-steel", Thickness: Some(2), Joint: "butt", Mode: "timed", Gap: Some(2), Wire: Some(0.8)}} {      // more
		writeGap(t, b, j, said)
	}
	c, err := ChanceGood(t.Context(), good)
	if err != nil {
		t.Fatal(err)
	}
	fmt.Fprintf(b, "# chance\n%+v\n", c)
	writeRemedies(t, b)
	writeEfficiencies(b, good)
	writePractice(t, b)
}

// writeRemedies are those of jobs that no setting of a steady arc does well.
func writeRemedies(t *testing.T, b *strings.Builder) {
	for _, j := range []Job{{Metal: "mild-steel", Thickness: Some(0.4), Joint: "butt", Gap: Some(0.5)}, {Metal: "galvanized", Gauge: 30, Joint: "lap"}, {Metal: "mild-steel", Thickness: Some(5), Joint: "tee"}} {
		c, err := Solve(j)
		if err != nil {
			t.Fatal(err)
		}
		e := &effort{ctx: t.Context()}
		e.work.Store(-1e12) // everything is tried, however long it takes: the last of the jobs is no map's
		list, err := remedies(e, 0, j, &c)
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(b, "# remedies of %s\n", c.Verdict())
		for _, r := range list {
			fmt.Fprintf(b, "%s, tried %v, opens %v, %s\n", r.Change, r.Tried, r.Opens, digits4(r.Margin))
		}
	}
}

func writeEfficiencies(b *strings.Builder, good Job) {
	slow := good
	slow.Travel = Some(9.6)
	b.WriteString("# efficiency\n")
	for _, list := range [][]Verdict{{}, {{good, "cold"}, {good, "good"}, {slow, "good"}}, {{slow, "hot"}}} {
		e := LearnEta(list)
		fmt.Fprintf(b, "%s ±%s of %d", digits4(e.Mean), digits4(e.Sigma), e.Used)
		for _, x := range e.Evidence {
			fmt.Fprintf(b, ", %s %s %%", x.Heat, digits4(x.Expected))
		}
		b.WriteByte('\n')
	}
}

// writePractice are the booths that a few seeds draw.
func writePractice(t *testing.T, b *strings.Builder) {
	b.WriteString("# practice\n")
	for level := range practiceLevels {
		for seed := range uint64(2) {
			p, err := PracticeJob(t.Context(), level+1, seed)
			if err != nil {
				t.Fatal(err)
			}
			fmt.Fprintf(b, "%d %d %s:", level+1, seed, p.Work)
			for _, x := range []float64{p.Truth.Phi, p.Truth.Eta, p.Truth.StickOut} {
				fmt.Fprintf(b, " %s", digits4(x))
			}
			for _, j := range []*Job{&p.Start, &p.Best} {
				for _, o := range []Opt{j.Feed, j.Volts, j.Travel, j.ArcOn, j.ArcOff} {
					fmt.Fprintf(b, " %s", digits4(o.V))
				}
			}
			run, err := p.Par(t.Context())
			if err != nil {
				t.Fatal(err)
			}
			fmt.Fprintf(b, "; %d beads, good %v %s\n", len(run.Steps), run.Good, run.Why)
		}
	}
}

func writeCorrection(t *testing.T, b *strings.Builder, name string, tries ...Try) {
	p, err := Correct(t.Context(), tries)
	if err != nil {
		t.Fatal(err)
	}
	c := p.Correction
	fmt.Fprintf(b, "# seen %s %s\n%s\n", name, tries[len(tries)-1].Seen, c.Why)
	if c.Change != nil {
		fmt.Fprintf(b, "change %s %s to %s %s; good %.0f, %.0f\n", c.Change.What, digits4(c.Change.From), digits4(c.Change.To), c.Change.ToMode, c.GoodBefore, c.GoodAfter)
	}
	for _, l := range c.Causes {
		fmt.Fprintf(b, "cause %s %.1f %s\n", l.ID, l.Likelihood, l.Do)
	}
}

func writeGap(t *testing.T, b *strings.Builder, j Job, said texts) {
	g, err := Gap(t.Context(), j, nil)
	if err != nil {
		t.Fatal(err)
	}
	fmt.Fprintf(b, "# gap %s %s\n", digits4(j.Gap.V), g.Card.Zone)
	writeFigures(b, g.Figures, said)
	writeWarnings(b, g.Card.Warnings, said)
}
