package book

import (
	"cmp"
	"context"
	"database/sql"
	"encoding/binary"
	"fmt"
	"hash/fnv"

	"brazebooth/internal/plain"
)

// Missing is the error that lists what could not be read of a damaged book.
type Missing struct {
	Place string
	N     int      // revisions
	Lines []string // descriptions of the first ones
}

func (m *Missing) Error() string {
	what := "revisions of %s could not be read and were left out"
	if m.N == 1 {
		what = "revision of %s could not be read and was left out"
	}
	return fmt.Sprintf("%d "+what, m.N, m.Place)
}

func (m *Missing) add(why error) {
	m.N++
	if len(m.Lines) < mostFaults {
		m.Lines = append(m.Lines, plain.Line(why.Error(), 300))
	}
}

// err is the list as an error; nil if nothing is missing.
func (m *Missing) err() error {
	if m.N == 0 {
		return nil
	}
	return m
}

// Each skips revisions that cannot be read or are not what was saved; the error at the end is then a *Missing.
func (s *store) Each(ctx context.Context, visit func(Revision) error) error {
	lost := &Missing{Place: s.place}
	err := s.eachOr(ctx, func(r Revision) error {
		if err := r.Verify(); err != nil {
			lost.add(err)
			return nil
		}
		return visit(r)
	}, lost.add)
	if err != nil {
		return err
	}
	return lost.err()
}

// eachOr visits every revision that can be read, ordered by time, and reports the others to unreadable.
func (s *store) eachOr(ctx context.Context, visit func(Revision) error, unreadable func(error)) error {
	if s.name != sqlite.name {
		return s.stream(ctx, visit, unreadable)
	}
	order, err := s.order(ctx)
	if unreadablePage(err) {
		order, err = s.salvage(ctx, unreadable)
	}
	if err != nil {
		return err
	}
	return s.walk(ctx, order, visit, unreadable)
}

// stream visits the revisions while a server sends them; a slow reader does not make a server's log grow.
func (s *store) stream(ctx context.Context, visit func(Revision) error, unreadable func(error)) error {
	return each(ctx, s.read, func(rows *sql.Rows) error {
		r, err := scan(rows)
		if err != nil {
			unreadable(err)
			return nil
		}
		return visit(r)
	}, "SELECT "+revisionColumns+" FROM revisions ORDER BY at, rev")
}

// order lists the rows of a file's revisions by time, eight bytes each, so that the revisions themselves can be read
// one at a time. While a query is open SQLite keeps everything that is written in its log, so no query is left open
// while the caller works with what was read. A page may be sound and in a wrong place, such as after a write that a
// disk lost. SQLite reads them without an error, so the table is compared with its index.
func (s *store) order(ctx context.Context) ([]int64, error) {
	tx, err := s.read.BeginTx(ctx, s.snapshot)
	if err != nil {
		return nil, err
	}
	defer func() { _ = tx.Rollback() }() // it only reads
	var list []int64
	var held, told uint64
	err = numbered(ctx, tx, "SELECT rowid, rev FROM revisions NOT INDEXED ORDER BY at, rev", func(n int64, rev string) {
		list = append(list, n)
		held += mark(n, rev)
	})
	if err != nil {
		return nil, err
	}
	err = numbered(ctx, tx, "SELECT rowid, rev FROM revisions INDEXED BY "+byRev.name,
		func(n int64, rev string) { told += mark(n, rev) })
	if err == nil && held != told {
		err = errPlace
	}
	return list, err
}

// mark is a hash of a row's number and revision; equal sums of marks mean that two lists have the same rows, in any
// order.
func mark(n int64, rev string) uint64 {
	h := fnv.New64a()
	_, _ = h.Write(binary.LittleEndian.AppendUint64([]byte(rev), uint64(n))) // never fails
	return h.Sum64()
}

// numbered visits the rows of a query for a number and a text.
func numbered(ctx context.Context, q querier, query string, add func(n int64, text string), args ...any) error {
	return each(ctx, q, func(rows *sql.Rows) error {
		var n int64
		var text string
		if err := rows.Scan(&n, &text); err != nil {
			return misplaced(err)
		}
		add(n, text)
		return nil
	}, query, args...)
}

// walk visits the revisions of some rows and reads each with its own query: for several rows SQLite steps from a row to
// its neighbour in the page, and that page may be misplaced.
func (s *store) walk(ctx context.Context, order []int64, visit func(Revision) error, unreadable func(error)) error {
	ask, err := s.read.PrepareContext(ctx, "SELECT "+rowColumns+" FROM revisions WHERE rowid = $1")
	if err != nil {
		return err
	}
	defer ask.Close()
	bad := map[int64]error{}
	for _, n := range order {
		r, err := row(ctx, ask, n)
		switch {
		case err == nil:
			err = visit(r)
		case ctx.Err() != nil:
			err = ctx.Err()
		case r.Rev != "": // only its body is missing
			unreadable(err)
			continue
		case unreadablePage(err):
			bad[n] = err
			continue
		}
		if err != nil {
			return err
		}
	}
	return s.tell(ctx, bad, unreadable)
}

// row reads one row. A row that is not found by its number is damaged, since rows are never deleted.
func row(ctx context.Context, ask *sql.Stmt, n int64) (r Revision, err error) {
	rows, err := ask.QueryContext(ctx, n)
	if err != nil {
		return r, err
	}
	defer rows.Close()
	if !rows.Next() {
		return r, cmp.Or(rows.Err(), errPlace)
	}
	return scan(rows)
}
