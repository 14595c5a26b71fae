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
	err = s.Each(ctx, func(r Revision) error {
		n++
		known[r.Rev] = true
		if r.Parent != "" {
			parents[r.Rev] = r.Parent
		}
		if err := r.Verify(); err != nil {
			say("%v", err)
		}
		return nil
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
	wrong, err := s.read.QueryContext(ctx, `SELECT h.id FROM heads h WHERE EXISTS (SELECT 1 FROM revisions c WHERE c.id = h.id AND c.parent = h.rev)`)
	if err != nil {
		return err
	}
	defer wrong.Close()
	for wrong.Next() {
		var id string
		if err := wrong.Scan(&id); err != nil {
			return err
		}
		say("record %s shows a revision that another one replaces", id)
	}
	return wrong.Err()
}
