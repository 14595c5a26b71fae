package book

import (
	"context"
	"os"
	"path/filepath"
	"runtime"
	"testing"
	"time"
)

// A book and its copy are in the file of their name, whatever that name means to SQLite.
func TestNamesThatMeanSomethingToSQLite(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("most of these are not valid file names there")
	}
	ctx, now := context.Background(), time.Now()
	dir := t.TempDir()
	t.Chdir(dir)
	noErr(t, os.Mkdir("file:q", 0o700))
	for _, name := range []string{":memory:", "file::memory:", "file:x.db", "file:q/x.db", "x?mode=memory",
		"%3Amemory%3A", "a#b", "a b%20c", "ä;b", "-", "/" + dir + "/twice.db", "//" + dir + "/thrice.db"} {
		r, err := by(&now).New(PersonKind, Person{Name: "fay"})
		noErr(t, err)
		b, err := OpenFile(ctx, name)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		noErr(t, b.Save(ctx, r))
		if err := b.Backup(ctx, name+".copy"); err != nil {
			t.Errorf("%s: copy: %v", name, err)
		}
		noErr(t, b.Close())
		for _, file := range []string{name, name + ".copy"} {
			if info, err := os.Stat(file); err != nil || info.Size() == 0 {
				t.Errorf("%s holds nothing: %v", file, err)
				continue
			}
			b, err := ReadFile(ctx, file)
			noErr(t, err)
			if got, err := b.Get(ctx, r.ID); err != nil || got.Rev != r.Rev {
				t.Errorf("%s: %v, %v", file, got.Rev, err)
			}
			noErr(t, b.Close())
		}
	}
	if left, err := filepath.Glob(".brazebooth-*"); err != nil || len(left) > 0 {
		t.Errorf("left: %q, %v", left, err)
	}
}
