package book

import (
	"context"
	"encoding/csv"
	"errors"
	"io"
	"slices"
	"strings"

	"brazebooth/internal/plain"
)

var cardFigures = [...]string{"wire_feed", "volts", "travel", "current", "net_heat", "arc_on", "arc_off"}

// ExportCards writes the present cards as CSV: id, time, who, name, tags, note, the job's line, the verdict, then the
// main figures. Cells that a spreadsheet would take for a formula are escaped by plain.Cell. From a damaged book it
// writes what can be read; the error is then a *Missing.
func ExportCards(ctx context.Context, b Book, to io.Writer) (n int, err error) {
	out := csv.NewWriter(to)
	if err := out.Write(append([]string{"id", "at", "who", "name", "tags", "note", "job", "verdict"},
		cardFigures[:]...)); err != nil {
		return 0, err
	}
	err = Present(ctx, b, CardKind, func(r *Revision) error {
		n++
		c, err := Body[Card](r)
		if err != nil {
			return nil // not readable by this program; an export as JSON lines has it
		}
		return out.Write(cardRow(r, &c))
	})
	out.Flush()
	if failed := out.Error(); failed != nil {
		return n, failed
	}
	return n, err
}

func cardRow(r *Revision, c *Card) []string {
	_, line, _ := summary(r)
	row := []string{r.ID, r.At, plain.Cell(plain.Line(r.Who, 40)), plain.Cell(c.Name),
		plain.Cell(strings.Join(c.Tags, " ")), plain.Cell(c.Note), plain.Cell(line), plain.Cell(c.Card.Zone)}
	for _, name := range cardFigures {
		text := ""
		if i := slices.IndexFunc(c.Card.Figures, func(f Figure) bool { return f.Name == name }); i >= 0 {
			text = short(c.Card.Figures[i].Value)
		}
		row = append(row, text)
	}
	return row
}

// Present visits the records of a kind that are not deleted, newest first. If their list cannot be read, it finds them
// from the revisions, oldest first.
func Present(ctx context.Context, b Book, kind Kind, visit func(*Revision) error) error {
	seen := map[string]bool{}
	for {
		list, err := b.List(ctx, Query{Kind: kind, Limit: 500, Offset: len(seen)})
		for i := 0; i < len(list) && err == nil; i++ {
			var r Revision
			if r, err = b.Get(ctx, list[i].ID); err == nil {
				seen[r.ID] = true
				err = visit(&r)
			}
		}
		switch {
		case unreadablePage(err):
			return leavesOf(ctx, b, kind, seen, visit)
		case err != nil || len(list) == 0:
			return err
		}
	}
}

// leavesOf visits the newest revisions of a kind's records, except those that were seen already. It reads all revisions
// twice: first to find out which are the newest, then to visit them.
func leavesOf(ctx context.Context, b Book, kind Kind, seen map[string]bool, visit func(*Revision) error) error {
	newest := map[string]string{}
	replaced := map[string]bool{}
	err := b.Each(ctx, func(r Revision) error {
		replaced[r.Parent] = true
		if !replaced[r.Rev] {
			newest[r.ID] = r.Rev // in this order the last one is the head
		}
		return nil
	})
	var lost *Missing
	if err != nil && !errors.As(err, &lost) {
		return err
	}
	return b.Each(ctx, func(r Revision) error {
		if r.Kind != kind || r.Deleted || seen[r.ID] || newest[r.ID] != r.Rev {
			return nil
		}
		r.tame()
		return visit(&r)
	})
}
