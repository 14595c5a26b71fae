package book

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
)

const mostFaults = 100

// faults collects what is wrong with a book.
type faults struct {
	Missing
	gaps int // those that are only a missing parent
}

func (f *faults) say(format string, args ...any) { f.add(fmt.Errorf(format, args...)) }

// seen records the error of a query as a fault if it comes from damage; any other error is returned.
func (f *faults) seen(what string, err error) error {
	if err == nil || !unreadablePage(err) {
		return err
	}
	f.say("%s: %v", what, err)
	return nil
}

func (s *store) Check(ctx context.Context) (found []string, n int, err error) {
	f := new(faults)
	n, err = s.check(ctx, f)
	return f.Lines, n, err
}

func (s *store) check(ctx context.Context, f *faults) (n int, err error) {
	if s.name == sqlite.name {
		if err := s.checkFile(ctx, f); err != nil {
			return 0, err
		}
	}
	n, err = s.checkRevisions(ctx, f)
	if err == nil {
		err = s.checkHeads(ctx, f)
	}
	return n, err
}

// mostOfFile is how many faults of the file itself are listed: SQLite reports each page and each index entry.
const mostOfFile = 20

// checkFile lets SQLite check its own pages and indexes.
func (s *store) checkFile(ctx context.Context, f *faults) error {
	return f.seen("the file itself", each(ctx, s.read, func(rows *sql.Rows) error {
		var answer string
		err := rows.Scan(&answer)
		if err == nil && answer != "ok" {
			f.say("the file itself: %s", answer)
		}
		return err
	}, fmt.Sprintf("PRAGMA integrity_check(%d)", mostOfFile)))
}

// checkRevisions checks that every revision is what was saved, and that its parent exists.
func (s *store) checkRevisions(ctx context.Context, f *faults) (n int, err error) {
	parents, known := map[string]string{}, map[string]bool{}
	err = s.eachOr(ctx, func(r Revision) error {
		n++
		known[r.Rev] = true
		if r.Parent != "" {
			parents[r.Rev] = r.Parent
		}
		if err := r.Verify(); err != nil {
			f.add(err)
		}
		return nil
	}, func(err error) {
		n++
		f.add(err)
	})
	if err = f.seen("the revisions", err); err != nil {
		return n, err
	}
	for rev, parent := range parents {
		if !known[parent] {
			f.gaps++
			f.say("revision %s replaces %s, which is not here: import the rest of that book", rev, parent)
		}
	}
	return n, nil
}

// checkHeads checks that every record has the head that follows from its revisions.
func (s *store) checkHeads(ctx context.Context, f *faults) error {
	headless := numbered(ctx, s.read,
		"SELECT count(*), r.id FROM revisions r LEFT JOIN heads h ON h.id = r.id WHERE h.id IS NULL GROUP BY r.id",
		func(n int64, id string) { f.say("record %s has %d revisions and no head", id, n) })
	if err := f.seen("the records", headless); err != nil {
		return err
	}
	for offset := 0; ; offset += 500 {
		list, err := s.List(ctx, Query{Deleted: true, Limit: 500, Offset: offset})
		if err != nil || len(list) == 0 {
			return f.seen("the list of records", err)
		}
		for i := range list {
			if err := s.checkHead(ctx, list[i].ID, f); err != nil {
				return err
			}
		}
	}
}

// checkHead compares what a record's id shows, and its line in lists, with its newest revision. It reads all in one
// transaction, since others may save meanwhile.
func (s *store) checkHead(ctx context.Context, id string, f *faults) error {
	what := "record " + id
	tx, err := s.read.BeginTx(ctx, s.snapshot)
	if err != nil {
		return err
	}
	defer func() { _ = tx.Rollback() }() // it only reads
	var shown Revision
	gone := "none of its revisions is there"
	leaf, err := s.leaf(ctx, tx, id)
	if err == nil {
		gone = "it is not found by its id"
		shown, err = s.get(ctx, tx, id)
	}
	if errors.Is(err, ErrNone) {
		f.say("%s: %s", what, gone)
		return nil
	}
	if err != nil {
		return f.seen(what, err)
	}
	if shown.Rev != leaf.Rev || string(shown.Body) != string(leaf.Body) {
		f.say("%s does not show what its newest revision holds", what)
	}
	listed, err := all(ctx, tx, head, "SELECT "+headColumns+" FROM heads WHERE id = $1", id)
	if err != nil {
		return f.seen(what, err)
	}
	name, line, _ := summary(&leaf)
	want := Head{id, leaf.Rev, leaf.Kind, leaf.At, name, line, leaf.Deleted}
	if len(listed) != 1 || listed[0] != want {
		f.say("%s is not listed as its newest revision says", what)
	}
	return nil
}
