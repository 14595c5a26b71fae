package book

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strings"

	"brazebooth/internal/plain"
)

// engine has the differences between the two databases.
type engine struct {
	name     string
	lock     string                        // locks a record by its id; "" where any writer locks the file
	exists   string                        // query that tells whether a table exists, its name the argument
	own      *strings.Replacer             // writes the statements that make tables in its own words
	spread   func(words, as string) string // table of one column, value, from a text of words with blanks between
	snapshot *sql.TxOptions                // transaction in which all queries see the same state
}

// store is a book in a database: one connection to write, others to read.
type store struct {
	engine
	connections
	place    string       // for messages
	readOnly string       // why nothing can be saved, "" if saving works
	closing  func() error // ends this use of the book; more calls change nothing
}

func (s *store) Where() string { return s.place }
func (s *store) Close() error  { return s.closing() }

// querier is a database or a transaction in it.
type querier interface {
	QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error)
	QueryRowContext(ctx context.Context, query string, args ...any) *sql.Row
	ExecContext(ctx context.Context, query string, args ...any) (sql.Result, error)
}

// each visits the rows of a query.
func each(ctx context.Context, q querier, visit func(*sql.Rows) error, query string, args ...any) error {
	rows, err := q.QueryContext(ctx, query, args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		if err := visit(rows); err != nil {
			return err
		}
	}
	return rows.Err()
}

// all reads every row of a query.
func all[T any](ctx context.Context, q querier, read func(*sql.Rows) (T, error), query string, args ...any) (
	list []T, err error) {
	err = each(ctx, q, func(rows *sql.Rows) error {
		v, err := read(rows)
		list = append(list, v)
		return err
	}, query, args...)
	return list, err
}

const revisionColumns = "rev, id, parent, kind, at, who, place, program, schema, deleted, body"

// rowColumns are the same columns for reading; NULL replaces a body that is longer than any packed body.
var rowColumns = strings.Replace(revisionColumns, "body",
	fmt.Sprintf("CASE WHEN length(body) <= %d THEN body END", largestPacked), 1)

// Get checks that the record is the one that was asked for: a damaged index may lead to another one.
func (s *store) Get(ctx context.Context, id string) (Revision, error) { return s.get(ctx, s.read, id) }

func (s *store) get(ctx context.Context, q querier, id string) (Revision, error) {
	r, err := one(ctx, q, "SELECT "+rowColumns+" FROM revisions WHERE rev = (SELECT rev FROM heads WHERE id = $1)", id)
	if err == nil {
		err = s.same(&r, id)
	}
	if errors.Is(err, ErrNone) && some(ctx, q, "SELECT count(*) FROM heads WHERE id = $1", id) {
		err = s.damaged(id, "its present revision is gone")
	}
	r.tame()
	return r, err
}

// some reports whether a query that counts gives more than 0.
func some(ctx context.Context, q querier, query string, args ...any) bool {
	var n int
	return q.QueryRowContext(ctx, query, args...).Scan(&n) == nil && n > 0
}

// same returns an error if a revision is not one of the record, or not what was saved.
func (s *store) same(r *Revision, id string) error {
	switch {
	case r.ID != id:
		return s.damaged(id, "another record lies in its place")
	case r.hash() != r.Rev:
		return s.damaged(id, "it is not what was saved")
	}
	return nil
}

// damaged is the error for a record that cannot be shown as it was saved.
func (s *store) damaged(id, what string) error {
	return &Unreadable{Place: plain.Line(s.place, 200), What: fmt.Sprintf("is damaged at record %s: %s",
		plain.Line(id, 16), what), part: true}
}

func (s *store) History(ctx context.Context, id string) ([]Revision, error) {
	list, err := all(ctx, s.read, scan, "SELECT "+rowColumns+" FROM revisions WHERE id = $1 ORDER BY at, rev", id)
	if err == nil && len(list) == 0 {
		err = ErrNone
	}
	for i := range list {
		if err == nil {
			err = s.same(&list[i], id)
		}
		list[i].tame()
	}
	return list, err
}
