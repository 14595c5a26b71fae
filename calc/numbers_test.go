package calc_test

import (
	"flag"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/deep"
)

var update = flag.Bool("update", false, "write testdata/numbers.txt anew")

const numbersFile = "testdata/numbers.txt"

// numberJobs are jobs of the shop that together reach every page, joint and mode and most rules.
var numberJobs = []struct {
	name string
	job  calc.Job
}{
	{"tank lid", calc.Job{Metal: "galvanized", Gauge: 20, Joint: "lap", Length: calc.Some(600),
		ZincLimit: calc.Some(5), WirePrice: calc.Some(40), GasPrice: calc.Some(0.02), LabourRate: calc.Some(50),
		ZincRepair: calc.Some(4), Grinding: calc.Some(3), SteelPrice: calc.Some(3)}},
	{"planter corner", calc.Job{Metal: "galvanized", Gauge: 18, Joint: "corner", Length: calc.Some(300),
		Position: "vertical-down"}},
	{"planter rib, given", calc.Job{Metal: "mild-steel", Thickness: calc.Some(1.5), Joint: "tee",
		Feed: calc.Some(5.5), Travel: calc.Some(6), Leg: calc.Some(4), Load: calc.Some(1.5), Length: calc.Some(100),
		Safety: calc.Some(4)}},
	{"thin on thick", calc.Job{Metal: "mild-steel", Thickness: calc.Some(0.8), Metal2: "mild-steel",
		Thickness2: calc.Some(2), Joint: "lap", Load: calc.Some(30), Length: calc.Some(60)}},
	{"open root", calc.Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: calc.Some(1.2)}},
	{"cold", calc.Job{Metal: "mild-steel", Gauge: 16, Joint: "lap", Feed: calc.Some(3.3), Travel: calc.Some(9)}},
	{"slow wire", calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(3.1), Travel: calc.Some(5)}},
	{"hot", calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(7), Travel: calc.Some(5)}},
	{"stainless gutter", calc.Job{Metal: "stainless-304", Gauge: 18, Joint: "butt", Mode: "pulsed",
		ServiceTemp: calc.Some(150)}},
	{"two metals", calc.Job{Metal: "stainless-304", Gauge: 18, Metal2: "mild-steel", Gauge2: 18, Joint: "tee"}},
	{"copper on steel", calc.Job{Metal: "copper", Thickness: calc.Some(1), Metal2: "mild-steel",
		Thickness2: calc.Some(1.5), Joint: "lap"}},
	{"shaft", calc.Job{Metal: "mild-steel", Thickness: calc.Some(12), Joint: "overlay", Filler: "cual8",
		Use: "bearing", ShaftDia: calc.Some(40), Length: calc.Some(60), Layer: calc.Some(2), Feed: calc.Some(7),
		Travel: calc.Some(9)}},
	{"wear strip", calc.Job{Metal: "mild-steel", Thickness: calc.Some(6), Joint: "overlay", Filler: "cumn13al8",
		Feed: calc.Some(7), Travel: calc.Some(7), Layer: calc.Some(4), Length: calc.Some(80)}},
	{"plugs", calc.Job{Metal: "galvanized", Gauge: 18, Joint: "plug", Count: calc.Some(12), Feed: calc.Some(5)}},
	{"stove door", calc.Job{Metal: "grey-iron", Thickness: calc.Some(6), Joint: "butt", Feed: calc.Some(6),
		Travel: calc.Some(5), Preheat: calc.Some(150)}},
	{"casting on sheet", calc.Job{Metal: "grey-iron", Thickness: calc.Some(6), Metal2: "mild-steel",
		Thickness2: calc.Some(1), Joint: "lap", Feed: calc.Some(5), Travel: calc.Some(6), Preheat: calc.Some(100)}},
	{"thin sheet on casting", calc.Job{Metal: "grey-iron", Thickness: calc.Some(6), Metal2: "mild-steel",
		Thickness2: calc.Some(0.5), Joint: "lap", Feed: calc.Some(5), Travel: calc.Some(6)}},
	{"coated on stainless", calc.Job{Metal: "galvanized", Gauge: 18, Metal2: "stainless-304", Gauge2: 18,
		Joint: "lap"}},
	{"one bead a groove", calc.Job{Metal: "mild-steel", Thickness: calc.Some(3.2), Joint: "butt", Feed: calc.Some(9),
		Travel: calc.Some(3)}},
	{"given travel", calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Travel: calc.Some(9)}},
	{"dual phase", calc.Job{Metal: "dp800", Thickness: calc.Some(1.2), Joint: "lap"}},
	{"brass", calc.Job{Metal: "brass", Thickness: calc.Some(1)}},
	{"sealed tank", calc.Job{Metal: "mild-steel", Gauge: 16, Hazard: "tank"}},
	{"timed estimate", calc.Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Mode: "timed", Gap: calc.Some(2)}},
	{"timed, given", calc.Job{Metal: "galvanized", Gauge: 18, Joint: "butt", Mode: "timed", Gap: calc.Some(1),
		ArcOn: calc.Some(0.4), ArcOff: calc.Some(0.5), SpotStep: calc.Some(2.5), Feed: calc.Some(6)}},
	{"learned machine", calc.Job{Metal: "galvanized", Gauge: 18, Joint: "lap", Phi: calc.Some(3.1),
		PhiSigma: calc.Some(0.1), VoltFactor: calc.Some(1.04), VoltFactorSigma: calc.Some(0.02), Eta: calc.Some(0.82),
		EtaSigma: calc.Some(0.02), Readings: calc.Some(6)}},
	{"amps and volts", calc.Job{Metal: "mild-steel", Gauge: 14, Joint: "lap", Amps: calc.Some(110),
		Volts: calc.Some(19), Travel: calc.Some(6), NozzleBore: calc.Some(12), RatedAmps: calc.Some(180),
		RatedDuty: calc.Some(30)}},
	{"other wire", calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Wire: calc.Some(1.2),
		StickOut: calc.Some(16), Flow: calc.Some(9), Gas: "argon-co2-2"}},
}

