package calc_test

import (
	"fmt"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/correct"
	"brazebooth/calc/practice"
	"brazebooth/internal/mistake"
)

// other is an answer that is no card: a correction, times over a gap, remedies, what readings and verdicts taught.
type other struct {
	name  string
	write func(t *testing.T, put putter)
}

var lid = calc.Job{Metal: "galvanized", Gauge: 20, Joint: "lap", Feed: calc.Some(4.1), Travel: calc.Some(8)}

func otherAnswers() (list []other) {
	list = corrections()
	for _, x := range []struct {
		name string
		job  calc.Job
	}{
		{"gap of 2 mm", calc.Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Mode: "timed", Gap: calc.Some(2)}},
		{"gap, given feed", timedSheet},
		{"gap, aimed", aimed(timedSheet)},
		{"gap, less wire three times", calc.Job{Metal: "stainless-304", Thickness: calc.Some(0.5), Joint: "butt",
			Mode: "timed", Gap: calc.Some(0.3), Wire: calc.Some(0.8)}},
		{"gap, more wire", calc.Job{Metal: "mild-steel", Thickness: calc.Some(2), Joint: "butt", Mode: "timed",
			Gap: calc.Some(2), Wire: calc.Some(0.8)}},
	} {
		list = append(list, other{x.name, func(t *testing.T, put putter) { writeGap(t, put, x.job) }})
	}
	for _, x := range []struct { // no setting of a steady arc does these well
		name string
		job  calc.Job
	}{
		{"thin over a gap", calc.Job{Metal: "mild-steel", Thickness: calc.Some(0.4), Joint: "butt",
			Gap: calc.Some(0.5)}},
		{"thinnest lap", calc.Job{Metal: "galvanized", Gauge: 30, Joint: "lap"}},
		{"plate, no map", calc.Job{Metal: "mild-steel", Thickness: calc.Some(5), Joint: "tee"}},
	} {
		list = append(list, other{x.name, func(t *testing.T, put putter) { writeRemedies(t, put, x.job) }})
	}
	for level := range practice.Levels() {
		for seed := range uint64(2) {
			list = append(list, other{fmt.Sprintf("booth %d of level %d", seed, level+1), func(t *testing.T,
				put putter) {
				writePractice(t, put, level+1, seed)
			}})
		}
	}
	return append(list, other{"chance", writeChance}, other{"efficiency", writeEfficiencies})
}

var timedSheet = calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "butt", Mode: "timed", Gap: calc.Some(1),
	Feed: calc.Some(6)}

func aimed(j calc.Job) calc.Job {
	j.Aim = calc.Some(1)
	return j
}

// corrections are of every sight, and of beads that have a rule of their own.
func corrections() (list []other) {
	add := func(what string, tries ...correct.Try) {
		name := strings.TrimSpace(what + " " + tries[len(tries)-1].Seen)
		list = append(list, other{"seen " + name, func(t *testing.T, put putter) { writeCorrection(t, put, tries) }})
	}
	for _, seen := range correct.SightIDs() {
		add("", correct.Try{Job: lid, Seen: seen})
	}
	at := func(volts float64) calc.Job { j := lid; j.Volts = calc.Some(volts); return j }
	for _, volts := range []float64{11, 13, 20} {
		add(fmt.Sprintf("at %g V,", volts), correct.Try{Job: at(volts), Seen: "stubbing"})
		add(fmt.Sprintf("at %g V,", volts), correct.Try{Job: at(volts), Seen: "spatter"})
	}
	add("at volts that ran,", correct.Try{Job: at(13.5), Seen: "pores"}, correct.Try{Job: at(13.3), Seen: "stubbing"})
	add("twice in vain,", correct.Try{Job: lid, Seen: "pores"}, correct.Try{Job: lid, Seen: "pores"})
	add("changed and still,", correct.Try{Job: at(14), Seen: "pores"}, correct.Try{Job: at(14.4), Seen: "pores"})
	for _, filler := range []string{"cusi3", "cual8"} {
		add("with "+filler+",", correct.Try{Job: calc.Job{Metal: "stainless-304", Gauge: 18, Joint: "lap",
			Filler: filler, Feed: calc.Some(5), Travel: calc.Some(7)}, Seen: "crack"})
	}
	// no window; far too little feed, and too much
	for _, seen := range []string{"rolled-edge", "burn-through", "spatter"} {
		add("plate,", correct.Try{Job: calc.Job{Metal: "mild-steel", Thickness: calc.Some(5), Joint: "tee",
			Mode: "pulsed", Feed: calc.Some(8), Travel: calc.Some(6)}, Seen: seen})
		add("uneven,", correct.Try{Job: calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(2.6),
			Travel: calc.Some(5)}, Seen: seen})
		add("spray,", correct.Try{Job: calc.Job{Metal: "mild-steel", Gauge: 12, Joint: "lap", Feed: calc.Some(16),
			Travel: calc.Some(12)}, Seen: seen})
	}
	short := timedSheet
	short.ArcOn, short.ArcOff, short.SpotStep = calc.Some(0.2), calc.Some(0.6), calc.Some(2.5)
	add("timed,", correct.Try{Job: short, Seen: "rolled-edge"})
	return list
}

