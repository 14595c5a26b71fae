package linear

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/deep"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// jobs are the lines that lead to a card, and the job that they describe.
var jobs = []struct {
	lines []string
	job   calc.Job
}{
	{[]string{"galv", "20ga", "", ""}, calc.Job{Metal: "galvanized", Gauge: 20}},
	{[]string{"steel", "16", ".030", "pulsed", "joint tee", "feed 6.2", "travel 14ipm", "stickout 1/2in"},
		calc.Job{Metal: "mild-steel", Gauge: 16, Wire: calc.Some(0.762), Mode: "pulsed", Joint: "tee",
			Feed: calc.Some(6.2), Travel: calc.Some(14 * 25.4 / 60), StickOut: calc.Some(12.7)}},
	{[]string{"304", "1.5mm", "1.0mm", "dip", "metal2 copper", "gauge2 2mm", "filler cual8"},
		calc.Job{Metal: "stainless-304", Thickness: calc.Some(1.5), Wire: calc.Some(1), Mode: "dip", Metal2: "copper",
			Thickness2: calc.Some(2), Filler: "cual8"}},
	{[]string{"grey-iron", "8mm", "", "dip", "joint butt", "preheat 95C"},
		calc.Job{Metal: "grey-iron", Thickness: calc.Some(8), Mode: "dip", Joint: "butt", Preheat: calc.Some(95)}},
	// not over a closed lap, which takes as long
	{[]string{"1", "16ga", "", "dip", "joint butt", "gap 2mm", "mode timed"},
		calc.Job{Metal: "mild-steel", Gauge: 16, Mode: "timed", Joint: "butt", Gap: calc.Some(2)}},
	{[]string{"galv", "18", "", "", "amps 90", "feed 5.5"}, calc.Job{Metal: "galvanized", Gauge: 18,
		Amps: calc.Some(90), Feed: calc.Some(5.5)}},
	{[]string{"mild", "10mm", "", "", "joint overlay", "shaft-dia 40mm"},
		calc.Job{Metal: "mild-steel", Thickness: calc.Some(10), Joint: "overlay", ShaftDia: calc.Some(40)}},
}

var saidFigure = regexp.MustCompile(`^([A-Z][a-z -]*?) (minus )?(\d*\.?\d+)( [a-zA-Z ]+)?` +
	`(, (?:good )?between (minus )?(\d*\.?\d+) and (minus )?(\d*\.?\d+))?`)

// number is a number as it was read out.
func number(t *testing.T, minus, digits string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(digits, 64)
	if err != nil {
		t.Fatal(err)
	}
	if minus != "" {
		v = -v
	}
	return v
}

// alike reports whether a printed number is the value, to half its last digit.
func alike(printed string, got, want float64) bool {
	_, tail, _ := strings.Cut(printed, ".")
	half := 0.5
	for range tail {
		half /= 10
	}
	return got-want <= half*1.001 && want-got <= half*1.001
}

// Every figure of a card is read out, with the number and the band that the command prints for that job.
func TestEveryFigureAsTheCommandGivesIt(t *testing.T) {
	if testing.Short() {
		t.Skip("compared without -short: nothing here runs side by side")
	}
	for _, x := range deep.Of(t, jobs, 3) {
		for _, sys := range [...]quantity.System{quantity.Metric, quantity.Inch} {
			text, _ := talkOf(t, Options{Units: sys}, append(append([]string(nil), x.lines...), "card", "results")...)
			text = strings.ReplaceAll(text, "\n", " ")
			text = text[strings.LastIndex(text, "card: card Settings card"):]
			sentences := regexp.MustCompile(`\. (?:[A-Z]|card:)`).ReplaceAllStringFunc(text,
				func(s string) string { return ".\n" + s[2:] })
			card, err := solveAs(t, x.job)
			if err != nil {
				t.Fatal(err)
			}
			heard := map[string][]string{}
			for line := range strings.Lines(sentences) {
				line = strings.TrimPrefix(line, "card: results ")
				if m := saidFigure.FindStringSubmatch(line); m != nil {
					heard[strings.ToLower(m[1])] = m
				}
			}
			for i := range card.Figures {
				f := &card.Figures[i]
				if f.Name == "gun_angle" { // this figure is read out as a note, in words
					continue
				}
				m := heard[strings.ToLower(label(f.Name))]
				if m == nil {
					t.Errorf("%v, %s: %s is not read out", x.lines, sys, f.Name)
					continue
				}
				each, unit := quantity.Counted(f.Value, f.Unit) // a long time is read out in minutes or hours
				v, sign := quantity.Convert(f.Value*each, unit, sys)
				lo, _ := quantity.Convert(f.Low*each, unit, sys)
				hi, _ := quantity.Convert(f.High*each, unit, sys)
				if quantity.Dialable(f.Name) { // rounded to the dial, the ends of a good band inwards
					a, b, c := quantity.Dialed(f.Name, f.Value, f.Low, f.High, f.Unit, f.Suggested(), sys)
					v, lo, hi = plainNumber(t, a), plainNumber(t, b), plainNumber(t, c)
				}
				if !alike(m[3], number(t, m[2], m[3]), v) {
					t.Errorf("%v, %s: %s is %g %s, and %q is heard", x.lines, sys, f.Name, v, sign, m[0])
				}
				if words := strings.TrimSpace(m[4]); words != unitWord(sign, false) && words != unitWord(sign, true) {
					t.Errorf("%v, %s: %s in %s is heard in %q", x.lines, sys, f.Name, sign, words)
				}
				switch {
				case (f.Low == f.High) != (m[5] == ""):
					t.Errorf("%v, %s: the band of %s, %g to %g, is heard as %q", x.lines, sys, f.Name, lo, hi, m[5])
				case m[5] != "" && (!alike(m[7], number(t, m[6], m[7]), lo) || !alike(m[9], number(t, m[8], m[9]), hi)):
					t.Errorf("%v, %s: the band of %s, %g to %g, is heard as %q", x.lines, sys, f.Name, lo, hi, m[5])
				}
			}
		}
	}
}

