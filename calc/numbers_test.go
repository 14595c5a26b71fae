package calc_test

import (
	"brazebooth/calc"
	"brazebooth/calc/advice"
	"flag"
	"fmt"
	"hash/crc32"
	"math"
	"os"
	"slices"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write testdata/numbers.txt anew")

const numbersFile = "testdata/numbers.txt"

// numberJobs are jobs of the shop that between them reach every page, every joint, every mode and most rules.
var numberJobs = []struct {
	name string
	job  calc.Job
}{
	{"tank lid", calc.Job{Metal: "galvanized", Gauge: 20, Joint: "lap", Length: calc.Some(600), ZincLimit: calc.Some(5), WirePrice: calc.Some(40), GasPrice: calc.Some(0.02), LabourRate: calc.Some(50), ZincRepair: calc.Some(4), Grinding: calc.Some(3), SteelPrice: calc.Some(3)}},
	{"planter corner", calc.Job{Metal: "galvanized", Gauge: 18, Joint: "corner", Length: calc.Some(300), Position: "vertical-down"}},
	{"planter rib, given", calc.Job{Metal: "mild-steel", Thickness: calc.Some(1.5), Joint: "tee", Feed: calc.Some(5.5), Travel: calc.Some(6), Leg: calc.Some(4), Load: calc.Some(1.5), Length: calc.Some(100), Safety: calc.Some(4)}},
	{"thin on thick", calc.Job{Metal: "mild-steel", Thickness: calc.Some(0.8), Metal2: "mild-steel", Thickness2: calc.Some(2), Joint: "lap", Load: calc.Some(30), Length: calc.Some(60)}},
	{"open root", calc.Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: calc.Some(1.2)}},
	{"cold", calc.Job{Metal: "mild-steel", Gauge: 16, Joint: "lap", Feed: calc.Some(3.3), Travel: calc.Some(9)}},
	{"slow wire", calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(3.1), Travel: calc.Some(5)}},
	{"hot", calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(7), Travel: calc.Some(5)}},
	{"stainless gutter", calc.Job{Metal: "stainless-304", Gauge: 18, Joint: "butt", Mode: "pulsed", ServiceTemp: calc.Some(150)}},
	{"two metals", calc.Job{Metal: "stainless-304", Gauge: 18, Metal2: "mild-steel", Gauge2: 18, Joint: "tee"}},
	{"copper on steel", calc.Job{Metal: "copper", Thickness: calc.Some(1), Metal2: "mild-steel", Thickness2: calc.Some(1.5), Joint: "lap"}},
	{"shaft", calc.Job{Metal: "mild-steel", Thickness: calc.Some(12), Joint: "overlay", Filler: "cual8", Use: "bearing", ShaftDia: calc.Some(40), Length: calc.Some(60), Layer: calc.Some(2), Feed: calc.Some(7), Travel: calc.Some(9)}},
	{"wear strip", calc.Job{Metal: "mild-steel", Thickness: calc.Some(6), Joint: "overlay", Filler: "cumn13al8", Feed: calc.Some(7), Travel: calc.Some(7), Layer: calc.Some(4), Length: calc.Some(80)}},
	{"plugs", calc.Job{Metal: "galvanized", Gauge: 18, Joint: "plug", Count: calc.Some(12), Feed: calc.Some(5)}},
	{"stove door", calc.Job{Metal: "grey-iron", Thickness: calc.Some(6), Joint: "butt", Feed: calc.Some(6), Travel: calc.Some(5), Preheat: calc.Some(150)}},
	{"casting on sheet", calc.Job{Metal: "grey-iron", Thickness: calc.Some(6), Metal2: "mild-steel", Thickness2: calc.Some(1), Joint: "lap", Feed: calc.Some(5), Travel: calc.Some(6), Preheat: calc.Some(100)}},
	{"thin sheet on casting", calc.Job{Metal: "grey-iron", Thickness: calc.Some(6), Metal2: "mild-steel", Thickness2: calc.Some(0.5), Joint: "lap", Feed: calc.Some(5), Travel: calc.Some(6)}},
	{"coated on stainless", calc.Job{Metal: "galvanized", Gauge: 18, Metal2: "stainless-304", Gauge2: 18, Joint: "lap"}},
	{"one bead a groove", calc.Job{Metal: "mild-steel", Thickness: calc.Some(3.2), Joint: "butt", Feed: calc.Some(9), Travel: calc.Some(3)}},
	{"given travel", calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Travel: calc.Some(9)}},
	{"dual phase", calc.Job{Metal: "dp800", Thickness: calc.Some(1.2), Joint: "lap"}},
	{"brass", calc.Job{Metal: "brass", Thickness: calc.Some(1)}},
	{"sealed tank", calc.Job{Metal: "mild-steel", Gauge: 16, Hazard: "tank"}},
	{"timed estimate", calc.Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Mode: "timed", Gap: calc.Some(2)}},
	{"timed, given", calc.Job{Metal: "galvanized", Gauge: 18, Joint: "butt", Mode: "timed", Gap: calc.Some(1), ArcOn: calc.Some(0.4), ArcOff: calc.Some(0.5), SpotStep: calc.Some(2.5), Feed: calc.Some(6)}},
	{"learned machine", calc.Job{Metal: "galvanized", Gauge: 18, Joint: "lap", Phi: calc.Some(3.1), PhiSigma: calc.Some(0.1), VoltFactor: calc.Some(1.04), VoltFactorSigma: calc.Some(0.02), Eta: calc.Some(0.82), EtaSigma: calc.Some(0.02), Readings: calc.Some(6)}},
	{"amps and volts", calc.Job{Metal: "mild-steel", Gauge: 14, Joint: "lap", Amps: calc.Some(110), Volts: calc.Some(19), Travel: calc.Some(6), NozzleBore: calc.Some(12), RatedAmps: calc.Some(180), RatedDuty: calc.Some(30)}},
	{"other wire", calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Wire: calc.Some(1.2), StickOut: calc.Some(16), Flow: calc.Some(9), Gas: "argon-co2-2"}},
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
		return fmt.Sprintf("= %08x", sum)
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

