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

// Record is everything about one record, with the commands for it.
func (s *Shop) Record(ctx context.Context, id string) (blocks []report.Block, err error) {
	err = s.With(ctx, false, func(b book.Book) error {
		r, err := b.Get(ctx, id)
		if err != nil {
			return err
		}
		blocks, err = RecordOf(ctx, b, &r)
		blocks = append(blocks, commandsFor(&r))
		return err
	})
	return blocks, err
}

// RecordOf is everything about one record: its present content, its history, and for a card its test beads and how it
// differs from what this program computes today.
func RecordOf(ctx context.Context, b book.Book, r *book.Revision) ([]report.Block, error) {
	blocks, err := Held(r)
	if err != nil {
		return nil, err
	}
	if r.Kind == book.CardKind {
		c, err := book.Body[book.Card](r)
		if err != nil {
			return nil, err
		}
		c.Clean()
		trials, err := TrialsOf(ctx, b, r.ID)
		if err != nil {
			return nil, err
		}
		blocks = append(blocks, beads(trials), today(ctx, &c))
	}
	list, err := b.History(ctx, r.ID)
	return append(blocks, append(report.Said{{Text: "history"}}, History(list)...)), err
}

// commandsFor are the commands for a record, to be shown on a screen.
func commandsFor(r *book.Revision) report.Said {
	which := r.ID
	list := report.Said{{Text: "in a shell, behind brazebooth (over SSH behind ssh and the server's name)"}}
	if r.Kind == book.CardKind {
		list = append(list, item("book print "+r.ID+" --pdf card.pdf"))
	} else {
		which = "--kind " + string(r.Kind) + " " + r.ID
	}
	return append(list, item("book delete "+which), item("book restore "+which))
}

func item(text string) report.Line { return report.Line{Kind: report.Item, Text: text} }

func beads(trials []Kept[book.Trial]) report.Said {
	list := report.Said{{Text: "test beads"}}
	for _, t := range trials {
		list = append(list, report.Line{Kind: report.Item, Text: t.Revision.At[:10] + " " + book.Summary(&t.Revision),
			AsTyped: true})
	}
	if len(trials) == 0 {
		list = append(list, item("none kept"))
	}
	return list
}

// today is how a kept card differs from what this program computes.
func today(ctx context.Context, c *book.Card) report.Said {
	list := report.Said{{Text: "this program today"}}
	diff, err := Today(ctx, c, nil)
	switch {
	case err != nil:
		return append(list, item("cannot compute a card for it: "+plain.Line(err.Error(), 200)))
	case len(diff) == 0:
		return append(list, item("no figure differs"))
	}
	for _, x := range diff {
		unit := quantity.Label(x.Unit, quantity.Metric)
		valued := func(v float64) string { return strings.TrimSpace(fmt.Sprintf("%.4g %s", v, unit)) }
		text := valued(x.A) + ", now " + valued(x.B)
		if x.A == 0 || x.B == 0 {
			text = x.Why
		}
		list = append(list, item(calc.FigureLabel(x.Name)+": "+text))
	}
	return list
}

// History is one line for each revision of a record, oldest first.
func History(list []book.Revision) report.Said {
	var said report.Said
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
		said = append(said, asTyped(fmt.Sprintf("%sZ %s: %s (by %s, version %s, revision %.8s)",
			h.At[:19], what, book.Summary(h), SavedBy(h), plain.Line(h.Program, 20), h.Rev)))
	}
	return said
}
