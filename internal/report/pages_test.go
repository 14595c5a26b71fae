package report

import (
	"context"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/calc/correct"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

var pageJobs = []calc.Job{
	{Metal: "galvanized", Gauge: 20, Feed: calc.Some(4.1), Travel: calc.Some(8), Use: "seal", Hazard: "none",
		Length: calc.Some(2000), WirePrice: calc.Some(25), LabourRate: calc.Some(45), SteelPrice: calc.Some(3),
		Currency: "EUR"},
	{Metal: "brass", Thickness: calc.Some(1), Feed: calc.Some(4), Travel: calc.Some(8)},
	{Metal: "grey-iron", Thickness: calc.Some(8), Joint: "butt", Feed: calc.Some(7), Travel: calc.Some(5),
		Length: calc.Some(120)},
	{Metal: "mild-steel", Thickness: calc.Some(12), Joint: "overlay", Filler: "cual8", Feed: calc.Some(7),
		Travel: calc.Some(6), ShaftDia: calc.Some(40), Length: calc.Some(30), Layer: calc.Some(2), Use: "bearing"},
	{Metal: "stainless-304", Gauge: 16, Metal2: "copper", Thickness2: calc.Some(2), Joint: "lap", Feed: calc.Some(5),
		Travel: calc.Some(7), Load: calc.Some(1)},
	{Metal: "mild-steel", Gauge: 16, Joint: "plug", Feed: calc.Some(6), Count: calc.Some(4)},
}

// Every page of every job follows the schema as JSON, stays in 80 columns as text, and has whole figures as Markdown.
func TestPagesInEveryMedium(t *testing.T) {
	schema := loadSchema(t, "schema.json")
	for _, j := range deep.Of(t, pageJobs, 2) {
		card, err := calc.Solve(j)
		if err != nil {
			t.Fatal(err)
		}
		parts, err := advice.Pages(context.Background(), &card, nil)
		if err != nil {
			t.Fatal(err)
		}
		b, err := JSON(Whole(&card, parts), "test")
		if err != nil {
			t.Fatal(err)
		}
		for _, fault := range faults(t, schema, b) {
			t.Errorf("%s %s: %s", j.Metal, j.Joint, fault)
		}
		for i := range parts {
			b, err := JSON(Page(&parts[i], nil), "test")
			if err != nil {
				t.Fatal(err)
			}
			for _, fault := range faults(t, schema, b) {
				t.Errorf("%s of %s: %s", parts[i].Name, j.Metal, fault)
			}
		}
		for _, sys := range []quantity.System{quantity.Metric, quantity.Inch, quantity.Both} {
			text := Text(Whole(&card, parts), Options{Units: sys, Why: true})
			for line := range strings.Lines(text) {
				if w := plain.Width(strings.TrimRight(line, "\n")); w > width {
					t.Errorf("%s: %d columns: %s", j.Metal, w, line)
				}
			}
			md := Markdown(Whole(&card, parts), Options{Units: sys})
			for i := range parts {
				name := string(ChapterOf(parts[i].Name)) + ": " + parts[i].Name
				if !strings.Contains(text, name+"\n---") || !strings.Contains(md, "## "+name+"\n") {
					t.Errorf("%s: no %s", j.Metal, name)
				}
			}
			for line := range strings.Lines(md) {
				if strings.HasPrefix(line, "|") && strings.Count(strings.ReplaceAll(line, "\\|", ""), "|") != 5 {
					t.Errorf("a row of other columns: %s", line)
				}
			}
		}
	}
}

// A correction follows the schema, with and without a change, and names the change in words.
func TestCorrectionInEveryMedium(t *testing.T) {
	schema := loadSchema(t, "schema.json")
	job := calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(5.5), Travel: calc.Some(10)}
	for _, s := range tables.Sights {
		p, err := correct.Next(context.Background(), []correct.Try{{Job: job, Seen: s.ID}})
		if mistake.Of(err) != nil {
			continue // this job cannot show such a bead
		}
		if err != nil {
			t.Fatal(err)
		}
		b, err := JSON(Page(&p, nil), "test")
		if err != nil {
			t.Fatal(err)
		}
		for _, fault := range faults(t, schema, b) {
			t.Errorf("%s: %s", s.ID, fault)
		}
		text := Text(Page(&p, nil), Options{Units: quantity.Metric})
		if c := p.Correction.Change; c != nil && !strings.Contains(text,
			"CHANGE  "+CorrectionText(c, "", quantity.Metric)) {
			t.Errorf("%s: the change is not in the text:\n%s", s.ID, text)
		}
	}
	mode := advice.Change{What: "mode", FromMode: "dip", ToMode: "timed"}
	if b, err := mode.MarshalJSON(); err != nil || string(b) != `{"what":"mode","from":"dip","to":"timed","unit":""}` {
		t.Errorf("%s, %v", b, err)
	}
}
