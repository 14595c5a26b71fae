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

// misplaced is the error for a row that does not fit its table, because its page is sound but belongs to another table.
func misplaced(err error) error {
	if errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded) {
		return err
	}
	return errPlace
}

// timed is a row's number with its time and revision, for sorting.
type timed struct {
	n       int64
	at, rev string
}

// How far to look for rows if the last row of the table cannot be read: so many beyond the last row in the indexes
// (further), or in all if the indexes have none (blind). An index is not ordered by row number, so its readable part is
// a random sample: the highest number of k rows is on average 1/k of all rows before the end, and hardly ever twenty
// times as far.
const (
	further = 1000
	blind   = 20_000
)

// salvage lists the readable rows of a damaged book by their times. It reads each row by its number, so that an
// unreadable page hides no other. The indexes tell which rows there were: if a row holds another revision than its
// index says, that revision is used, and the expected one is reported as missing.
func (s *store) salvage(ctx context.Context, unreadable func(error)) ([]int64, error) {
	bad := map[int64]error{} // at first all rows in the indexes
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

// inTime are the numbers of the rows in order of time, each revision once.
func inTime(found []timed) []int64 {
	slices.SortFunc(found, func(a, b timed) int { return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.rev, b.rev)) })
	found = slices.CompactFunc(found, func(a, b timed) bool { return a.rev == b.rev })
	list := make([]int64, len(found))
	for i := range found {
		list[i] = found[i].n
	}
	return list
}

// last is the highest row number to look for, limited to a million more than twice the rows in the indexes.
func (s *store) last(ctx context.Context, listed map[int64]error) (n int64) {
	counted := int64(len(listed))
	// an error means that the last page is damaged
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
	smallest   = 4   // digits that the keys of the smallest piece begin with
	mostPieces = 500 // failed pieces after which reading stops: then dozens of pages are damaged, or the root
)

// indexed visits the entries of the indexes of revisions, some of them perhaps twice. A query ends at a page that it
// cannot read; the index is then read in pieces, by the first digit of the keys, then by the second and so on. The
// smallest pieces that cannot be read are skipped.
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

// tell reports which revisions of which records the unreadable rows were, as far as the indexes tell.
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