func writeNumbers(t *testing.T, b *strings.Builder, job calc.Job, said texts) {
	c, err := calc.Solve(job)
	if err != nil {
		fmt.Fprintf(b, "error %v\n", err)
		return
	}
	fmt.Fprintf(b, "verdict %s\n", c.Verdict())
	for _, e := range c.Edges {
		fmt.Fprintf(b, "edge %s %v %s, by %s\n", e.Name, e.Met, digits4(e.Margin), said.once(basisText(&e.Basis)))
	}
	writeFigures(b, c.Figures, said)
	writeWarnings(b, c.Warnings, said)
	fmt.Fprintf(b, "notes %+v\n", c.Notes)
	for _, a := range calc.CheckFirst(&c) {
		fmt.Fprintf(b, "assumed %s: %s %s\n", a.Field, a.Text(), digits4(a.Moves))
	}
	parts, err := advice.Pages(t.Context(), &c, allPages())
	if err != nil {
		t.Fatal(err)
	}
	for i := range parts {
		p := &parts[i]
		fmt.Fprintf(b, "page %s %s %s\n", p.Name, p.Verdict, strings.Join(append(p.Instead, p.Order...), "; "))
		writeFigures(b, p.Figures, said)
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
	for _, p := range advice.Contents() {
		if p.Of != nil {
			names = append(names, p.Name)
		}
	}
	return names
}

func writeFigures(b *strings.Builder, list []calc.Figure, said texts) {
	for _, f := range list {
		fmt.Fprintf(b, "%s %s (%s %s) %s", f.Name, digits4(f.Value), digits4(f.Low), digits4(f.High), f.Unit)
		for _, in := range f.Basis.Inputs {
			if in.Sensitivity != 0 {
				fmt.Fprintf(b, " %s %+.1f", strings.ReplaceAll(in.Name, " ", "-"), in.Sensitivity)
			}
		}
		fmt.Fprintf(b, " by %s\n", said.once(basisText(&f.Basis)))
	}
}

// basisText is a basis without its numbers; ~ marks what was assumed, < what is a figure of its own.
func basisText(b *calc.Basis) string {
	var in []string
	for _, x := range b.Inputs {
		in = append(in, fmt.Sprintf("%s %s %s", x.Symbol, x.Name, x.Unit)+map[bool]string{true: "~"}[x.Assumed]+map[bool]string{true: "<"}[x.Derived])
	}
	slices.Sort(in) // else in the order of what they move, in which two may be alike
	return fmt.Sprintf("%s [%s; %s] %s", b.Formula, b.Known, b.Source, strings.Join(in, ", "))
}

func writeWarnings(b *strings.Builder, list []calc.Warning, said texts) {
	for _, w := range list {
		fmt.Fprintf(b, "%v %s: %s\n", w.Severity, w.Code, said.once(w.Text))
	}
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
