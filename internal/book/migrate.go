package book

import (
	"cmp"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// migrations update a book from one version to the next; {blob} is the engine's type for bytes, {c} makes it compare
// texts byte by byte, {counted} is a key that counts up by itself, {keyed} keeps a table's rows in its key. Once
// released they are never changed, only added to.
var migrations = [...][]string{
	{ // 1: revisions and the heads of records
		`CREATE TABLE revisions (rev TEXT{c} PRIMARY KEY, id TEXT{c} NOT NULL, parent TEXT{c} NOT NULL,
			kind TEXT NOT NULL, at TEXT{c} NOT NULL, who TEXT NOT NULL, place TEXT NOT NULL, program TEXT NOT NULL,
			schema INTEGER NOT NULL, deleted INTEGER NOT NULL, body {blob} NOT NULL)`,
		`CREATE INDEX revisions_id ON revisions (id, parent)`,
		`CREATE TABLE heads (id TEXT{c} PRIMARY KEY, rev TEXT{c} NOT NULL REFERENCES revisions (rev),
			kind TEXT NOT NULL, at TEXT{c} NOT NULL, deleted INTEGER NOT NULL, name TEXT NOT NULL, line TEXT NOT NULL)`,
		`CREATE INDEX heads_kind ON heads (kind, deleted, at DESC, id DESC)`,
		`CREATE INDEX heads_at ON heads (deleted, at DESC, id DESC)`,
	},
	{ // 2: the search index of words
		`CREATE TABLE words (word TEXT{c} NOT NULL, id TEXT{c} NOT NULL REFERENCES heads (id),
			PRIMARY KEY (word, id))`,
		`CREATE INDEX words_id ON words (id, word)`,
	},
	{ // 3: a head has a number, and its words: new rows of a word are then neighbours, which random ids would scatter
		`CREATE TABLE heads_new (n {counted}, id TEXT{c} NOT NULL UNIQUE,
			rev TEXT{c} NOT NULL REFERENCES revisions (rev), kind TEXT NOT NULL, at TEXT{c} NOT NULL,
			deleted INTEGER NOT NULL, name TEXT NOT NULL, line TEXT NOT NULL, words TEXT NOT NULL)`,
		`INSERT INTO heads_new (id, rev, kind, at, deleted, name, line, words)
			SELECT id, rev, kind, at, deleted, name, line, COALESCE((SELECT ' ' || string_agg(w.word, ' ')
			FROM words w WHERE w.id = heads.id), '') FROM heads ORDER BY at, id`,
		`ALTER TABLE words RENAME TO words_old`,
		`CREATE TABLE words (word TEXT{c} NOT NULL, n BIGINT NOT NULL
			REFERENCES heads_new (n) DEFERRABLE INITIALLY DEFERRED, PRIMARY KEY (word, n)){keyed}`,
		`INSERT INTO words (word, n)
			SELECT w.word, h.n FROM words_old w JOIN heads_new h ON h.id = w.id ORDER BY w.word, h.n`,
		`DROP TABLE words_old`,
		`DROP TABLE heads`,
		`ALTER TABLE heads_new RENAME TO heads`,
		`CREATE INDEX heads_kind ON heads (kind, deleted, at DESC, id DESC)`,
		`CREATE INDEX heads_at ON heads (deleted, at DESC, id DESC)`,
	},
	{}, // 4: no table changes, but a program of version 3 cannot unpack what pack writes now, so it must not write here
}

// Version of a book's tables that this program writes.
const Version = len(migrations)

// readable reports whether this program can read the tables of a version without changing them.
func readable(version int) bool { return version >= 3 && version <= Version }

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

// migrate updates the tables to a version, in one transaction, and returns the version that they have then. If several
// programs do so at once, one is first; the others wait and find it done.
func (s *store) migrate(ctx context.Context, to int) (version int, err error) {
	tx, err := s.write.BeginTx(ctx, nil)
	if err != nil {
		return 0, err
	}
	defer func() { _ = tx.Rollback() }() // does nothing after the commit
	if s.lockAll != "" {
		if _, err := tx.ExecContext(ctx, s.lockAll); err != nil {
			return 0, err
		}
	}
	from, err := s.version(ctx, tx)
	if err != nil || from >= to {
		return from, err
	}
	if err := s.steps(ctx, tx, from, to); err != nil {
		return 0, err
	}
	_, err = tx.ExecContext(ctx, "INSERT INTO meta (name, value) VALUES ('version', $1) ON CONFLICT (name) DO UPDATE "+
		"SET value = excluded.value", strconv.Itoa(to))
	if err != nil {
		return 0, err
	}
	return to, tx.Commit()
}

// steps changes the tables from one version to another.
func (s *store) steps(ctx context.Context, tx *sql.Tx, from, to int) error {
	if from == 0 {
		if n, err := s.tables(ctx, tx); err != nil || n > 0 {
			return cmp.Or(err, errOthers)
		}
		if _, err := tx.ExecContext(ctx, "CREATE TABLE meta (name TEXT PRIMARY KEY, value TEXT NOT NULL)"); err != nil {
			return err
		}
	}
	own := strings.NewReplacer("{blob}", s.blob, "{c}", s.bytewise, "{counted}", s.counted, "{keyed}", s.keyed)
	for v := from; v < to; v++ {
		for _, step := range migrations[v] {
			if _, err := tx.ExecContext(ctx, own.Replace(step)); err != nil {
				return fmt.Errorf("to version %d: %w", v+1, err)
			}
		}
		if v == 1 {
			if err := s.fillWords(ctx, tx); err != nil {
				return err
			}
		}
	}
	return nil
}

// errOthers is the error for a file that holds other tables.
var errOthers = errors.New("it is another program's database")

// fillWords fills the search index with the records of a version 1 book.
func (s *store) fillWords(ctx context.Context, tx querier) error {
	list, err := all(ctx, tx, scan, "SELECT "+rowColumns+" FROM revisions WHERE rev IN (SELECT rev FROM heads)")
	if err != nil {
		return err
	}
	for i := range list {
		for _, w := range list[i].listing().words {
			_, err := tx.ExecContext(ctx, "INSERT INTO words (word, id) VALUES ($1, $2)", w, list[i].ID)
			if err != nil {
				return err
			}
		}
	}
	return nil
}
