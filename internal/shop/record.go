package shop

import (
	"context"
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// Record is all there is of one record, in lines of at most 80 columns, and the commands that do something with it.
func (s *Shop) Record(ctx context.Context, id string, units quantity.System) (lines []string, err error) {
	err = s.With(ctx, false, func(b book.Book) error {
		text, err := RecordText(ctx, b, id, units)
		if err != nil {
			return err
		}
		r, err := b.Get(ctx, id)
		lines = strings.Split(strings.TrimRight(text+recordCommands(r.Kind, r.ID), "\n"), "\n")
		return err
	})
	return lines, err
}

// RecordText is all there is of one record in at most 80 columns: what it holds now, its history, and of a card the
// test beads that were laid with it and what this program says of its job today.
func RecordText(ctx context.Context, b book.Book, id string, sys quantity.System) (string, error) {
	text, err := ShownText(ctx, b, id, sys)
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
	out.WriteString("\nhistory\n" + HistoryText(list))
	return out.String(), nil
}

// recordCommands are the commands that do something with a record, for who reads it on a screen.
func recordCommands(kind book.Kind, id string) string {
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

// aboutCard is what came of a kept card.
func aboutCard(ctx context.Context, b book.Book, out *strings.Builder, id string, c *book.Card) error {
	trials, err := TrialsOf(ctx, b, id)
	if err != nil {
		return err
	}
	out.WriteString("\ntest beads\n")
	for _, t := range trials {
		out.WriteString(report.Wrapped("  ", t.Revision.At[:10]+" "+book.Summary(&t.Revision)))
	}
	if len(trials) == 0 {
		out.WriteString("  none kept\n")
	}
	out.WriteString("\nthis program today\n")
	diff, err := Today(ctx, c, nil)
	if err != nil {
		out.WriteString(report.Wrapped("  ", "has no card for it: "+plain.Line(err.Error(), 200)))
		return nil
	}
	for _, x := range diff {
		unit := quantity.Label(x.Unit, quantity.Metric)
		text := fmt.Sprintf("%s: %.4g, now %.4g %s", calc.FigureLabel(x.Name), x.A, x.B, unit)
		if x.A == 0 || x.B == 0 {
			text = calc.FigureLabel(x.Name) + ": " + x.Why
		}
		out.WriteString(report.Wrapped("  ", text))
	}
	if len(diff) == 0 {
		out.WriteString("  no figure differs\n")
	}
	return nil
}

// HistoryText is every state that a record had, oldest first.
func HistoryText(list []book.Revision) string {
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
		by := fmt.Sprintf("(by %s, version %s, revision %.8s)", SavedBy(h), plain.Line(h.Program, 20), h.Rev)
		out.WriteString(report.Wrapped("", h.At[:19]+"Z "+what+": "+book.Summary(h)+" "+by))
	}
	return out.String()
}
