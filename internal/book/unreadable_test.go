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

// What is no book says so in words, and is left as it is: another program's tables, a folder, what is read without an end.
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
		database("other.db", "CREATE TABLE meta (name TEXT, value TEXT)"):                                             "its tables are another program's",
		database("count.db", "CREATE TABLE meta (name TEXT, value TEXT)", "INSERT INTO meta VALUES ('version', 'x')"): "its tables are another program's",
		database("column.db", "CREATE TABLE meta (a TEXT)"):                                                           "its tables are another program's",
		letter:     "it is no SQLite file",
		dir:        "a folder stands there",
		os.DevNull: "no file but a pipe or a device",
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

// A change of a record that the book does not hold is no riddle either.
func TestAChangeOfWhatIsNotThere(t *testing.T) {
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
