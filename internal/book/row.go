package book

import (
	"context"
	"database/sql"

	"brazebooth/internal/plain"
)

// scan reads a row of rowColumns. If only the body cannot be read, it returns the revision without it and an error.
func scan(rows *sql.Rows) (r Revision, err error) {
	var deleted int
	var packed []byte
	err = rows.Scan(&r.Rev, &r.ID, &r.Parent, &r.Kind, &r.At, &r.Who, &r.Where, &r.Program, &r.Schema, &deleted,
		&packed)
	if err != nil {
		return Revision{}, misplaced(err)
	}
	r.Deleted = deleted != 0
	if r.Body, err = unpack(packed); err != nil {
		err = &Unreadable{Place: "revision " + plain.Line(r.Rev, 32) + " of " + plain.Line(r.ID, 16),
			What: "has a body that cannot be read: " + err.Error(), cause: err, part: true}
	}
	return r, err
}

// one reads the first revision of a query, like scan; ErrNone if there is none.
func one(ctx context.Context, q querier, query string, args ...any) (Revision, error) {
	list, err := all(ctx, q, scan, query, args...)
	switch {
	case len(list) > 0:
		return list[0], err
	case err == nil:
		err = ErrNone
	}
	return Revision{}, err
}