func writeCorrection(t *testing.T, put putter, tries []correct.Try) {
	p, err := correct.Next(t.Context(), tries)
	if m := mistake.Of(err); m != nil { // a look that the job cannot have
		put("correct refused", "", m.Error()+"; "+m.Hint)
		return
	}
	if err != nil {
		t.Fatal(err)
	}
	c := p.Correction
	put("correct why", "", c.Why)
	if c.Change != nil {
		put("correct change", "", fmt.Sprintf("%s %s to %s %s; good %.0f, %.0f", c.Change.What,
			digits4(c.Change.From), digits4(c.Change.To), c.Change.ToMode, c.GoodBefore, c.GoodAfter))
	}
	for i, l := range c.Causes {
		put("correct cause "+l.ID, l.Do, fmt.Sprintf("no. %d, %.1f", i+1, l.Likelihood))
	}
}

func writeGap(t *testing.T, put putter, j calc.Job) {
	g, err := calc.SolveTimed(t.Context(), j, nil)
	if err != nil {
		t.Fatal(err)
	}
	put("gap zone", "", g.Card.Zone)
	writeFigures(put, "gap", g.Figures)
	writeWarnings(put, "gap", g.Card.Warnings)
}

func writeRemedies(t *testing.T, put putter, j calc.Job) {
	c, err := calc.Solve(j)
	if err != nil {
		t.Fatal(err)
	}
	list, err := calc.AllRemedies(t.Context(), j, &c)
	if err != nil {
		t.Fatal(err)
	}
	put("remedies verdict", "", c.Verdict())
	for i, r := range list {
		put("remedies", r.Change, fmt.Sprintf("no. %d, tried %v, opens %v, %s", i+1, r.Tried, r.Opens,
			digits4(r.Margin)))
	}
}

func writeChance(t *testing.T, put putter) {
	c := mustSolve(t, lid)
	put("chance", "", fmt.Sprintf("%+v", c.Chance))
}

func writeEfficiencies(_ *testing.T, put putter) {
	slow := lid
	slow.Travel = calc.Some(9.6)
	for _, list := range [][]calc.Verdict{{}, {{Job: lid, Heat: "cold"}, {Job: lid, Heat: "good"}, {Job: slow,
		Heat: "good"}}, {{Job: slow, Heat: "hot"}}} {
		e := calc.LearnEta(list)
		text := fmt.Sprintf("%s ±%s of %d", digits4(e.Mean), digits4(e.Sigma), e.Used)
		for _, x := range e.Evidence {
			text += fmt.Sprintf(", %s %s %%", x.Heat, digits4(x.Expected))
		}
		put(fmt.Sprintf("efficiency by %d verdicts", len(list)), "", text)
	}
}

// writePractice is a booth that a seed draws.
func writePractice(t *testing.T, put putter, level int, seed uint64) {
	p, err := practice.New(t.Context(), level, seed)
	if err != nil {
		t.Fatal(err)
	}
	put("practice work", "", fmt.Sprint(p.Work))
	put("practice truth", "", fmt.Sprintf("%s %s %s", digits4(p.Truth.Phi), digits4(p.Truth.Eta),
		digits4(p.Truth.StickOut)))
	for name, j := range map[string]*calc.Job{"start": &p.Start, "best": &p.Best} {
		text := ""
		for _, o := range []calc.Opt{j.Feed, j.Volts, j.Travel, j.ArcOn, j.ArcOff} {
			text += " " + digits4(o.V)
		}
		put("practice "+name, "", text[1:])
	}
	run, err := p.Par(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	put("practice par", "", fmt.Sprintf("%d beads, good %v %s", len(run.Steps), run.Good, run.Why))
}