func plainNumber(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func solveAs(t *testing.T, job calc.Job) (calc.Card, error) {
	if job.Mode != "timed" {
		return calc.Solve(job)
	}
	s, err := calc.SolveTimed(t.Context(), job, nil)
	return s.Card, err
}

// Every unit of a figure, an input or a page has words.
func TestEveryUnitHasWords(t *testing.T) {
	deep.Turn(t)
	check := func(where, unit string) {
		for _, sys := range [...]quantity.System{quantity.Metric, quantity.Inch} {
			if sign := quantity.Label(unit, sys); sign != "" && sign != "shade" && unitWord(sign, false) == sign {
				t.Errorf("%s: no words for %q", where, sign)
			}
		}
	}
	for _, x := range deep.Of(t, jobs, 4) {
		job := x.job
		job.Length, job.RatedAmps, job.RatedDuty, job.Load = calc.Some(300), calc.Some(200), calc.Some(60), calc.Some(2)
		card, err := solveAs(t, job)
		if err != nil {
			t.Fatal(err)
		}
		lists := [][]calc.Figure{card.Figures}
		for _, p := range advice.Contents() {
			if p.Of == nil {
				continue
			}
			if part, err := p.Answer(t.Context(), &card); err == nil {
				lists = append(lists, part.Figures)
			}
		}
		for _, list := range lists {
			for i := range list {
				check(list[i].Name, list[i].Unit)
				for _, in := range list[i].Basis.Inputs {
					if in.Unit != "" && unitWord(in.Unit, false) == in.Unit && in.Unit != "1" {
						t.Errorf("%s leans on %s: no words for %q", list[i].Name, in.Name, in.Unit)
					}
				}
			}
		}
	}
}

// All stops and cautions are read out in full before the figures.
func TestDangersComeFirst(t *testing.T) {
	text, _ := talkOf(t, Options{}, "galv", "20ga", "", "", "hazard tank", "card")
	card, err := calc.Solve(calc.Job{Metal: "galvanized", Gauge: 20, Hazard: "tank"})
	if err != nil {
		t.Fatal(err)
	}
	text = strings.ReplaceAll(text[strings.LastIndex(text, "Settings card"):], "\n", " ")
	feed := strings.Index(text, "Wire feed")
	for _, w := range card.Warnings {
		at := strings.Index(text, spell(w.Text))
		if at < 0 || at > feed && w.Severity != calc.Info {
			t.Errorf("%s at %d, the figures at %d: %s", w.Code, at, feed, fmt.Sprint(w.Text))
		}
	}
	if stop := strings.Index(text, "Stop! Used tank"); stop < 0 || stop > strings.Index(text, "Caution: ") {
		t.Errorf("the stop is not said first: %.300s", text)
	}
}

// A sentence names a member once: the remark does not repeat what the figure's name says.
func TestAMemberIsNamedOnce(t *testing.T) {
	for _, x := range jobs {
		card, err := calc.Solve(x.job)
		if err != nil {
			t.Fatal(err)
		}
		for i := range card.Figures {
			r := report.RowOf(&card, &card.Figures[i], report.OfCard, quantity.Metric)
			if said := figure(&r, ""); strings.Count(said, " member") > 1 {
				t.Error(said)
			}
		}
	}
}
