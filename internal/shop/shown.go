package shop

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/calc/practice"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tables"
)

// Held is a record's present content.
func Held(r *book.Revision) ([]report.Block, error) {
	switch r.Kind {
	case book.CardKind:
	case book.PracticeKind:
		return practised(r), nil
	default:
		return fieldsOf(r), nil
	}
	c, err := book.Body[book.Card](r)
	c.Clean()
	card := AsKept(&c)
	return report.Kept(keptHead(&c, savedLine(r)), &card), err
}

// keptHead is a kept card's name, tags and note, with its job.
func keptHead(c *book.Card, saved string) report.Said {
	head := report.Said{asTyped(c.Name), asTyped(saved), asTyped(c.Line())}
	for _, x := range [...][2]string{{"tags", strings.Join(c.Tags, ", ")}, {"note", c.Note}} {
		if x[1] != "" {
			head = append(head, report.Line{Kind: report.Named, Lead: x[0], Text: x[1], AsTyped: true})
		}
	}
	return head
}

// AsKept is a kept card as it was saved. Its figures have no basis, and its zone is its verdict.
func AsKept(c *book.Card) calc.Card {
	k := &c.Card
	card := calc.Card{Job: c.Job, Used: k.Used, Assumed: k.Assumed, Notes: k.Notes, Warnings: k.Warns, Zone: k.Zone}
	for _, f := range k.Figures {
		card.Figures = append(card.Figures, calc.Figure{Name: f.Name, Value: f.Value, Low: f.Low, High: f.High,
			Unit: f.Unit})
	}
	return card
}

// asTyped is a line of typed text, or of names of a job's sheet and wire, whose units are not converted.
func asTyped(text string) report.Line { return report.Line{Text: text, AsTyped: true} }

// savedLine says which revision it is, and who saved it when.
func savedLine(r *book.Revision) string {
	at := strings.Replace(r.At[:16], "T", " ", 1)
	return fmt.Sprintf("%s, saved %s UTC by %s with version %s", r.ID, at, SavedBy(r), plain.Line(r.Program, 20))
}

// SavedBy is the name of the person who saved a revision.
func SavedBy(r *book.Revision) string {
	if r.Who == "" {
		return "nobody named"
	}
	return plain.Line(r.Who, 40)
}

// recordUnit is the unit of a record's field: that of a job's figure, or one for fields that only records have.
func recordUnit(name string) string {
	if _, _, unit, ok := calc.Span(name); ok {
		return " " + quantity.Label(unit, quantity.Metric)
	}
	return map[string]string{"full": " g", "left": " g", "force": " kN", "least_amps": " A", "most_amps": " A"}[name]
}

// practised describes the outcome of a practice job in words.
func practised(r *book.Revision) []report.Block {
	how, err := book.Body[practice.Outcome](r)
	if err != nil {
		return fieldsOf(r)
	}
	own := quantity.Count(how.Program, "bead") + ", none of them good"
	if how.Reached {
		own = quantity.Count(how.Program, "bead") + ", the last one good"
	}
	var list report.Said
	for _, x := range [...][2]string{{"booth", fmt.Sprintf("level %d, number %d", how.Level, how.Seed)},
		{"work", how.Work}, {"yours", quantity.Count(how.Beads, "bead") + ", the last one " + how.Verdict},
		{"the program's", own}} {
		list = append(list, report.Line{Kind: report.Field, Lead: x[0], Text: plain.Line(x[1], 400),
			AsTyped: true})
	}
	return []report.Block{report.Said{asTyped(book.Summary(r)), asTyped(savedLine(r))}, list}
}

// fieldsOf are any record's fields, in the order of their names.
func fieldsOf(r *book.Revision) []report.Block {
	head := report.Said{asTyped(book.Summary(r)), asTyped(savedLine(r))}
	var fields, job, pull map[string]json.RawMessage
	if json.Unmarshal(r.Body, &fields) != nil {
		unread := report.Line{Kind: report.Item, Text: "of a newer program: this one cannot read it"}
		return []report.Block{head, report.Said{unread}}
	}
	if json.Unmarshal(fields["job"], &job) == nil { // a record without a job has no job's fields
		maps.Copy(fields, job)
	}
	if json.Unmarshal(fields["pull"], &pull) == nil {
		maps.Copy(fields, pull)
	}
	delete(fields, "job")
	delete(fields, "pull")
	var list report.Said
	for _, name := range slices.Sorted(maps.Keys(fields)) {
		value := string(fields[name])
		var text string
		var number float64
		typed := json.Unmarshal(fields[name], &text) == nil
		switch {
		case typed:
			value = text
		case json.Unmarshal(fields[name], &number) == nil:
			value = fmt.Sprintf("%.4g", number)
		}
		label := plain.Line(strings.ReplaceAll(name, "_", " "), 18)
		list = append(list, report.Line{Kind: report.Field, Lead: label, Text: plain.Line(value+recordUnit(name), 400),
			AsTyped: typed})
	}
	return []report.Block{head, list}
}

func sourceText(s *book.Source) string {
	text := "power source " + plain.Line(s.Name, 60)
	for _, f := range [...]struct {
		v    float64
		form string
	}{
		{s.RatedAmps, ", rated %.0f A"}, {s.RatedDuty, ", duty cycle %.0f %%"}, {s.LeastAmps, ", from %.0f A"},
		{s.MostAmps, ", up to %.0f A"}, {s.Nozzle, ", nozzle %.1f mm"},
	} {
		if f.v > 0 {
			text += fmt.Sprintf(f.form, f.v)
		}
	}
	return text
}

func spoolText(s *book.Spool) string {
	f, _ := tables.Fillers.ByID(s.Filler)
	length := ""
	if s.Wire > 0 && f.Density.V > 0 {
		length = fmt.Sprintf(", %.0f m of wire", s.Left/formula.MassPerLength(s.Wire, f.Density.V))
	}
	return fmt.Sprintf("spool %s: %s %.4g mm, %.0f g left%s", plain.Line(s.Lot, 60), s.Filler, s.Wire, s.Left, length)
}

func personText(p *book.Person) string { return "person " + plain.Line(p.Name, 60) }
