package book

import (
	"context"
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// Anything that is not a book is refused with a reason and left unchanged: another program's tables, a folder, an
// endless device.
func TestWhatIsNoBook(t *testing.T) {
	ctx, dir := context.Background(), t.TempDir()
	database := func(name string, statements ...string) string {
		file := filepath.Join(dir, name)
		db, err := sql.Open("sqlite", dsn(file, "rwc", true))
		noErr(t, err)
		for _, s := range statements {
			_, err := db.Exec(s)
			noErr(t, err)
		}
		noErr(t, db.Close())
		return file
	}
	letter := filepath.Join(dir, "letter.txt")
	noErr(t, os.WriteFile(letter, []byte("dear shop, this is no book but a letter"), 0o600))
	for file, want := range map[string]string{
		database("other.db",
			"CREATE TABLE meta (name TEXT, value TEXT)"): "its tables are another program's",
		database("count.db", "CREATE TABLE meta (name TEXT, value TEXT)",
			"INSERT INTO meta VALUES ('version', 'x')"): "its tables are another program's",
		database("column.db",
			"CREATE TABLE meta (a TEXT)"): "its tables are another program's",
		letter:     "it is not an SQLite file",
		dir:        "is not a book but a folder",
		os.DevNull: "not a book but a pipe or a device",
	} {
		for name, open := range map[string]func(context.Context, string) (Book, error){"read": Read, "open": Open} {
			var bad *Unreadable
			if _, err := open(ctx, file); !errors.As(err, &bad) || !strings.Contains(err.Error(), want) {
				t.Errorf("%s %s: %v, want %q", name, file, err, want)
			}
		}
		if _, err := Look(ctx, file); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("look at %s: %v, want %q", file, err, want)
		}
	}
}

// A change of a record that the book does not have is refused with a reason too.
func TestChangeOfAMissingRecord(t *testing.T) {
	ctx, now := context.Background(), time.Now()
	b, err := OpenFile(ctx, filepath.Join(t.TempDir(), "book.db"))
	noErr(t, err)
	defer b.Close()
	first, err := by(&now).New(PersonKind, Person{Name: "cy"})
	noErr(t, err)
	next, err := by(&now).Change(&first, Person{Name: "cyd"})
	noErr(t, err)
	if err := b.SaveOn(ctx, next); !errors.Is(err, ErrNone) {
		t.Errorf("%v", err)
	}
}

// A file whose tables are computed while they are read is refused as a book: reading it might never end.
func TestComputedTables(t *testing.T) {
	ctx, dir := context.Background(), t.TempDir()
	columns := "rev TEXT, id TEXT, parent TEXT, kind TEXT, at TEXT, who TEXT, place TEXT, program TEXT, " +
		"schema INTEGER, deleted INTEGER"
	heads := "CREATE TABLE heads (n INTEGER PRIMARY KEY, id, rev, kind, at, deleted, name, line, words)"
	for name, tables := range map[string][]string{
		"endless view": {heads, "CREATE VIEW revisions AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 " +
			"FROM n) SELECT i AS rowid, hex(i) AS rev, '' AS id, '' AS parent, 'card' AS kind, '' AS at, '' AS who, " +
			"'' AS place, '' AS program, 1 AS schema, 0 AS deleted, zeroblob(1000000) AS body FROM n"},
		"made bodies": {heads, "CREATE TABLE revisions (" + columns +
			", body BLOB GENERATED ALWAYS AS (zeroblob(1000000000)) VIRTUAL)"},
		"made, short":  {heads, "CREATE TABLE revisions (" + columns + ", body BLOB AS (zeroblob(1000000000)))"},
		"in one word":  {heads, "CREATE TABLE revisions (" + columns + ", body BLOB AS(zeroblob(1000000000)))"},
		"on two lines": {heads, "CREATE TABLE revisions (" + columns + ", body BLOB AS\n(zeroblob(1000000000)))"},
		"made heads": {"CREATE TABLE heads (n INTEGER PRIMARY KEY, id, rev, kind, at, deleted, name, words, " +
			"line AS(hex(zeroblob(400000000))))", "CREATE TABLE revisions (" + columns + ", body BLOB)"},
		"made words": {heads, "CREATE TABLE revisions (" + columns + ", body BLOB)", "DROP TABLE words",
			"CREATE TABLE words (n, word AS(hex(zeroblob(400000000))))"},
		"virtual":  {heads, "CREATE VIRTUAL TABLE revisions USING rtree(id, a, b)"},
		"no heads": {"CREATE TABLE revisions (" + columns + ", body BLOB)"},
	} {
		file := filepath.Join(dir, strings.ReplaceAll(name, " ", "-")+".db")
		db, err := sql.Open("sqlite", dsn(file, "rwc", true))
		noErr(t, err)
		for _, s := range append(append([]string{"CREATE TABLE words (word, n)"}, tables...),
			"CREATE TABLE meta (name TEXT, value TEXT)", "INSERT INTO meta VALUES ('version', '3')") {
			if _, err := db.Exec(s); err != nil {
				t.Fatal(name, err)
			}
		}
		noErr(t, db.Close())
		if b, err := ReadFile(ctx, file); err == nil {
			t.Errorf("%s is read as a book", name)
			_ = b.Close()
		}
		if _, err := Look(ctx, file); err == nil {
			t.Errorf("%s is fine to look at", name)
		}
	}
}
