package cli

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/internal/sheet"
)

// RecordText is all there is of one record in at most 80 columns: what it holds now, its history, and of a card the test
// beads that were laid with it and what this program says of its job today.
func RecordText(ctx context.Context, b book.Book, id string, sys quantity.System) (string, error) {
	text, err := shownText(ctx, b, id, sys)
	if err != nil {
		return "", err
	}
	r, err := b.Get(ctx, id)
	if err != nil {
		return "", err
	}
	var out strings.Builder
	out.WriteString(text)
	if c, err := book.Body[book.Card](&r); r.Kind == book.CardKind && err == nil {
		c.Clean()
		if err := aboutCard(ctx, b, &out, r.ID, &c); err != nil {
			return "", err
		}
	}
	list, err := b.History(ctx, r.ID)
	if err != nil {
		return "", err
	}
	out.WriteString("\nhistory\n" + historyText(list))
	return out.String(), nil
}

// RecordCommands are the commands that do something with a record, for who reads it on a screen.
func RecordCommands(kind book.Kind, id string) string {
	of := " "
	if kind != book.CardKind {
		of = " --kind " + string(kind) + " "
	}
	var out strings.Builder
	out.WriteString("\nin a shell, behind brazebooth (over SSH behind ssh and the server's name)\n")
	if kind == book.CardKind {
		out.WriteString("  book print " + id + " --pdf card.pdf\n")
	}
	out.WriteString("  book delete" + of + id + "\n  book restore" + of + id + "\n")
	return out.String()
}

// shownText is what a record holds now.
func shownText(ctx context.Context, b book.Book, id string, sys quantity.System) (string, error) {
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

// aboutCard is what came of a kept card.
func aboutCard(ctx context.Context, b book.Book, out *strings.Builder, id string, c *book.Card) error {
	trials, err := book.TrialsOf(ctx, b, id)
	if err != nil {
		return err
	}
	out.WriteString("\ntest beads\n")
	for _, t := range trials {
		out.WriteString(sheet.Wrapped("  ", t.Revision.At[:10]+" "+book.Summary(&t.Revision)))
	}
	if len(trials) == 0 {
		out.WriteString("  none kept\n")
	}
	card, err := calc.Solve(c.Card.Used)
	out.WriteString("\nthis program today\n")
	if err != nil {
		out.WriteString(sheet.Wrapped("  ", "has no card for it: "+plain.Line(err.Error(), 200)))
		return nil
	}
	now := book.Keep(&card)
	diff := settled(differences(&c.Card, &now))
	for _, x := range diff {
		text := fmt.Sprintf("%s: %.4g, now %.4g %s", calc.FigureLabel(x.Name), x.A, x.B, quantity.Label(x.Unit, quantity.Metric))
		if x.A == 0 || x.B == 0 {
			text = calc.FigureLabel(x.Name) + ": " + x.Why
		}
		out.WriteString(sheet.Wrapped("  ", text))
	}
	if len(diff) == 0 {
		out.WriteString("  no figure differs\n")
	}
	return nil
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
	fmt.Fprintf(&out, "%s%s, saved %s by %s with version %s\n\n", sheet.Wrapped("", book.Summary(r)), r.ID, r.At[:16], orUnknown(plain.Line(r.Who, 40)), plain.Line(r.Program, 20))
	var fields map[string]json.RawMessage
	if json.Unmarshal(r.Body, &fields) != nil {
		return out.String() + "  of a newer program: this one cannot read it\n"
	}
	if job, ok := fields["job"]; ok {
		delete(fields, "job")
		var inner map[string]json.RawMessage
		_ = json.Unmarshal(job, &inner) // one that is none has no fields
		for name, v := range inner {
			fields[name] = v
		}
	}
	names := make([]string, 0, len(fields))
	for name := range fields {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
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
		out.WriteString(sheet.Wrapped(fmt.Sprintf("  %-18s ", plain.Line(strings.ReplaceAll(name, "_", " "), 18)), plain.Line(value, 400)))
	}
	return out.String()
}

// historyText is every state that a record had, oldest first.
func historyText(list []book.Revision) string {
	var out strings.Builder
	gone := map[string]bool{}
	for i := range list {
		h := &list[i]
		what := "saved"
		switch {
		case h.Deleted:
			what = "deleted"
		case gone[h.Parent]:
			what = "restored"
		case h.Parent != "":
			what = "changed"
		}
		gone[h.Rev] = h.Deleted
		out.WriteString(sheet.Wrapped("", fmt.Sprintf("%s %s: %s (by %s, version %s, revision %.8s)", h.At[:19]+"Z", what, book.Summary(h), orUnknown(plain.Line(h.Who, 40)), plain.Line(h.Program, 20), h.Rev)))
	}
	return out.String()
}
