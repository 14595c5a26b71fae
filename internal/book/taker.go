package book

import (
	"context"
	"errors"
	"fmt"
)

// taker saves revisions into a book in batches, and never holds more of them than its limits.
type taker struct {
	ctx   context.Context
	into  Book
	bad   func(line int, err error) // called for each refused revision
	n     int                       // how many are in the book so far
	list  []Revision
	lines []int // line number of each in an import; 0 for none
	bytes int
}

const (
	mostTaken = 500     // revisions in a transaction
	mostBytes = 1 << 19 // bytes of their bodies, unless a single one is larger
)

// take adds one more, unless it has an error or a fault; it is in the book after flush at the latest.
func (t *taker) take(line int, r Revision, err error) error {
	if err == nil {
		err = r.admit()
	}
	if err != nil {
		t.bad(line, err)
		return nil
	}
	t.list, t.lines = append(t.list, r), append(t.lines, line)
	if t.bytes += len(r.Body); len(t.list) < mostTaken && t.bytes < mostBytes {
		return nil
	}
	return t.flush()
}

// flush saves the waiting revisions. If the book refuses them together, each is tried alone, so that only the bad ones
// are left out. It returns only errors that stop the whole import.
func (t *taker) flush() error {
	list, lines := t.list, t.lines
	t.list, t.lines, t.bytes = t.list[:0], t.lines[:0], 0
	if len(list) == 0 {
		return nil
	}
	defer clear(list) // frees their bodies
	together := t.into.Save(t.ctx, list...)
	if together == nil {
		t.n += len(list)
		return nil
	}
	for i := range list {
		err := together
		if len(list) > 1 && !t.hindered(together) {
			err = t.into.Save(t.ctx, list[i])
		}
		switch {
		case err == nil:
			t.n++
		case !t.hindered(err):
			t.bad(lines[i], err)
		case lines[i] == 0 || t.ctx.Err() != nil:
			return err
		default:
			return fmt.Errorf("nothing was saved from line %d on: %w", lines[i], err)
		}
	}
	return nil
}

// hindered reports whether an error is not the fault of the revisions, such as a full disk.
func (t *taker) hindered(err error) bool {
	return errors.Is(err, errUnheard) || t.ctx.Err() != nil || sqliteCode(err) != 0 || silent(err) ||
		errors.Is(err, ErrReadOnly) || errors.Is(err, errClosed)
}
