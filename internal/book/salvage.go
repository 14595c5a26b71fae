package book

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"maps"
	"slices"
)

// errPlace is the error for a row whose page is damaged or belongs elsewhere.
var errPlace error = &Unreadable{Place: "its place in the file", What: "is damaged", part: true}

// misplaced is the error for a row that is not one of its table: its page is sound but belongs to another table.
func misplaced(err error) error {
	if errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded) {
		return err
	}
	return errPlace
}

// timed is a row's number with its time and revision, by which rows are ordered.
type timed struct {
	n       int64
	at, rev string
}

// How far rows are looked for where the table itself does not tell its last row: beyond the last that the indexes
// name, and where they name none. An index has its rows in no order of their numbers, so what can be read of it is a
// random sample: of k rows the last is on average 1/k of all rows before the end, and hardly ever twenty times as
// far.
const (
	further = 1000
	blind   = 20_000
)

// salvage lists the rows of a damaged book by their times. Each is asked for by its number, so an unreadable page
// hides no other page. The indexes tell which rows there were: where a row holds another revision than they say, that
// revision is taken, and the one that should be there is missing.
func (s *store) salvage(ctx context.Context, unreadable func(error)) ([]int64, error) {
	bad := map[int64]error{} // at first all rows that there were
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
		err := s.read.QueryRowContext(ctx, "SELECT at, rev FROM revisions WHERE rowid = $1", n).Scan(&t.at, &t.rev)
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

// inTime are the numbers of the rows, each revision once, ordered by time.
func inTime(found []timed) []int64 {
	slices.SortFunc(found, func(a, b timed) int { return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.rev, b.rev)) })
	found = slices.CompactFunc(found, func(a, b timed) bool { return a.rev == b.rev })
	list := make([]int64, len(found))
	for i := range found {
		list[i] = found[i].n
	}
	return list
}

// last is the highest row number to look for. A number far beyond what the indexes count is not believed.
func (s *store) last(ctx context.Context, listed map[int64]error) (n int64) {
	counted := int64(len(listed))
	// it is in the damaged part
	if s.read.QueryRowContext(ctx, "SELECT COALESCE(max(rowid), 0) FROM revisions").Scan(&n) != nil {
		n = blind
		if counted > 0 {
			n = slices.Max(slices.Collect(maps.Keys(listed)))
			n += 20*n/counted + further
		}
	}
	return min(n, 2*counted+1_000_000)
}

// index is an index of the table of revisions; each holds row numbers beside its column.
type index struct{ column, name string }

var (
	byRev = index{"rev", "sqlite_autoindex_revisions_1"}
	byID  = index{"id", "revisions_id"}
)

const (
	smallest   = 4   // most digits that the keys of a piece begin with
	mostPieces = 500 // failed pieces after which the rest is given up: dozens of pages are damaged, or the root
)

// indexed hands out what the indexes of revisions hold, some of it perhaps twice. A query ends at a page that it cannot
// read, so an index is then read in pieces: the keys that begin with one digit, and of these again in pieces. What
// cannot be read even in the smallest pieces is skipped.
func (s *store) indexed(ctx context.Context, add func(n int64, from index, key string)) error {
	for _, from := range [...]index{byRev, byID} {
		query := fmt.Sprintf("SELECT rowid, %[1]s FROM revisions INDEXED BY %[2]s WHERE %[1]s >= $1 AND %[1]s < $2",
			from.column, from.name)
		left := mostPieces
		var read func(begins string)
		read = func(begins string) {
			if left == 0 || ctx.Err() != nil {
				return
			}
			err := numbered(ctx, s.read, query, func(n int64, key string) { add(n, from, key) }, begins, begins+"g")
			if err == nil {
				return
			}
			if left--; len(begins) < smallest {
				for _, digit := range "0123456789abcdef" {
					read(begins + string(digit))
				}
			}
		}
		read("")
	}
	return ctx.Err()
}

// tell says which revisions of which records the unreadable rows are, as far as the indexes still know.
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
			id = "an unknown record"
		}
		unreadable(fmt.Errorf("revision %s of %s: %w", rev, id, bad[n]))
	}
	return nil
}
