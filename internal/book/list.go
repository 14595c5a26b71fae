package book

import (
	"context"
	"database/sql"
	"strconv"
	"strings"

	"brazebooth/internal/plain"
)

const (
	usualLimit = 50
	// fewWords is the most records with a word that are gathered and sorted. For a more frequent word the newest
	// records are scanned instead, since matches come soon.
	fewWords = 3000
)

// headColumns are the columns that head reads.
const headColumns = "id, rev, kind, at, deleted, name, line"

func (s *store) List(ctx context.Context, q Query) ([]Head, error) {
	list := words(q.Text)
	if len(list) == 0 && strings.TrimSpace(q.Text) != "" {
		return nil, nil // no letters or digits
	}
	var args []any
	arg := func(v any) string {
		args = append(args, v)
		return "$" + strconv.Itoa(len(args))
	}
	from, where := "heads", "1 = 1"
	rarest, n, err := s.rarest(ctx, list)
	if err != nil || n == 0 && len(list) > 0 {
		return nil, err
	}
	for i, w := range list {
		if n < fewWords && i == rarest { // a cross join makes SQLite visit only these records
			from = "(SELECT DISTINCT n AS found FROM words WHERE word >= " + arg(w) +
				" AND word < " + arg(w+lastLetter) + ") f CROSS JOIN heads"
			where += " AND n = found"
			continue
		}
		where += " AND words LIKE " + arg("% "+w+"%") // a word holds neither % nor _
	}
	if q.Kind != "" {
		where += " AND kind = " + arg(string(q.Kind))
	}
	if !q.Deleted {
		where += " AND deleted = 0"
	}
	if q.Limit <= 0 {
		q.Limit = usualLimit
	}
	return all(ctx, s.read, head, "SELECT "+headColumns+" FROM "+from+" WHERE "+where+
		" ORDER BY at DESC, id DESC LIMIT "+arg(q.Limit)+" OFFSET "+arg(q.Offset), args...)
}

// lastLetter sorts after every letter with which a begun word may continue.
const lastLetter = "\U0010ffff"

// rarest is the search word that matches the fewest records, by its index, and how many, up to fewWords.
func (s *store) rarest(ctx context.Context, list []string) (at, least int, err error) {
	least = fewWords
	for i, w := range list {
		var n int
		err := s.read.QueryRowContext(ctx,
			"SELECT count(*) FROM (SELECT 1 FROM words WHERE word >= $1 AND word < $2 LIMIT $3) x",
			w, w+lastLetter, fewWords).Scan(&n)
		if err != nil {
			return 0, 0, err
		}
		if n < least {
			at, least = i, n
		}
	}
	return at, least, nil
}

func (s *store) Begun(ctx context.Context, kind Kind, prefix string) ([]Head, error) {
	return all(ctx, s.read, head, "SELECT "+headColumns+
		" FROM heads WHERE kind = $1 AND id >= $2 AND id < $3 ORDER BY id LIMIT 6", string(kind), prefix, prefix+"g")
}

func head(rows *sql.Rows) (h Head, err error) {
	var kind string
	var deleted int
	if err := rows.Scan(&h.ID, &h.Rev, &kind, &h.At, &deleted, &h.Name, &h.Line); err != nil {
		return h, misplaced(err)
	}
	r := Revision{ID: h.ID, Rev: h.Rev, Kind: Kind(kind), At: h.At}
	r.tame() // another program may have written it
	name, line := plain.Line(h.Name, nameWidth), plain.Line(h.Line, lineWidth)
	return Head{r.ID, r.Rev, r.Kind, r.At, name, line, deleted != 0}, nil
}
