package book

import (
	"cmp"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strconv"
)

// The tables of version 3. {blob} is the engine's type for bytes, {c} makes it compare texts byte by byte, {counted} is
// a key that counts up by itself, {keyed} keeps a table's rows in its key. A head has a number, so that new rows of a
// word are neighbours, which random ids would scatter.
var (
	revisionTables = [...]string{
		`CREATE TABLE meta (name TEXT PRIMARY KEY, value TEXT NOT NULL)`,
		`CREATE TABLE revisions (rev TEXT{c} PRIMARY KEY, id TEXT{c} NOT NULL, parent TEXT{c} NOT NULL,
			kind TEXT NOT NULL, at TEXT{c} NOT NULL, who TEXT NOT NULL, place TEXT NOT NULL, program TEXT NOT NULL,
			schema INTEGER NOT NULL, deleted INTEGER NOT NULL, body {blob} NOT NULL)`,
		`CREATE INDEX revisions_id ON revisions (id, parent)`,
	}
	// Older versions had others; these tables only list what the revisions hold, so they are made anew.
	listTables = [...]string{
		`DROP TABLE IF EXISTS words`,
		`DROP TABLE IF EXISTS heads`,
		`CREATE TABLE heads (n {counted}, id TEXT{c} NOT NULL UNIQUE,
			rev TEXT{c} NOT NULL REFERENCES revisions (rev), kind TEXT NOT NULL, at TEXT{c} NOT NULL,
			deleted INTEGER NOT NULL, name TEXT NOT NULL, line TEXT NOT NULL, words TEXT NOT NULL)`,
		`CREATE INDEX heads_kind ON heads (kind, deleted, at DESC, id DESC)`,
		`CREATE INDEX heads_at ON heads (deleted, at DESC, id DESC)`,
		`CREATE TABLE words (word TEXT{c} NOT NULL, n BIGINT NOT NULL
			REFERENCES heads (n) DEFERRABLE INITIALLY DEFERRED, PRIMARY KEY (word, n)){keyed}`,
	}
)

// updates change the tables from each version after 3 to the next. Once released they are never changed, only added to.
var updates = [...][]string{
	{}, // 4: no table changes, but a program of version 3 cannot unpack what pack writes now, so it must not write here
}

// Version of a book's tables that this program writes.
const Version = oldest + len(updates)

// oldest is the first version whose tables this program can read without changing them.
const oldest = 3

// version is the version of the book's tables; 0 if there are none.
func (e *engine) version(ctx context.Context, q querier) (int, error) {
	var n int
	if err := q.QueryRowContext(ctx, e.exists, "meta").Scan(&n); err != nil || n == 0 {
		return 0, err
	}
	var text string
	if err := q.QueryRowContext(ctx, "SELECT value FROM meta WHERE name = 'version'").Scan(&text); err != nil {
		return 0, err
	}
	return strconv.Atoi(text)
}

// newer says why nothing can be saved into a newer program's book; "" for any other.
func newer(version int) string {
	if version <= Version {
		return ""
	}
	return fmt.Sprintf("a newer program wrote it (version %d, this one knows %d)", version, Version)
}

// migrate updates the tables to this program's version, in one transaction, and returns the version that they have
// then. If several programs do so at once, one is first; the others wait and find it done.
func (s *store) migrate(ctx context.Context) (version int, err error) {
	tx, err := s.write.BeginTx(ctx, nil)
	if err != nil {
		return 0, err
	}
	defer func() { _ = tx.Rollback() }() // does nothing after the commit
	if s.lock != "" {
		if _, err := tx.ExecContext(ctx, s.lock, "tables"); err != nil {
			return 0, err
		}
	}
	from, err := s.version(ctx, tx)
	if err != nil || from >= Version {
		return from, err
	}
	if err := s.steps(ctx, tx, from); err != nil {
		return 0, err
	}
	_, err = tx.ExecContext(ctx, "INSERT INTO meta (name, value) VALUES ('version', $1) ON CONFLICT (name) DO UPDATE "+
		"SET value = excluded.value", strconv.Itoa(Version))
	if err != nil {
		return 0, err
	}
	return Version, tx.Commit()
}

// steps changes the tables from a version to this program's.
func (s *store) steps(ctx context.Context, tx *sql.Tx, from int) error {
	var list []string
	if from == 0 {
		if n, err := s.tables(ctx, tx); err != nil || n > 0 {
			return cmp.Or(err, errOthers)
		}
		list = append(list, revisionTables[:]...)
	}
	if from < oldest {
		list = append(list, listTables[:]...)
	}
	for _, update := range updates[max(0, from-oldest):] {
		list = append(list, update...)
	}
	for _, step := range list {
		if _, err := tx.ExecContext(ctx, s.own.Replace(step)); err != nil {
			return fmt.Errorf("from version %d: %w", from, err)
		}
	}
	if from >= oldest {
		return nil
	}
	return s.listAll(ctx, tx)
}

// errOthers is the error for a file that holds other tables.
var errOthers = errors.New("it is another program's database")

// listAll makes the head of every record, oldest first. A revision that cannot be read does not keep the others from
// being used: a record whose body is damaged is listed without its name, and one of which nothing is left not at all.
// Check says what is wrong with both.
func (s *store) listAll(ctx context.Context, tx *sql.Tx) error {
	var ids []string
	err := numbered(ctx, tx, "SELECT count(*), id FROM revisions GROUP BY id ORDER BY max(at), id",
		func(_ int64, id string) { ids = append(ids, id) })
	if err != nil {
		return err
	}
	to := &keeping{tx, map[string]bool{}}
	for _, id := range ids {
		leaf, err := s.leaf(ctx, tx, id)
		switch {
		case leaf.Rev != "":
			to.unfound[id] = true
			_, err = tx.ExecContext(ctx, newHead, headOf(&leaf, leaf.listing())...)
		case errors.Is(err, ErrNone), errors.Is(err, errPlace):
			err = nil
		}
		if err != nil {
			return err
		}
	}
	return s.index(ctx, to)
}
