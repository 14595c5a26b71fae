package calc

import (
	"flag"
	"fmt"
	"hash/crc32"
	"math"
	"os"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write testdata/numbers.txt anew")

const numbersFile = "testdata/numbers.txt"

// numberJobs are jobs of the shop that between them reach every page, every joint, every mode and most rules.
var numberJobs = []struct {
	name string
	job  Job
}{
	{"tank lid", Job{Metal: "galvanized", Gauge: 20, Joint: "lap", Length: Some(600), ZincLimit: Some(5), WirePrice: Some(40), GasPrice: Some(0.02), LabourRate: Some(50), ZincRepair: Some(4), Grinding: Some(3), SteelPrice: Some(3)}},
	{"planter corner", Job{Metal: "galvanized", Gauge: 18, Joint: "corner", Length: Some(300), Position: "vertical-down"}},
	{"planter rib, given", Job{Metal: "mild-steel", Thickness: Some(1.5), Joint: "tee", Feed: Some(5.5), Travel: Some(6), Leg: Some(4), Load: Some(1.5), Length: Some(100), Safety: Some(4)}},
	{"thin on thick", Job{Metal: "mild-steel", Thickness: Some(0.8), Metal2: "mild-steel", Thickness2: Some(2), Joint: "lap", Load: Some(30), Length: Some(60)}},
	{"open root", Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: Some(1.2)}},
	{"cold", Job{Metal: "mild-steel", Gauge: 16, Joint: "lap", Feed: Some(3.3), Travel: Some(9)}},
	{"hot", Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: Some(7), Travel: Some(5)}},
	{"stainless gutter", Job{Metal: "stainless-304", Gauge: 18, Joint: "butt", Mode: "pulsed", ServiceTemp: Some(150)}},
	{"two metals", Job{Metal: "stainless-304", Gauge: 18, Metal2: "mild-steel", Gauge2: 18, Joint: "tee"}},
	{"copper on steel", Job{Metal: "copper", Thickness: Some(1), Metal2: "mild-steel", Thickness2: Some(1.5), Joint: "lap"}},
	{"shaft", Job{Metal: "mild-steel", Thickness: Some(12), Joint: "overlay", Filler: "cual8", Use: "bearing", ShaftDia: Some(40), Length: Some(60), Layer: Some(2), Feed: Some(7), Travel: Some(9)}},
	{"wear strip", Job{Metal: "mild-steel", Thickness: Some(6), Joint: "overlay", Filler: "cumn13al8", Feed: Some(7), Travel: Some(7), Layer: Some(4), Length: Some(80)}},
	{"plugs", Job{Metal: "galvanized", Gauge: 18, Joint: "plug", Count: Some(12), Feed: Some(5)}},
	{"stove door", Job{Metal: "grey-iron", Thickness: Some(6), Joint: "butt", Feed: Some(6), Travel: Some(5), Preheat: Some(150)}},
	{"casting on sheet", Job{Metal: "grey-iron", Thickness: Some(6), Metal2: "mild-steel", Thickness2: Some(1), Joint: "lap", Feed: Some(5), Travel: Some(6), Preheat: Some(100)}},
	{"thin sheet on casting", Job{Metal: "grey-iron", Thickness: Some(6), Metal2: "mild-steel", Thickness2: Some(0.5), Joint: "lap", Feed: Some(5), Travel: Some(6)}},
	{"coated on stainless", Job{Metal: "galvanized", Gauge: 18, Metal2: "stainless-304", Gauge2: 18, Joint: "lap"}},
	{"one bead a groove", Job{Metal: "mild-steel", Thickness: Some(3.2), Joint: "butt", Feed: Some(9), Travel: Some(3)}},
	{"given travel", Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Travel: Some(9)}},
	{"dual phase", Job{Metal: "dp800", Thickness: Some(1.2), Joint: "lap"}},
	{"brass", Job{Metal: "brass", Thickness: Some(1)}},
	{"sealed tank", Job{Metal: "mild-steel", Gauge: 16, Hazard: "tank"}},
	{"timed estimate", Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Mode: "timed", Gap: Some(2)}},
	{"timed, given", Job{Metal: "galvanized", Gauge: 18, Joint: "butt", Mode: "timed", Gap: Some(1), ArcOn: Some(0.4), ArcOff: Some(0.5), SpotStep: Some(2.5), Feed: Some(6)}},
	{"learned machine", Job{Metal: "galvanized", Gauge: 18, Joint: "lap", Phi: Some(3.1), PhiSigma: Some(0.1), VoltFactor: Some(1.04), VoltFactorSigma: Some(0.02), Eta: Some(0.82), EtaSigma: Some(0.02), Readings: Some(6)}},
	{"amps and volts", Job{Metal: "mild-steel", Gauge: 14, Joint: "lap", Amps: Some(110), Volts: Some(19), Travel: Some(6), NozzleBore: Some(12), RatedAmps: Some(180), RatedDuty: Some(30)}},
	{"other wire", Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Wire: Some(1.2), StickOut: Some(16), Flow: Some(9), Gas: "argon-co2-2"}},
}

