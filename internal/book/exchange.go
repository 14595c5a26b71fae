package book

import (
	"bufio"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"brazebooth/internal/crew"
	"brazebooth/internal/plain"
)

// Export writes every revision as one JSON object a line, in a fixed order: an import of it exports the same bytes
// again. From a damaged book it writes what can be read; the error is then a *Missing.
func Export(ctx context.Context, b Book, to io.Writer) (n int, err error) {
	out := bufio.NewWriter(to)
	err = b.Each(ctx, func(r Revision) error {
		n++
		return writeLine(out, r)
	})
	if failed := out.Flush(); failed != nil {
		return n, failed
	}
	return n, err
}

func writeLine(to io.Writer, r Revision) error {
	line, err := compactJSON(r)
	if err == nil {
		_, err = to.Write(append(line, '\n'))
	}
	return err
}

// LeftOut is the error that lists the lines of an import that were refused; the others are in the book.
type LeftOut struct {
	Lines []string // what is wrong with each
	More  bool     // reading stopped after too many bad lines
}

func (l *LeftOut) Error() string {
	if len(l.Lines) == 1 {
		return "1 line was left out"
	}
	return fmt.Sprintf("%d lines were left out", len(l.Lines))
}

// mostBad is how many bad lines end an import: a file with more is not an export.
const mostBad = 20

// Import saves every revision of an export that the book does not have yet. A line that is not a revision, or not as it
// was saved, is left out; the error, a *LeftOut, gives its number. n is how many of the lines are then in the book.
func Import(ctx context.Context, b Book, from io.Reader) (n int, err error) {
	in := bufio.NewReaderSize(from, longestLine)
	if begin, _ := in.Peek(len(byteOrderMark)); string(begin) == byteOrderMark {
		_, _ = in.Discard(len(byteOrderMark)) // Peek has just seen it
	}
	out := new(LeftOut)
	to := taker{ctx: ctx, into: b, bad: func(line int, err error) {
		out.Lines = append(out.Lines, fmt.Sprintf("line %d: %s", line, plain.Line(err.Error(), 300)))
	}}
	for line := 1; len(out.Lines) < mostBad; line++ {
		text, long, err := crew.Line(in)
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return to.n, err
		}
		if !long && len(text) == 0 {
			continue
		}
		var r Revision
		if err = json.Unmarshal(text, &r); err != nil {
			err = fmt.Errorf("this is not a revision of a book: %w", err)
		}
		if long {
			err = errLong
		}
		if err = to.take(line, r, err); err != nil {
			return to.n, err
		}
	}
	if err := to.flush(); err != nil {
		return to.n, err
	}
	if len(out.Lines) == 0 {
		return to.n, nil
	}
	out.More = len(out.Lines) >= mostBad
	return to.n, out
}

// longestLine is the most bytes of a line of an export: a body and the fields around it.
const longestLine = largestBody + 4<<10

// byteOrderMark is put before a text by some editors.
const byteOrderMark = "\ufeff"

var errLong = fmt.Errorf("longer than any revision (%d MB): an export has one on each line", largestBody>>20)

// Merge saves into one book every revision of another that it does not have yet. If both changed a record, the later
// change is its head, and its history shows both. Revisions that cannot be read or are not valid are left out; the
// error is then a *Missing.
func Merge(ctx context.Context, into, from Book) (n int, err error) {
	lost := &Missing{Place: from.Where()}
	to := taker{ctx: ctx, into: into, bad: func(_ int, err error) { lost.add(err) }}
	err = from.Each(ctx, func(r Revision) error { return to.take(0, r, nil) })
	var unread *Missing
	if err != nil && !errors.As(err, &unread) {
		return to.n, err
	}
	if err := to.flush(); err != nil {
		return to.n, err
	}
	if unread != nil {
		lost.N += unread.N
		lost.Lines = append(unread.Lines, lost.Lines...)
	}
	return to.n, lost.err()
}
