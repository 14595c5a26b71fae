package calc_test

import (
	"brazebooth/calc"
	"brazebooth/calc/correct"
	"brazebooth/calc/practice"
	"fmt"
	"strings"
	"testing"
)

// writeOthers are answers that are no card: corrections, times over a gap, a map, what readings and verdicts teach.
func writeOthers(t *testing.T, b *strings.Builder, said texts) {
	good := calc.Job{Metal: "galvanized", Gauge: 20, Joint: "lap", Feed: calc.Some(4.1), Travel: calc.Some(8)}
	for _, seen := range correct.SightIDs() {
		writeCorrection(t, b, "", correct.Try{Job: good, Seen: seen})
	}
	at := func(volts float64) calc.Job { j := good; j.Volts = calc.Some(volts); return j }
	for _, volts := range []float64{11, 13, 20} {
		writeCorrection(t, b, "volts read", correct.Try{Job: at(volts), Seen: "stubbing"})
		writeCorrection(t, b, "volts read", correct.Try{Job: at(volts), Seen: "spatter"})
	}
	writeCorrection(t, b, "volts that ran", correct.Try{Job: at(13.5), Seen: "pores"}, correct.Try{Job: at(13.3), Seen: "stubbing"})
	writeCorrection(t, b, "twice in vain", correct.Try{Job: good, Seen: "pores"}, correct.Try{Job: good, Seen: "pores"})
	writeCorrection(t, b, "changed, still", correct.Try{Job: at(14), Seen: "pores"}, correct.Try{Job: at(14.4), Seen: "pores"})
	for _, filler := range []string{"cusi3", "cual8"} {
		writeCorrection(t, b, filler, correct.Try{Job: calc.Job{Metal: "stainless-304", Gauge: 18, Joint: "lap", Filler: filler, Feed: calc.Some(5), Travel: calc.Some(7)}, Seen: "crack"})
	}
	for _, seen := range []string{"rolled-edge", "burn-through", "spatter"} { // no window; far too little feed, and too much
		writeCorrection(t, b, "plate", correct.Try{Job: calc.Job{Metal: "mild-steel", Thickness: calc.Some(5), Joint: "tee", Mode: "pulsed", Feed: calc.Some(8), Travel: calc.Some(6)}, Seen: seen})
		writeCorrection(t, b, "uneven", correct.Try{Job: calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(2.6), Travel: calc.Some(5)}, Seen: seen})
		writeCorrection(t, b, "spray", correct.Try{Job: calc.Job{Metal: "mild-steel", Gauge: 12, Joint: "lap", Feed: calc.Some(16), Travel: calc.Some(12)}, Seen: seen})
	}
	timed := calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "butt", Mode: "timed", Gap: calc.Some(1), Feed: calc.Some(6)}
	short := timed
	short.ArcOn, short.ArcOff, short.SpotStep = calc.Some(0.2), calc.Some(0.6), calc.Some(2.5)
	writeCorrection(t, b, "timed", correct.Try{Job: short, Seen: "rolled-edge"})
	aimed := timed
	aimed.Aim = calc.Some(1)
	for _, j := range []calc.Job{{Metal: "mild-steel", Gauge: 16, Joint: "butt", Mode: "timed", Gap: calc.Some(2)}, timed, aimed,
		{Metal: "stainless-304", Thickness: calc.Some(0.5), Joint: "butt", Mode: "timed", Gap: calc.Some(0.3), Wire: calc.Some(0.8)}, // less wire, three times
		{Metal: "mild-steel", Thickness: calc.Some(2), Joint: "butt", Mode: "timed", Gap: calc.Some(2), Wire: calc.Some(0.8)}} {      // more
		writeGap(t, b, j, said)
	}
	c, err := calc.ChanceGood(t.Context(), good)
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
	for _, j := range []calc.Job{{Metal: "mild-steel", Thickness: calc.Some(0.4), Joint: "butt", Gap: calc.Some(0.5)}, {Metal: "galvanized", Gauge: 30, Joint: "lap"}, {Metal: "mild-steel", Thickness: calc.Some(5), Joint: "tee"}} {
		c, err := calc.Solve(j)
		if err != nil {
			t.Fatal(err)
		}
		list, err := calc.AllRemedies(t.Context(), j, &c) // the last of the jobs is no map's
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(b, "# remedies of %s\n", c.Verdict())
		for _, r := range list {
			fmt.Fprintf(b, "%s, tried %v, opens %v, %s\n", r.Change, r.Tried, r.Opens, digits4(r.Margin))
		}
	}
}

func writeEfficiencies(b *strings.Builder, good calc.Job) {
	slow := good
	slow.Travel = calc.Some(9.6)
	b.WriteString("# efficiency\n")
	for _, list := range [][]calc.Verdict{{}, {{Job: good, Heat: "cold"}, {Job: good, Heat: "good"}, {Job: slow, Heat: "good"}}, {{Job: slow, Heat: "hot"}}} {
		e := calc.LearnEta(list)
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
	for level := range practice.Levels() {
		for seed := range uint64(2) {
			p, err := practice.New(t.Context(), level+1, seed)
			if err != nil {
				t.Fatal(err)
			}
			fmt.Fprintf(b, "%d %d %s:", level+1, seed, p.Work)
			for _, x := range []float64{p.Truth.Phi, p.Truth.Eta, p.Truth.StickOut} {
				fmt.Fprintf(b, " %s", digits4(x))
			}
			for _, j := range []*calc.Job{&p.Start, &p.Best} {
				for _, o := range []calc.Opt{j.Feed, j.Volts, j.Travel, j.ArcOn, j.ArcOff} {
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

func writeCorrection(t *testing.T, b *strings.Builder, name string, tries ...correct.Try) {
	p, err := correct.Next(t.Context(), tries)
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

func writeGap(t *testing.T, b *strings.Builder, j calc.Job, said texts) {
	g, err := calc.SolveTimed(t.Context(), j, nil)
	if err != nil {
		t.Fatal(err)
	}
	fmt.Fprintf(b, "# gap %s %s\n", digits4(j.Gap.V), g.Card.Zone)
	writeFigures(b, g.Figures, said)
	writeWarnings(b, g.Card.Warnings, said)
}
