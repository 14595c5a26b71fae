package book

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"maps"
	"slices"
)

// errPlace is why a row cannot be read whose page is damaged, or holds something else.
var errPlace error = &Unreadable{Place: "its place in the file", What: "is damaged", part: true}

// misplaced is what is said of a row that cannot be read as one of its table: a page that is sound, and another table's.
func misplaced(err error) error {
	if errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded) {
		return err
	}
	return errPlace
}

// timed is a row with what it is ordered by.
type timed struct {
	n       int64
	at, rev string
}

func (a timed) compare(b timed) int {
	return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.rev, b.rev))
}

// How far more rows are looked for where the table itself tells no last one: behind the last that the indexes tell, and where
// they tell none either. What is read of an index is as if drawn by lot, since it has its rows in no order of their numbers:
// of k rows the last lies one k-th before the last of all on average, and twenty times that before it hardly ever.
const (
	further = 1000
	blind   = 20_000
)

// salvage lists the rows of a damaged book by their times: each is asked for by its number, so that a page that cannot be
// read hides no other. The indexes tell which there were: what lies where another revision should is had, and that other
// one is missing.
func (s *store) salvage(ctx context.Context, unreadable func(error)) ([]int64, error) {
	bad := map[int64]error{} // at first all that there were
	revs := map[int64]string{}
	err := s.indexed(ctx, func(n int64, from index, key string) {
		bad[n] = errPlace
		if from == byRev {
			revs[n] = key
		}
	})
	if err != nil {
		return nil, err
	}
	numbers := maps.Clone(bad)
	for n := range s.last(ctx, bad) {
		numbers[n+1] = nil
	}
	var found []timed
	had := map[string]bool{}
	for n := range numbers {
		t := timed{n: n}
		err := s.read.QueryRowContext(ctx, "SELECT at, rev FROM revisions WHERE rowid = ?", n).Scan(&t.at, &t.rev)
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		if err == nil {
			found, had[t.rev] = append(found, t), true
		}
	}
	for _, t := range found {
		if rev := revs[t.n]; rev == "" || had[rev] {
			delete(bad, t.n)
		}
	}
	maps.DeleteFunc(bad, func(n int64, _ error) bool { return had[revs[n]] })
	return inTime(found), s.tell(ctx, bad, unreadable)
}

// inTime are the numbers of rows, each revision once, by their times.
func inTime(found []timed) []int64 {
	slices.SortFunc(found, timed.compare)
	found = slices.CompactFunc(found, func(a, b timed) bool { return a.rev == b.rev })
	list := make([]int64, len(found))
	for i := range found {
		list[i] = found[i].n
	}
	return list
}

// last is the highest number of a row that there may be. One far beyond what the indexes count is not believed.
func (s *store) last(ctx context.Context, listed map[int64]error) (n int64) {
	counted := int64(len(listed))
	if s.read.QueryRowContext(ctx, "SELECT COALESCE(max(rowid), 0) FROM revisions").Scan(&n) != nil { // it lies in what is damaged
		n = blind
		if counted > 0 {
			n = slices.Max(slices.Collect(maps.Keys(listed)))
			n += 20*n/counted + further
		}
	}
	return min(n, 2*counted+1_000_000)
}

// index is one of those of revisions; each holds the rows' numbers beside its column.
type index struct{ column, name string }

var (
	byRev = index{"rev", "sqlite_autoindex_revisions_1"}
	byID  = index{"id", "revisions_id"}
)

// indexed hands out what the indexes of revisions hold. A query ends where it meets a page that it cannot read, so an
// index is asked piece by piece there: what one digit begins, and of that piece by piece again.
func (s *store) indexed(ctx context.Context, add func(n int64, from index, key string)) error {
	for _, from := range [...]index{byRev, byID} {
		query := fmt.Sprintf("SELECT rowid, %s FROM revisions INDEXED BY %s WHERE %s >= ? AND %s < ?", from.column, from.name, from.column, from.column)
		p := pieces{s: s, query: query, add: func(n int64, key string) { add(n, from, key) }, left: mostPieces}
		if err := p.read(ctx, ""); err != nil {
			return err
		}
	}
	return nil
}

const (
	smallest   = 4   // digits that a piece of an index begins with at most
	mostPieces = 500 // that may fail before the rest of an index is given up: it has some dozens of damaged pages then, or no root
)

// pieces is an index that is read piece by piece.
type pieces struct {
	s     *store
	query string
	add   func(n int64, key string)
	left  int
}

// read hands out the rows whose keys begin so, some of them perhaps twice; what cannot be read even in the smallest pieces
// is passed over.
func (p *pieces) read(ctx context.Context, begins string) error {
	if p.left == 0 {
		return nil
	}
	err := numbered(ctx, p.s.read, p.query, p.add, begins, begins+"g")
	if ctx.Err() != nil {
		return ctx.Err()
	}
	if err == nil {
		return nil
	}
	if p.left--; len(begins) == smallest {
		return nil
	}
	for _, digit := range "0123456789abcdef" {
		if err := p.read(ctx, begins+string(digit)); err != nil {
			return err
		}
	}
	return nil
}

// tell says of rows that cannot be read which revisions of which records they are, as far as the indexes still know.
func (s *store) tell(ctx context.Context, bad map[int64]error, unreadable func(error)) error {
	if len(bad) == 0 {
		return nil
	}
	known := map[index]map[int64]string{byRev: {}, byID: {}}
	err := s.indexed(ctx, func(n int64, from index, key string) {
		if bad[n] != nil {
			known[from][n] = key
		}
	})
	if err != nil {
		return err
	}
	for _, n := range slices.Sorted(maps.Keys(bad)) {
		rev, id := known[byRev][n], known[byID][n]
		if rev == "" {
			rev = fmt.Sprintf("in row %d", n)
		}
		if id == "" {
			id = "a record that nothing tells"
		}
		unreadable(fmt.Errorf("revision %s of %s: %w", rev, id, bad[n]))
	}
	return nil
}
