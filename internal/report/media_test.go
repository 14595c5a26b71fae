package report

import (
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/deep"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// someMediaJobs are shared by all tests here, because computing a job's pages takes long.
var someMediaJobs deep.Known[string, []calc.Job]

// mediaJobs is a sample of jobs over metals, joints and modes.
func mediaJobs(t *testing.T) []calc.Job {
	list, _ := someMediaJobs.Of("", func() ([]calc.Job, error) { return drawnJobs(t), nil })
	return list
}

func drawnJobs(t *testing.T) []calc.Job {
	var all []calc.Job
	for i, m := range tables.Metals {
		for k, joint := range tables.Joints {
			job := calc.Job{Metal: m.ID, Gauge: 16 + (i+k)%6, Joint: joint.ID, Travel: calc.Some(7),
				Feed: calc.Some(4 + float64(k)/2), WirePrice: calc.Some(25)}
			if (i+k)%3 == 0 {
				job.Hazard = "tank"
			}
			all = append(all, job)
		}
	}
	return deep.Of(t, all, 6)
}

var knownFindings deep.Known[calc.Job, map[string][]Block]

// findings are the card of a job and every page beside it, by name.
func findings(t *testing.T, job calc.Job) map[string][]Block {
	t.Helper()
	all, err := knownFindings.Of(job, func() (map[string][]Block, error) { return found(t, job) })
	if err != nil {
		t.Fatalf("%+v: %v", job, err)
	}
	return all
}

func found(t *testing.T, job calc.Job) (map[string][]Block, error) {
	card, err := calc.Solve(job)
	if err != nil {
		return nil, err
	}
	all := map[string][]Block{"card": Card(&card)}
	for _, page := range advice.Contents() {
		if page.Of == nil {
			continue
		}
		if p, err := page.Answer(t.Context(), &card); err == nil {
			all[page.Name] = Page(&p, page.Needs)
		}
	}
	return all, nil
}

// says are the texts of a line that a medium must show.
func says(l *Line) []string {
	switch {
	case l.Kind == Topic:
		return []string{capital(l.Text)}
	case l.Row == nil:
		all := []string{l.Value, l.Text}
		for _, cell := range l.Cells {
			all = append(all, cell.(string))
		}
		return all
	}
	return []string{l.Row.Label, l.Row.Value.Number, l.Row.Value.Unit, l.Row.Value.Band(), l.Row.Other.String()}
}

func flat(s string) string { return strings.Join(strings.Fields(s), " ") }

// Every number with its unit and its band, and every sentence, appears in text and in Markdown.
func TestEveryBlockIsInEveryMedium(t *testing.T) {
	deep.Turn(t)
	for _, job := range mediaJobs(t) {
		for name, blocks := range findings(t, job) {
			for _, sys := range [...]quantity.System{quantity.Metric, quantity.Both} {
				o := Options{Units: sys, loud: true}
				text, md := flat(Text(blocks, o)), flat(Markdown(blocks, o))
				for _, l := range Words(blocks, o) {
					if l.Kind == RestsOn { // text shows it under what is assumed
						continue
					}
					for _, want := range says(&l) {
						if !strings.Contains(text, flat(want)) || l.Kind != Topic &&
							!strings.Contains(md, flat(clean(want))) {
							t.Errorf("%s %s, %s: %q is missing in text %v, in Markdown %v", job.Metal, job.Joint, name,
								want,
								!strings.Contains(text, flat(want)), !strings.Contains(md, flat(clean(want))))
						}
					}
				}
			}
		}
	}
}

// The same holds for a practice job that is over: each bead, what the booth hid, and what that changed.
func TestPracticeIsInEveryMedium(t *testing.T) {
	blocks, o := practiceOf(t, 2, true).Blocks(), Options{loud: true}
	text, md := flat(Text(blocks, o)), flat(Markdown(blocks, o))
	for _, l := range Words(blocks, o) {
		for _, want := range says(&l) {
			if !strings.Contains(text, flat(want)) || !strings.Contains(md, flat(clean(want))) {
				t.Errorf("%q is missing in\n%s\n%s", want, text, md)
			}
		}
	}
}

// The JSON of a finding has all figures, reasons and cautions of its blocks, and no others.
func TestJSONHasTheBlocksAndNoMore(t *testing.T) {
	for _, job := range mediaJobs(t) {
		for name, blocks := range findings(t, job) {
			b, err := JSON(blocks, "test")
			if err != nil {
				t.Fatal(err)
			}
			var doc struct {
				Figures  []figure
				Warnings []calc.Warning
				Sections map[string]struct{ Reasons []advice.Reason }
			}
			if err := json.Unmarshal(b, &doc); err != nil {
				t.Fatal(err)
			}
			figures, reasons, warnings := valuesOf(blocks)
			var got []string
			for _, f := range doc.Figures {
				got = append(got, fmt.Sprint(f.Name, f.Value, f.Low, f.High, f.Unit))
			}
			if !slices.Equal(got, figures) || !slices.Equal(doc.Sections[name].Reasons, reasons) ||
				!slices.Equal(doc.Warnings, warnings) {
				t.Errorf("%s %s, %s: %v\n%v\n%v", job.Metal, job.Joint, name, got, figures, doc.Warnings)
			}
		}
	}
}

func valuesOf(blocks []Block) (figures []string, reasons []advice.Reason, warnings []calc.Warning) {
	for _, b := range blocks {
		switch b := b.(type) {
		case Chapter:
			f, r, w := valuesOf(b.Blocks)
			figures, reasons, warnings = append(figures, f...), append(reasons, r...), append(warnings, w...)
		case Figures:
			for _, f := range b.List {
				figures = append(figures, fmt.Sprint(f.Name, f.Value, f.Low, f.High, f.Unit))
			}
		case Body:
			f, _, w := valuesOf([]Block{Figures{List: b.Figures}, Cautions{List: b.Warnings}})
			figures, reasons, warnings = append(figures, f...), append(reasons, b.Reasons...), append(warnings, w...)
		case Stops:
			warnings = append(warnings, b.List...)
		case Cautions:
			warnings = append(warnings, b.List...)
		}
	}
	return figures, reasons, warnings
}

// marks are the words that text adds to the blocks.
var marks = regexp.MustCompile(`STOP|CAUTION|INFO|Arc brazing:|instead:|You may also give:`)

// Text adds nothing but its marks: without the blocks' words and the marks, no word is left.
func TestTextAddsNothing(t *testing.T) {
	for _, job := range mediaJobs(t) {
		for name, blocks := range findings(t, job) {
			o := Options{loud: true}
			text := flat(Text(blocks, o))
			var said []string
			for _, l := range Words(blocks, o) {
				said = append(said, says(&l)...)
				said = append(said, flat(l.Lead), l.Value, "("+l.Known+")", "("+calc.KnownShort(l.Known)+")", l.Text)
				if l.Row != nil {
					said = append(said, l.Row.Beside(32, func(s string) int { return len([]rune(s)) }), l.Row.Short)
				}
				if l.Kind == Turns {
					said = append(said, capital(l.Lead))
				}
			}
			slices.SortFunc(said, func(a, b string) int { return len(b) - len(a) })
			for _, s := range slices.DeleteFunc(said, func(s string) bool { return len(s) < 2 }) {
				text = strings.ReplaceAll(text, flat(s), " ")
			}
			if left := regexp.MustCompile(`\pL{2,}`).FindAllString(marks.ReplaceAllString(text, " "),
				-1); len(left) > 0 {
				t.Errorf("%s %s, %s says of its own: %v", job.Metal, job.Joint, name, left)
			}
		}
	}
}
