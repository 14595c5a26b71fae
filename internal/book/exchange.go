package book

import (
	"bufio"
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"

	"brazebooth/internal/plain"
)

// IsServer reports whether a book is on a server rather than in a file.
func IsServer(where string) bool {
	where = strings.ToLower(where)
	return strings.HasPrefix(where, "postgres://") || strings.HasPrefix(where, "postgresql://")
}

// Export writes every revision as one JSON object a line, in a fixed order: what is imported from it and exported
// again is the same to the byte.
func Export(ctx context.Context, b Book, to io.Writer) (n int, err error) {
	out := bufio.NewWriter(to)
	err = b.Each(ctx, func(r Revision) error {
		line, err := compactJSON(r)
		if err != nil {
			return err
		}
		n++
		_, err = out.Write(append(line, '\n'))
		return err
	})
	return n, errors.Join(err, out.Flush())
}

// longestLine is the most that a line of an export may hold.
const longestLine = 2 * largestBody

// Import keeps every revision of an export that the book does not have. A line that is no revision, or not the one
// that was saved, ends it with its number; what came before stays.
func Import(ctx context.Context, b Book, from io.Reader) (n int, err error) {
	in := bufio.NewReaderSize(from, 1<<16)
	var batch []Revision
	flush := func() error {
		err := b.Save(ctx, batch...)
		if err == nil {
			n += len(batch)
		}
		batch = batch[:0]
		return err
	}
	for line := 1; ; line++ {
		text, err := nextLine(in)
		if line == 1 {
			text = bytes.TrimPrefix(text, []byte("\ufeff"))
		}
		var r Revision
		switch {
		case errors.Is(err, io.EOF):
			err = flush()
			return n, err
		case err != nil:
			err = fmt.Errorf("line %d: %w", line, err)
		case len(bytes.TrimSpace(text)) == 0:
			continue
		default:
			r, err = revisionOn(text, line)
		}
		if err != nil {
			err = errors.Join(flush(), err)
			return n, err
		}
		if batch = append(batch, r); len(batch) < 500 {
			continue
		}
		if err := flush(); err != nil {
			return n, err
		}
	}
}

// revisionOn reads a line of an export.
func revisionOn(text []byte, line int) (r Revision, err error) {
	if err := json.Unmarshal(text, &r); err != nil {
		return r, fmt.Errorf("line %d is no revision of a book: %w", line, err)
	}
	if err := r.Verify(); err != nil {
		return r, fmt.Errorf("line %d: %w", line, err)
	}
	return r, nil
}

// nextLine is the next line, which lives until the one after it; io.EOF behind the last.
func nextLine(in *bufio.Reader) ([]byte, error) {
	text, err := in.ReadSlice('\n')
	if errors.Is(err, bufio.ErrBufferFull) {
		text = bytes.Clone(text)
	}
	for errors.Is(err, bufio.ErrBufferFull) {
		if len(text) > longestLine {
			return nil, fmt.Errorf("longer than any revision (%d MB): an export has one on each line", longestLine>>20)
		}
		var more []byte
		more, err = in.ReadSlice('\n')
		text = append(text, more...)
	}
	if errors.Is(err, io.EOF) && len(text) > 0 {
		err = nil
	}
	return text, err
}

// Merge keeps in one book every revision of another: the same one once, none lost. Where both changed a record the
// later change is its head, and its history shows both.
func Merge(ctx context.Context, into, from Book) (n int, err error) {
	var batch []Revision
	flush := func() error {
		err := into.Save(ctx, batch...)
		batch = batch[:0]
		return err
	}
	err = from.Each(ctx, func(r Revision) error {
		if err := r.Verify(); err != nil {
			return err
		}
		n++
		batch = append(batch, r)
		if len(batch) < 500 {
			return nil
		}
		return flush()
	})
	return n, errors.Join(err, flush())
}

// ExportCards writes the present cards as CSV: id, time, who, name, tags, note, the job's line, the verdict, then the main
// figures. Cells that a spreadsheet would take for a formula are escaped by plain.Cell.
func ExportCards(ctx context.Context, b Book, to io.Writer) (n int, err error) {
	out := csv.NewWriter(to)
	names := [...]string{"wire_feed", "volts", "travel", "current", "net_heat", "arc_on", "arc_off"}
	if err := out.Write(append([]string{"id", "at", "who", "name", "tags", "note", "job", "verdict"}, names[:]...)); err != nil {
		return 0, err
	}
	for {
		list, err := b.List(ctx, Query{Kind: CardKind, Limit: 500, Offset: n})
		if err != nil || len(list) == 0 {
			out.Flush()
			return n, errors.Join(err, out.Error())
		}
		for _, h := range list {
			r, err := b.Get(ctx, h.ID)
			if err != nil {
				return n, err
			}
			c, err := Body[Card](&r)
			n++
			if err != nil {
				continue // somebody else's: JSON lines have it
			}
			row := []string{r.ID, r.At, plain.Cell(plain.Line(r.Who, 40)), plain.Cell(c.Name), plain.Cell(strings.Join(c.Tags, " ")), plain.Cell(c.Note), plain.Cell(h.Line), plain.Cell(c.Card.Zone)}
			for _, name := range names {
				row = append(row, figureText(&c.Card, name))
			}
			if err := out.Write(row); err != nil {
				return n, err
			}
		}
	}
}

func figureText(k *Kept, name string) string {
	for _, f := range k.Figures {
		if f.Name == name {
			return short(f.Value)
		}
	}
	return ""
}
