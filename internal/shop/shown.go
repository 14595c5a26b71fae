package shop

import (
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// ShownText is what a record holds now.
func ShownText(ctx context.Context, b book.Book, id string, sys quantity.System) (string, error) {
	r, err := b.Get(ctx, id)
	if err != nil {
		return "", err
	}
	if r.Kind != book.CardKind {
		return plainText(&r), nil
	}
	c, err := book.Body[book.Card](&r)
	c.Clean()
	return keptText(&r, &c, sys), err
}

// keptText is a kept card in at most 80 columns.
func keptText(r *book.Revision, c *book.Card, sys quantity.System) string {
	if sys == quantity.Both {
		sys = quantity.Metric
	}
	var b strings.Builder
	b.WriteString(c.Name + "\n" + savedLine(r) + "\n")
	b.WriteString(report.Wrapped("", c.Line()))
	if len(c.Tags) > 0 {
		b.WriteString(report.Wrapped("tags: ", strings.Join(c.Tags, ", ")))
	}
	if c.Note != "" {
		b.WriteString(report.Wrapped("note: ", c.Note))
	}
	if text := Assumed(c); text != "" {
		b.WriteString(report.Wrapped("assumed: ", text))
	}
	b.WriteByte('\n')
	for _, w := range c.Card.Warns {
		if w.Severity == calc.Stop {
			b.WriteString(report.Wrapped("STOP  ", w.Text))
		}
	}
	for _, f := range c.Card.Figures {
		value, band := quantity.Band(f.Value, f.Low, f.High, f.Unit, sys)
		if f.Low == f.High {
			band = ""
		}
		fmt.Fprintf(&b, "  %-15s %9s %-7s %s\n", calc.FigureLabel(f.Name), value, quantity.Label(f.Unit, sys), band)
	}
	fmt.Fprintf(&b, "  zone            %s\n\n", c.Card.Zone)
	for _, w := range c.Card.Warns {
		if w.Severity != calc.Stop {
			b.WriteString(report.Wrapped(strings.ToUpper(plain.Line(string(w.Severity), 10))+"  ", w.Text))
		}
	}
	b.WriteString("\nStrike a test bead on scrap of the same sheet first, and peel it.\n")
	return b.String()
}

// Assumed lists what nobody chose when a card was kept.
func Assumed(c *book.Card) string {
	var list []string
	for _, a := range c.Card.Assumed {
		list = append(list, plain.Line(strings.ReplaceAll(a.Field, "_", " ")+" "+a.Value, 60))
	}
	return strings.Join(list, ", ")
}

// savedLine says which revision it is.
func savedLine(r *book.Revision) string {
	return fmt.Sprintf("%s, saved %s by %s with version %s", r.ID, r.At[:16], SavedBy(r), plain.Line(r.Program, 20))
}

// SavedBy is who saved a revision.
func SavedBy(r *book.Revision) string {
	if r.Who == "" {
		return "nobody named"
	}
	return plain.Line(r.Who, 40)
}

// recordUnit is the unit in which a record's figure is kept: a job's own, or one that only records have.
func recordUnit(name string) string {
	if _, _, unit, ok := calc.Span(name); ok {
		return quantity.Label(unit, quantity.Metric)
	}
	switch name {
	case "full", "left":
		return "g"
	case "least_amps", "most_amps":
		return "A"
	}
	return ""
}

// plainText is any record's fields, one a line, in the order of their names.
func plainText(r *book.Revision) string {
	var out strings.Builder
	out.WriteString(report.Wrapped("", book.Summary(r)) + savedLine(r) + "\n\n")
	var fields map[string]json.RawMessage
	if json.Unmarshal(r.Body, &fields) != nil {
		return out.String() + "  of a newer program: this one cannot read it\n"
	}
	if job, ok := fields["job"]; ok {
		delete(fields, "job")
		var inner map[string]json.RawMessage
		_ = json.Unmarshal(job, &inner) // one that is none has no fields
		maps.Copy(fields, inner)
	}
	for _, name := range slices.Sorted(maps.Keys(fields)) {
		value := string(fields[name])
		var text string
		var number float64
		switch {
		case json.Unmarshal(fields[name], &text) == nil:
			value = text
		case json.Unmarshal(fields[name], &number) == nil:
			value = fmt.Sprintf("%.4g", number)
		}
		if unit := recordUnit(name); unit != "" {
			value += " " + unit
		}
		label := plain.Line(strings.ReplaceAll(name, "_", " "), 18)
		out.WriteString(report.Wrapped(fmt.Sprintf("  %-18s ", label), plain.Line(value, 400)))
	}
	return out.String()
}
