package book

import (
	"database/sql"

	"brazebooth/internal/plain"
)

// row is a revision as stored in the book.
type row struct {
	rev    Revision // without its body
	packed []byte
}

// size is how many bytes the row takes.
func (r *row) size() int {
	v := &r.rev
	return len(r.packed) + len(v.Rev) + len(v.ID) + len(v.Parent) + len(v.Kind) + len(v.At) +
		len(v.Who) + len(v.Where) + len(v.Program)
}

// revision is the row with its body.
func (r *row) revision() (Revision, error) {
	body, err := unpack(r.packed)
	r.rev.Body = body
	if err != nil {
		err = &Unreadable{Place: "revision " + plain.Line(r.rev.Rev, 32) + " of " + plain.Line(r.rev.ID, 16),
			What: "has a body that cannot be read: " + err.Error(), cause: err, part: true}
	}
	return r.rev, err
}

// scanRow reads a row of rowColumns.
func scanRow(rows *sql.Rows) (row, error) {
	var r row
	var kind string
	var deleted int
	v := &r.rev
	err := rows.Scan(&v.Rev, &v.ID, &v.Parent, &kind, &v.At, &v.Who, &v.Where, &v.Program, &v.Schema, &deleted, &r.packed)
	if err != nil {
		return r, misplaced(err)
	}
	v.Kind, v.Deleted = Kind(kind), deleted != 0
	return r, nil
}

// scan reads a revision.
func scan(rows *sql.Rows) (Revision, error) {
	r, err := scanRow(rows)
	if err != nil {
		return r.rev, err
	}
	return r.revision()
}

// revisions reads and closes rows of revisionColumns.
func revisions(rows *sql.Rows) ([]Revision, error) {
	defer rows.Close()
	var list []Revision
	for rows.Next() {
		r, err := scan(rows)
		if err != nil {
			return nil, err
		}
		list = append(list, r)
	}
	return list, rows.Err()
}

// one reads the first of some rows and closes them; ErrNone where there is none.
func one(rows *sql.Rows) (Revision, error) {
	list, err := revisions(rows)
	if err == nil && len(list) == 0 {
		err = ErrNone
	}
	if err != nil {
		return Revision{}, err
	}
	return list[0], nil
}
