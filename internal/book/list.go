package book

import (
	"context"
	"database/sql"
	"strings"
	"time"

	"brazebooth/internal/plain"
)

const (
	usualLimit = 50
	// fewWords is up to how many records with a word are gathered and sorted. For a commoner word the newest records
	// are looked through instead, since wanted ones come soon.
	fewWords = 3000
)

func (s *store) List(ctx context.Context, q Query) ([]Head, error) {
	if q.Limit <= 0 {
		q.Limit = usualLimit
	}
	list := words(q.Text)
	switch {
	case len(list) == 0 && strings.TrimSpace(q.Text) != "":
		return nil, nil // no letters or digits
	case len(list) == 0:
		return s.page(ctx, q, "heads", nil, "", nil)
	}
	rarest, n, err := s.rarest(ctx, list)
	if err != nil || n == 0 {
		return nil, err
	}
	var where strings.Builder
	from := "heads"
	var args, like []any
	for i, w := range list {
		if n < fewWords && i == rarest { // a cross join, so that SQLite goes through these records and no others
			from = "(SELECT DISTINCT n AS found FROM words WHERE word >= ? AND word < ?) f CROSS JOIN heads"
			where.WriteString(" AND n = found")
			args = append(args, w, w+"\U0010ffff")
			continue
		}
		where.WriteString(" AND words LIKE ?") // a word holds neither % nor _
		like = append(like, "% "+w+"%")
	}
	return s.page(ctx, q, from, args, where.String(), like)
}

// rarest is the word that begins the fewest words of records, and how many, up to fewWords.
func (s *store) rarest(ctx context.Context, list []string) (at, least int, err error) {
	least = -1
	for i, w := range list {
		var n int
		err := s.read.QueryRowContext(ctx,
			s.sql("SELECT count(*) FROM (SELECT 1 FROM words WHERE word >= ? AND word < ? LIMIT ?) x"), w, w+
				"\U0010ffff", fewWords).Scan(&n)
		if err != nil {
			return 0, 0, err
		}
		if least < 0 || n < least {
			at, least = i, n
		}
	}
	return at, least, nil
}

// page is one page of a query's results: from and where are the part for its words, each with its arguments.
func (s *store) page(ctx context.Context, q Query, from string, given []any, where string, args []any) ([]Head, error) {
	query := "SELECT id, rev, kind, at, deleted, name, line FROM " + from + " WHERE 1 = 1"
	if q.Kind != "" {
		query += " AND kind = ?"
		given = append(given, string(q.Kind))
	}
	if !q.Deleted {
		query += " AND deleted = 0"
	}
	given = append(given, args...)
	query += where + " ORDER BY at DESC, id DESC LIMIT ? OFFSET ?"
	rows, err := s.read.QueryContext(ctx, s.sql(query), append(given, q.Limit, q.Offset)...)
	if err != nil {
		return nil, err
	}
	return heads(rows)
}

func (s *store) Begun(ctx context.Context, kind Kind, prefix string) ([]Head, error) {
	rows, err := s.read.QueryContext(ctx, s.sql("SELECT id, rev, kind, at, deleted, name, line FROM heads WHERE kind "+
		"= ? AND id >= ? AND id < ? ORDER BY id LIMIT 6"), string(kind), prefix, prefix+"g")
	if err != nil {
		return nil, err
	}
	return heads(rows)
}

func heads(rows *sql.Rows) ([]Head, error) {
	defer rows.Close()
	var list []Head
	for rows.Next() {
		var h Head
		var kind string
		var deleted int
		if err := rows.Scan(&h.ID, &h.Rev, &kind, &h.At, &deleted, &h.Name, &h.Line); err != nil {
			return nil, misplaced(err)
		}
		h.Kind, h.Deleted = Kind(plain.Line(kind, 10)), deleted != 0
		h.ID, h.Rev, h.Name, h.Line = plain.Line(h.ID, 16), plain.Line(h.Rev, 32), plain.Line(h.Name,
			nameWidth), plain.Line(h.Line, 200)
		if h.At != stampOf(h.At) { // made by another program
			h.At = stamp(time.Time{})
		}
		list = append(list, h)
	}
	return list, rows.Err()
}
