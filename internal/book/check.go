package book

import (
	"context"
	"fmt"
)

// mostFaults is how many faults are told before one has seen enough.
const mostFaults = 100

func (s *store) Check(ctx context.Context) (faults []string, n int, err error) {
	say := func(format string, args ...any) {
		if len(faults) < mostFaults {
			faults = append(faults, fmt.Sprintf(format, args...))
		}
	}
	if s.name == sqlite.name {
		var answer string
		if err := s.read.QueryRowContext(ctx, "PRAGMA integrity_check(1)").Scan(&answer); err != nil {
			return nil, 0, err
		}
		if answer != "ok" {
			say("the file itself: %s", answer)
		}
	}
	parents, known := map[string]string{}, map[string]bool{}
	err = s.eachOr(ctx, func(r Revision) error {
		n++
		known[r.Rev] = true
		if r.Parent != "" {
			parents[r.Rev] = r.Parent
		}
		if err := r.Verify(); err != nil {
			say("%v", err)
		}
		return nil
	}, func(err error) {
		n++
		say("%v", err)
	})
	if err != nil {
		return append(faults, err.Error()), n, nil
	}
	for rev, parent := range parents {
		if !known[parent] {
			say("revision %s replaces %s, which is not here: import the rest of that book", rev, parent)
		}
	}
	err = s.checkHeads(ctx, say)
	return faults, n, err
}

// checkHeads: every record has the head that its revisions make.
func (s *store) checkHeads(ctx context.Context, say func(string, ...any)) error {
	rows, err := s.read.QueryContext(ctx, `SELECT r.id, count(*) FROM revisions r LEFT JOIN heads h ON h.id = r.id WHERE h.id IS NULL GROUP BY r.id`)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		var id string
		var n int
		if err := rows.Scan(&id, &n); err != nil {
			return err
		}
		say("record %s has %d revisions and no head", id, n)
	}
	if err := rows.Err(); err != nil {
		return err
	}
	for offset := 0; ; offset += 500 {
		list, err := s.List(ctx, Query{Deleted: true, Limit: 500, Offset: offset})
		if err != nil || len(list) == 0 {
			return err
		}
		for _, h := range list {
			leaf, err := s.leaf(ctx, s.read, h.ID)
			if err != nil {
				say("record %s: %v", h.ID, err)
				continue
			}
			name, line, _ := summary(&leaf)
			if leaf.Rev != h.Rev || leaf.Deleted != h.Deleted || leaf.Kind != h.Kind || name != h.Name || line != h.Line {
				say("record %s shows something else than its newest revision holds", h.ID)
			}
		}
	}
}
