package book

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"

	"brazebooth/internal/plain"
)

// Missing is what of a damaged book could not be had.
type Missing struct {
	Place string
	N     int      // revisions
	Lines []string // what is known of them, the first few
	found bool     // in a copy that was made and then read
}

func (m *Missing) Error() string {
	if m.found {
		return fmt.Sprintf("the copy %s was made, and %d faults were found in it", m.Place, m.N)
	}
	what := "revisions of %s could not be read and were left out"
	if m.N == 1 {
		what = "revision of %s could not be read and was left out"
	}
	return fmt.Sprintf("%d "+what, m.N, m.Place)
}

// add notes a revision that cannot be had.
func (m *Missing) add(why error) {
	m.N++
	if len(m.Lines) < mostFaults {
		m.Lines = append(m.Lines, plain.Line(why.Error(), 300))
	}
}

// err is the whole as an error, nil where nothing is missing.
func (m *Missing) err() error {
	if m.N == 0 {
		return nil
	}
	return m
}

// Each goes on past what cannot be read or is not what was saved, and says so at the end: the error is a *Missing then.
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

// eachOr hands out every revision that can be read, in the order of their times, and what is wrong with the others.
func (s *store) eachOr(ctx context.Context, visit func(Revision) error, unreadable func(error)) error {
	if s.name != sqlite.name {
		return s.stream(ctx, visit, unreadable)
	}
	order, err := s.order(ctx)
	if err != nil && unreadablePage(err) {
		order, err = s.salvage(ctx, unreadable)
	}
	if err != nil {
		return err
	}
	return s.walk(ctx, order, visit, unreadable)
}

// stream hands out what a server sends; a server keeps no log waiting for who reads slowly.
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

// order lists the rows of a file's revisions by their times: eight bytes for each, so that the revisions themselves can be
// read a few at a time. While a query is open SQLite keeps all that is written meanwhile in its log, so none is left open
// while somebody else does something with what was read.
func (s *store) order(ctx context.Context) ([]int64, error) {
	rows, err := s.read.QueryContext(ctx, "SELECT rowid FROM revisions ORDER BY at, rev")
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var list []int64
	for rows.Next() {
		var n int64
		if err := rows.Scan(&n); err != nil {
			return nil, err
		}
		list = append(list, n)
	}
	return list, rows.Err()
}

const (
	fewRows  = 256     // rows that are read at a time
	fewBytes = 1 << 20 // and what they may take, packed
)

// walk hands out the revisions of some rows, a few read at a time.
func (s *store) walk(ctx context.Context, order []int64, visit func(Revision) error, unreadable func(error)) error {
	for len(order) > 0 {
		few := order[:min(len(order), fewRows)]
		read, err := s.rows(ctx, few)
		if err != nil && unreadablePage(err) {
			read, err = s.rowByRow(ctx, few, unreadable)
			order = order[len(few):]
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

// errGone is what rows that were listed a moment ago and are not there any more are called: nothing deletes any.
var errGone = errors.New("a row of the book is gone: brazebooth book check says more")

// rows reads the rows of a list from its beginning, as many as are read at a time.
func (s *store) rows(ctx context.Context, list []int64) ([]row, error) {
	numbers, err := json.Marshal(list)
	if err != nil {
		return nil, err
	}
	found, err := s.read.QueryContext(ctx, "SELECT "+rowColumns+" FROM (SELECT key AS nth, value AS n FROM json_each(?)) j CROSS JOIN revisions ON revisions.rowid = j.n ORDER BY j.nth", string(numbers))
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
		bytes += len(r.packed)
	}
	if err := found.Err(); err != nil {
		return nil, err
	}
	if len(read) == 0 {
		return nil, errGone
	}
	return read, nil
}

// rowByRow reads the rows of a list each by itself, past those that cannot be read.
func (s *store) rowByRow(ctx context.Context, list []int64, unreadable func(error)) ([]row, error) {
	var read []row
	bad := map[int64]error{}
	for _, n := range list {
		found, err := s.rows(ctx, []int64{n})
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		if err != nil {
			bad[n] = err
			continue
		}
		read = append(read, found...)
	}
	return read, s.tell(ctx, bad, unreadable)
}