// Every number, word and warning of these jobs is what it was: a change that moves one shows it here by its name, and
// is either meant or a mistake. Other tests check that the numbers are right.
func TestNumbersAreWhatTheyWere(t *testing.T) {
	if testing.Short() {
		t.Skip("every page of many jobs")
	}
	var now records
	jobs, others := numberJobs, otherAnswers()
	if !*update {
		jobs, others = deep.Of(t, jobs, 3), deep.Of(t, others, 3)
	}
	for _, x := range jobs {
		writeNumbers(t, now.of(x.name), x.job)
	}
	for _, x := range others {
		x.write(t, now.of(x.name))
	}
	if *update {
		if err := os.WriteFile(numbersFile, now.file(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	file, err := os.ReadFile(numbersFile)
	if err != nil {
		t.Fatal(err)
	}
	was, told := recordsIn(file).named(), 0
	is := now.named()
	ran := map[string]bool{}
	for _, r := range now {
		ran[r.job] = true
	}
	for _, name := range namesOf(was, is) {
		if ran[name.job] && was[name] != is[name] && told < 20 {
			told++
			t.Errorf("%s of %s was\n%sis\n%s", name.group, name.job, was[name], is[name])
		}
	}
	if told > 0 {
		t.Log("if all of this is meant: go test ./calc -run Numbers -update")
	}
}

func writeNumbers(t *testing.T, put putter, job calc.Job) {
	c, err := calc.Solve(job)
	if err != nil {
		put("card error", err.Error(), "")
		return
	}
	put("card verdict", "", c.Verdict())
	for _, e := range c.Edges {
		put("card edge "+e.Name, basisText(&e.Basis), fmt.Sprintf("%v %s", e.Met, digits4(e.Margin)))
	}
	writeFigures(put, "card", c.Figures)
	writeWarnings(put, "card", c.Warnings)
	put("card notes", "", fmt.Sprintf("%+v", c.Notes))
	for i, a := range advice.CheckFirst(&c) {
		put("card assumed "+a.Field, "", fmt.Sprintf("%s; no. %d, moves %s", a.Text(), i+1, digits4(a.Moves)))
	}
	pages, err := advice.Pages(t.Context(), &c, allPages())
	if err != nil {
		t.Fatal(err)
	}
	for i := range pages {
		writePage(put, &pages[i])
	}
}

func writePage(put putter, p *advice.Page) {
	put(p.Name+" verdict", "", strings.TrimSpace(p.Verdict+" "+strings.Join(append(p.Instead, p.Order...), "; ")))
	writeFigures(put, p.Name, p.Figures)
	for i, r := range p.Reasons {
		put(p.Name+" reason", r.Text+" ["+r.Known+"]", fmt.Sprintf("no. %d", i+1))
	}
	for i, r := range p.Ranking {
		put(p.Name+" ranks "+r.ID, "", fmt.Sprintf("no. %d, %v %s; margin %s, wire %s, cost %s; for %d, against %d",
			i+1, r.RuledOut, digits4(r.Score), ofAny(r.Margin), ofAny(r.Wire), ofAny(r.Cost), len(r.For),
			len(r.Against)))
	}
	writeWarnings(put, p.Name, p.Warnings)
}

func allPages() (names []string) {
	for _, p := range advice.Contents() {
		if p.Of != nil {
			names = append(names, p.Name)
		}
	}
	return names
}

func writeFigures(put putter, page string, list []calc.Figure) {
	for _, f := range list {
		value := fmt.Sprintf("%s (%s %s) %s", digits4(f.Value), digits4(f.Low), digits4(f.High), f.Unit)
		for _, in := range f.Basis.Inputs {
			if in.Sensitivity != 0 {
				value += fmt.Sprintf(", %s %+.1f", in.Name, in.Sensitivity)
			}
		}
		put(page+" "+f.Name, basisText(&f.Basis), value)
	}
}

// basisText is a basis without its numbers; ~ marks assumed inputs, < inputs that are figures of their own.
func basisText(b *calc.Basis) string {
	var in []string
	for _, x := range b.Inputs {
		in = append(in, fmt.Sprintf("%s %s %s", x.Symbol, x.Name,
			x.Unit)+map[bool]string{true: "~"}[x.Assumed]+map[bool]string{true: "<"}[x.Derived])
	}
	slices.Sort(in) // else by what they move, where two may be alike
	return fmt.Sprintf("%s [%s; %s] %s", b.Formula, b.Known, b.Source, strings.Join(in, ", "))
}

func writeWarnings(put putter, page string, list []calc.Warning) {
	for i, w := range list {
		put(page+" warning "+w.Code, w.Text, fmt.Sprintf("%v, no. %d", w.Severity, i+1))
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
