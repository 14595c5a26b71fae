package book

import (
	"context"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"hash/fnv"

	"brazebooth/internal/plain"
)

// Missing is the error that lists what could not be read of a damaged book.
type Missing struct {
	Place string
	N     int      // revisions
	Lines []string // what is known of the first few
}

func (m *Missing) Error() string {
	what := "revisions of %s could not be read and were left out"
	if m.N == 1 {
		what = "revision of %s could not be read and was left out"
	}
	return fmt.Sprintf("%d "+what, m.N, m.Place)
}

// add notes a revision that cannot be read.
func (m *Missing) add(why error) {
	m.N++
	if len(m.Lines) < mostFaults {
		m.Lines = append(m.Lines, plain.Line(why.Error(), 300))
	}
}

// err is the list as an error, nil where nothing is missing.
func (m *Missing) err() error {
	if m.N == 0 {
		return nil
	}
	return m
}

// Each skips what cannot be read or is not what was saved, and says so at the end: the error is then a *Missing.
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

// eachOr hands out every revision that can be read, ordered by time, and what is wrong with the others.
func (s *store) eachOr(ctx context.Context, visit func(Revision) error, unreadable func(error)) error {
	if s.name != sqlite.name {
		return s.stream(ctx, visit, unreadable)
	}
	order, err := s.order(ctx)
	few := fewRows
	if unreadablePage(err) {
		// Asked for several rows, SQLite steps from a row to its neighbour in the page, and that page may be misplaced.
		few = 1
		order, err = s.salvage(ctx, unreadable)
	}
	if err != nil {
		return err
	}
	return s.walk(ctx, order, few, visit, unreadable)
}

// stream hands out what a server sends; a slow reader keeps no log of a server from shrinking.
func (s *store) stream(ctx context.Context, visit func(Revision) error, unreadable func(error)) error {
	rows, err := s.read.QueryContext(ctx, "SELECT "+revisionColumns+" FROM revisions ORDER BY at, rev")
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		r, err := scan(rows)
		if err != nil {
			unreadable(err)
			continue
		}
		if err := visit(r); err != nil {
			return err
		}
	}
	return rows.Err()
}

// order lists the rows of a file's revisions by time, eight bytes each, so that the revisions themselves can be read
// a few at a time. While a query is open SQLite keeps everything that is written in its log, so no query is left open
// while the caller works with what was read. A page may be sound and in a wrong place, such as after a write that a
// disk lost. SQLite reads on there without an error, so the table is compared with what its index tells.
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

// mark is a number that tells a row with its revision from any other; the sum of many tells whether two lists hold
// the same, in any order.
func mark(n int64, rev string) uint64 {
	h := fnv.New64a()
	_, _ = h.Write(binary.LittleEndian.AppendUint64([]byte(rev), uint64(n))) // never fails
	return h.Sum64()
}

// numbered hands out the rows of a query for a number and a text.
func numbered(ctx context.Context, q querier, query string, add func(n int64, text string), args ...any) error {
	rows, err := q.QueryContext(ctx, query, args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		var n int64
		var text string
		if err := rows.Scan(&n, &text); err != nil {
			return misplaced(err)
		}
		add(n, text)
	}
	return rows.Err()
}

const (
	fewRows  = 256     // rows that are read at a time
	fewBytes = 1 << 20 // their packed bytes
)

// walk hands out the revisions of some rows, reading a few at a time.
func (s *store) walk(ctx context.Context, order []int64, most int, visit func(Revision) error,
	unreadable func(error)) error {
	for len(order) > 0 {
		few := order[:min(len(order), most)]
		read, err := s.rows(ctx, few)
		if err != nil && unreadablePage(err) {
			var done int
			read, done, err = s.rowByRow(ctx, few, unreadable)
			order = order[done:]
		} else {
			order = order[len(read):]
		}
		if err != nil {
			return err
		}
		for i := range read {
			r, err := read[i].revision()
			if err != nil {
				unreadable(err)
				continue
			}
			if err := visit(r); err != nil {
				return err
			}
		}
	}
	return nil
}

// rows reads the first few rows of a list. A row that is not found by its number is an error, since rows are never
// deleted. They come in the order of the list, because the list is the outer loop of the query; if SQLite had to sort
// them, it would read them all first.
func (s *store) rows(ctx context.Context, list []int64) ([]row, error) {
	numbers, err := json.Marshal(list)
	if err != nil {
		return nil, err
	}
	found, err := s.read.QueryContext(ctx, "SELECT "+rowColumns+
		" FROM (SELECT value AS n FROM json_each(?)) j LEFT JOIN revisions ON revisions.rowid = j.n", string(numbers))
	if err != nil {
		return nil, err
	}
	defer found.Close()
	var read []row
	for bytes := 0; bytes < fewBytes && found.Next(); {
		r, err := scanRow(found)
		if err != nil {
			return nil, err
		}
		read = append(read, r)
		bytes += r.size()
	}
	return read, found.Err()
}

// rowByRow reads the rows of a list one by one, skips those that cannot be read, and returns how many rows it went
// through.
func (s *store) rowByRow(ctx context.Context, list []int64, unreadable func(error)) (read []row, done int, err error) {
	bad := map[int64]error{}
	for bytes := 0; bytes < fewBytes && done < len(list); done++ {
		n := list[done]
		found, err := s.rows(ctx, []int64{n})
		if ctx.Err() != nil {
			return nil, done, ctx.Err()
		}
		if err != nil {
			bad[n] = err
			continue
		}
		read = append(read, found...)
		bytes += found[0].size()
	}
	return read, done, s.tell(ctx, bad, unreadable)
}
