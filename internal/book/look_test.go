package book

import (
	"context"
	"os"
	"path/filepath"
	"testing"
)

// Look changes nothing and makes no book.
func TestLook(t *testing.T) {
	ctx := context.Background()
	file := filepath.Join(t.TempDir(), "deep", "book.db")
	if a, err := Look(ctx, file); err != nil || a.There || !a.Writable || a.Engine != "SQLite" {
		t.Errorf("none: %+v, %v", a, err)
	}
	if _, err := os.Stat(filepath.Dir(file)); err == nil {
		t.Error("looking made a folder")
	}
	b, err := OpenFile(ctx, file)
	if err != nil {
		t.Fatal(err)
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	if a, err := Look(ctx, file); err != nil || !a.There || !a.Writable || a.Version != Version {
		t.Errorf("a book: %+v, %v", a, err)
	}
	raw, err := OpenRaw(file)
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range []string{"1", "99"} {
		if _, err := raw.Exec("UPDATE meta SET value = ? WHERE name = 'version'", v); err != nil {
			t.Fatal(err)
		}
		before, err := os.ReadDir(filepath.Dir(file))
		if err != nil {
			t.Fatal(err)
		}
		a, err := Look(ctx, file)
		if err != nil || a.Version == Version {
			t.Errorf("version %s: %+v, %v", v, a, err)
		}
		if after, err := os.ReadDir(filepath.Dir(file)); err != nil || len(after) != len(before) {
			t.Errorf("looking left files: %v, %v", after, err)
		}
	}
	if err := raw.Close(); err != nil {
		t.Fatal(err)
	}
}

func TestLookAtOtherFiles(t *testing.T) {
	ctx := context.Background()
	dir := t.TempDir()
	text := filepath.Join(dir, "text")
	if err := os.WriteFile(text, []byte("a text and no book, long enough to be looked at for a while"),
		0o600); err != nil {
		t.Fatal(err)
	}
	empty := filepath.Join(dir, "empty")
	if err := os.WriteFile(empty, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if a, err := Look(ctx, empty); err != nil || a.There { // as a program leaves it that is stopped while making a book
		t.Errorf("empty: %+v, %v", a, err)
	}
	for _, where := range []string{text, dir, "postgres://nobody@127.0.0.1:1/none?connect_timeout=1"} {
		if a, err := Look(ctx, where); err == nil {
			t.Errorf("%s: %+v", where, a)
		}
	}
}

func TestLookOverTheNetwork(t *testing.T) {
	defer fakeNetwork(t)()
	if a, err := Look(context.Background(), filepath.Join(t.TempDir(), "book.db")); err != nil || a.Network != "NFS" {
		t.Errorf("%+v, %v", a, err)
	}
}