// Every number, word and warning of these jobs is what it was: a change that moves one shows it here, line by line, and is either
// meant or a mistake. That the numbers are right is for the other tests.
func TestNumbersAreWhatTheyWere(t *testing.T) {
	if testing.Short() {
		t.Skip("every page of two dozen jobs")
	}
	var b strings.Builder
	said := texts{}
	for _, x := range numberJobs {
		fmt.Fprintf(&b, "# %s\n", x.name)
		writeNumbers(t, &b, x.job, said)
	}
	writeOthers(t, &b, said)
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(numbersFile, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	was, err := os.ReadFile(numbersFile)
	if err != nil {
		t.Fatal(err)
	}
	told := 0
	old, now := strings.Split(string(was), "\n"), strings.Split(b.String(), "\n")
	for i := range max(len(old), len(now)) {
		a, z := lineAt(old, i), lineAt(now, i)
		if a != z && told < 20 {
			told++
			t.Errorf("line %d was\n  %s\nis\n  %s", i+1, a, z)
		}
	}
	if told > 0 {
		t.Log("if all of this is meant: go test ./calc -run Numbers -update")
	}
}

// texts are those that stood before. Each is known by its sum, so that a new one does not renumber the others.
type texts map[string]bool

// once is a text, or its sum where it stood before.
func (said texts) once(text string) string {
	sum := crc32.ChecksumIEEE([]byte(text))
	if said[text] {
		return fmt.Sprintf("as text %08x", sum)
	}
	said[text] = true
	return fmt.Sprintf("(%08x) %s", sum, text)
}

func lineAt(lines []string, i int) string {
	if i < len(lines) {
		return lines[i]
	}
	return "(no line)"
}

func writeNumbers(t *testing.T, b *strings.Builder, job Job, said texts) {
	c, err := Solve(job)
	if err != nil {
		fmt.Fprintf(b, "error %v\n", err)
		return
	}
	fmt.Fprintf(b, "verdict %s\n", c.Verdict())
	for _, e := range c.Edges {
		fmt.Fprintf(b, "edge %s %v %s\n", e.Name, e.Met, digits4(e.Margin))
	}
	writeFigures(b, c.Figures)
	writeWarnings(b, c.Warnings, said)
	for _, a := range c.Assumed {
		fmt.Fprintf(b, "assumed %s %s\n", a.Field, a.Why)
	}
	parts, err := Sheet(t.Context(), &c, allPages())
	if err != nil {
		t.Fatal(err)
	}
	for i := range parts {
		p := &parts[i]
		fmt.Fprintf(b, "page %s %s %s\n", p.Name, p.Verdict, strings.Join(append(p.Instead, p.Order...), "; "))
		writeFigures(b, p.Figures)
		for _, r := range p.Reasons {
			fmt.Fprintf(b, "reason %s\n", said.once(r.Text+" ["+r.Known+"]"))
		}
		for _, r := range p.Ranking {
			fmt.Fprintf(b, "ranked %s %v %s; margin %s, wire %s, cost %s; for %d, against %d\n", r.ID, r.RuledOut, digits4(r.Score), ofAny(r.Margin), ofAny(r.Wire), ofAny(r.Cost), len(r.For), len(r.Against))
		}
		writeWarnings(b, p.Warnings, said)
	}
}

func allPages() (names []string) {
	for _, p := range pages {
		if p.Of != nil {
			names = append(names, p.Name)
		}
	}
	return names
}

func writeFigures(b *strings.Builder, list []Figure) {
	for _, f := range list {
		fmt.Fprintf(b, "%s %s (%s %s) %s", f.Name, digits4(f.Value), digits4(f.Low), digits4(f.High), f.Unit)
		for _, in := range f.Basis.Inputs {
			if in.Sensitivity != 0 {
				fmt.Fprintf(b, " %s %+.1f", strings.ReplaceAll(in.Name, " ", "-"), in.Sensitivity)
			}
		}
		b.WriteByte('\n')
	}
}

func writeWarnings(b *strings.Builder, list []Warning, said texts) {
	for _, w := range list {
		fmt.Fprintf(b, "%v %s: %s\n", w.Severity, w.Code, said.once(w.Text))
	}
}

// writeOthers are answers that are no card: corrections, times over a gap, a map, what readings and verdicts teach.
func writeOthers(t *testing.T, b *strings.Builder, said texts) {
	good := Job{Metal: "galvanized", Gauge: 20, Joint: "lap", Feed: Some(4.1), Travel: Some(8)}
	for _, seen := range sightIDs() {
		writeCorrection(t, b, "", Try{good, seen})
	}
	at := func(volts float64) Job { j := good; j.Volts = Some(volts); return j }
	writeCorrection(t, b, "volts read", Try{at(13), "stubbing"})
	writeCorrection(t, b, "volts that ran", Try{at(13.5), "pores"}, Try{at(13.3), "stubbing"})
	for _, filler := range []string{"cusi3", "cual8"} {
		writeCorrection(t, b, filler, Try{Job{Metal: "stainless-304", Gauge: 18, Joint: "lap", Filler: filler, Feed: Some(5), Travel: Some(7)}, "crack"})
	}
	timed := Job{Metal: "mild-steel", Gauge: 18, Joint: "butt", Mode: "timed", Gap: Some(1), Feed: Some(6)}
	short := timed
	short.ArcOn, short.ArcOff, short.SpotStep = Some(0.2), Some(0.6), Some(2.5)
	writeCorrection(t, b, "timed", Try{short, "rolled-edge"})
	aimed := timed
	aimed.Aim = Some(1)
	for _, j := range []Job{{Metal: "mild-steel", Gauge: 16, Joint: "butt", Mode: "timed", Gap: Some(2)}, timed, aimed,
		{Metal: "stainless-304", Thickness: Some(0.5), Joint: "butt", Mode: "timed", Gap: Some(0.3), Wire: Some(0.8)}} {
		writeGap(t, b, j, said)
	}
	c, err := ChanceGood(t.Context(), good)
	if err != nil {
		t.Fatal(err)
	}
	fmt.Fprintf(b, "# chance\n%+v\n", c)
	slow := good
	slow.Travel = Some(9.6)
	fmt.Fprintf(b, "# efficiency\n")
	for _, list := range [][]Verdict{{}, {{good, "cold"}, {good, "good"}, {slow, "good"}}, {{slow, "hot"}}} {
		e := LearnEta(list)
		fmt.Fprintf(b, "%s ±%s of %d", digits4(e.Mean), digits4(e.Sigma), e.Used)
		for _, x := range e.Evidence {
			fmt.Fprintf(b, ", %s %s %%", x.Heat, digits4(x.Expected))
		}
		b.WriteByte('\n')
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
	writeFigures(b, g.Figures)
	writeWarnings(b, g.Card.Warnings, said)
}

func ofAny(v *float64) string {
	if v == nil {
		return "none"
	}
	return digits4(*v)
}

// digits4 is a number to four digits, so that another processor's last bits do not show.
func digits4(v float64) string {
	if math.Abs(v) < 1e-9 {
		return "0"
	}
	return fmt.Sprintf("%.4g", v)
}
