package book

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// saveAfter saves a new card and a change of an old one, and reads both.
func (r *released) saveAfter(t *testing.T, b Book) {
	t.Helper()
	ctx, now := context.Background(), time.Date(2027, 3, 1, 8, 0, 0, 0, time.UTC)
	list, err := b.List(ctx, Query{Kind: CardKind, Text: "tank"})
	noErr(t, err)
	old, err := b.Get(ctx, list[0].ID)
	noErr(t, err)
	before, err := b.History(ctx, old.ID)
	noErr(t, err)
	changed, err := by(&now).Change(&old, someCard(t, "tank of today", gutter))
	noErr(t, err)
	noErr(t, b.SaveOn(ctx, changed))
	added, err := by(&now).New(CardKind, someCard(t, "added", gutter))
	noErr(t, err)
	noErr(t, b.Save(ctx, added))
	if faults, n, err := b.Check(ctx); err != nil || n != r.revisions+2 || len(faults) > 0 {
		t.Errorf("%d revisions, %v, %v", n, faults, err)
	}
	h, err := b.History(ctx, old.ID)
	if err != nil || len(h) != len(before)+1 || !bytes.Equal(h[len(h)-2].Body, old.Body) ||
		!bytes.Equal(h[len(h)-1].Body, changed.Body) {
		t.Errorf("%d in its history, %v", len(h), err)
	}
}

// Reading, exporting and backing up a book of an earlier release do not change it.
func TestReleasedRead(t *testing.T) {
	eachRelease(t, func(t *testing.T, r *released) {
		ctx := context.Background()
		file := r.file(t)
		before, err := os.ReadFile(file)
		noErr(t, err)
		b, err := ReadFile(ctx, file)
		noErr(t, err)
		r.asThen(t, b)
		copied := filepath.Join(t.TempDir(), "copy.db")
		noErr(t, b.Backup(ctx, copied))
		noErr(t, b.Close())
		if after, err := os.ReadFile(file); err != nil || !bytes.Equal(before, after) {
			t.Errorf("it was changed: %v", err)
		}
		c, err := OpenFile(ctx, copied)
		noErr(t, err)
		defer c.Close()
		r.asThen(t, c)
		onBoth(t, func(t *testing.T, b Book) {
			n, err := Import(ctx, b, bytes.NewReader(r.export))
			if err != nil || n != r.revisions {
				t.Errorf("%d taken in, %v", n, err)
			}
			r.asThen(t, b)
		})
	})
}

// The first save updates a book of an earlier release and leaves a copy beside it, in which every row is stored as the
// released program stored it. The copy can replace the book, and later saves can be imported into it from an export.
func TestReleasedWriteAndGoBack(t *testing.T) {
	eachRelease(t, func(t *testing.T, r *released) {
		ctx := context.Background()
		file := r.file(t)
		before, was := rows(t, file), version(t, file)
		b, err := OpenFile(ctx, file)
		noErr(t, err)
		r.asThen(t, b)
		r.saveAfter(t, b)
		var since bytes.Buffer
		_, err = Export(ctx, b, &since)
		noErr(t, err)
		copied := filepath.Join(t.TempDir(), "copy.db")
		noErr(t, b.Backup(ctx, copied))
		noErr(t, b.Close())
		for _, f := range []string{file, copied} {
			if v := version(t, f); v != Version {
				t.Errorf("%s is of version %d", f, v)
			}
		}
		if was == Version {
			return // nothing to go back to
		}
		copies, _ := filepath.Glob(file + fmt.Sprintf(".before-version-%d.*", Version))
		if len(copies) != 1 {
			t.Fatalf("copies %v", copies)
		}
		noErr(t, os.Rename(copies[0], file))
		if v := version(t, file); v != was {
			t.Errorf("the copy is of version %d", v)
		}
		if got := rows(t, file); strings.Join(got, "\n") != strings.Join(before, "\n") {
			t.Errorf("the copy's rows are not those of the book:\n%s", strings.Join(got, "\n"))
		}
		back, err := ReadFile(ctx, file)
		noErr(t, err)
		r.asThen(t, back)
		noErr(t, back.Close())
		forth, err := OpenFile(ctx, file)
		noErr(t, err)
		defer forth.Close()
		if n, err := Import(ctx, forth, &since); err != nil || n != r.revisions+2 {
			t.Errorf("%d taken in, %v", n, err)
		}
	})
}

// A damaged body is left out and reported, in the book of an earlier release too.
func TestReleasedDamaged(t *testing.T) {
	eachRelease(t, func(t *testing.T, r *released) {
		ctx := context.Background()
		file := r.file(t)
		raw, err := OpenRaw(file)
		noErr(t, err)
		_, err = raw.Exec("UPDATE revisions SET body = substr(body, 1, length(body) - 9) WHERE kind = 'practice'")
		noErr(t, err)
		noErr(t, raw.Close())
		b, err := ReadFile(ctx, file)
		noErr(t, err)
		defer b.Close()
		const gone = "has a body that cannot be read"
		// one fault for the revision, one for its head
		if faults, n, err := b.Check(ctx); err != nil || n != r.revisions || len(faults) != 2 ||
			strings.Count(strings.Join(faults, "\n"), gone) != 2 {
			t.Errorf("%d revisions, %v, %v", n, faults, err)
		}
		var lost *Missing
		if n, err := Export(ctx, b, io.Discard); n != r.revisions-1 || !errors.As(err, &lost) {
			t.Errorf("%d exported, %v", n, err)
		}
	})
}

// The same book on a server, with the tables that the released program made there.
func TestReleasedServer(t *testing.T) {
	eachRelease(t, func(t *testing.T, r *released) {
		ctx := context.Background()
		address := serverAddress(t)
		raw, err := OpenAdmin(address)
		noErr(t, err)
		_, err = raw.Exec(string(unzipped(t, r.name+".sql.gz"))) // many statements: it takes no arguments
		noErr(t, errors.Join(err, raw.Close()))
		look, err := readServer(ctx, address)
		noErr(t, err)
		r.asThen(t, look)
		noErr(t, look.Close())
		b, err := openServer(ctx, address)
		noErr(t, err)
		defer b.Close()
		r.asThen(t, b)
		r.saveAfter(t, b)
		if v := version(t, address); v != Version {
			t.Errorf("version %d", v)
		}
	})
}
