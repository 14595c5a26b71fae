package book

import (
	"bytes"
	"compress/gzip"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// testdata/version3.db.gz is a book that the program of 2026-10 kept: a person, a power source, three cards of which
// one was changed and one deleted, a test bead and a reading. What its own export gave has this SHA-256.
const version3Export = "7b1edb5a3548a2de88ae872ab7a70edb987d5569c4b133a558b3a09bb333d433"

// version3 is that book in a file of its own.
func version3(t *testing.T) string {
	t.Helper()
	f, err := os.Open(filepath.Join("testdata", "version3.db.gz"))
	noErr(t, err)
	defer f.Close()
	r, err := gzip.NewReader(f)
	noErr(t, err)
	b, err := io.ReadAll(r)
	noErr(t, err)
	file := filepath.Join(t.TempDir(), "book.db")
	noErr(t, os.WriteFile(file, b, 0o600))
	return file
}

// asThen fails where a book does not hold what version3.db does, and returns its export.
func asThen(t *testing.T, b Book) []byte {
	t.Helper()
	faults, n, err := b.Check(context.Background())
	if err != nil || n != 9 || len(faults) > 0 {
		t.Errorf("%d revisions, %v, %v", n, faults, err)
	}
	var out bytes.Buffer
	_, err = Export(context.Background(), b, &out)
	noErr(t, err)
	if got := fmt.Sprintf("%x", sha256.Sum256(out.Bytes())); got != version3Export {
		t.Errorf("the export has changed to %s", got)
	}
	return out.Bytes()
}

// saveAfter keeps a card and a change of an old one, and reads both.
func saveAfter(t *testing.T, b Book) {
	t.Helper()
	ctx, now := context.Background(), time.Date(2027, 3, 1, 8, 0, 0, 0, time.UTC)
	list, err := b.List(ctx, Query{Kind: CardKind, Text: "gutter"})
	noErr(t, err)
	old, err := b.Get(ctx, list[0].ID)
	noErr(t, err)
	changed, err := by(&now).Change(&old, someCard(t, "gutter of today", gutter))
	noErr(t, err)
	noErr(t, b.SaveOn(ctx, changed))
	added, err := by(&now).New(CardKind, someCard(t, "added", gutter))
	noErr(t, err)
	noErr(t, b.Save(ctx, added))
	if faults, n, err := b.Check(ctx); err != nil || n != 11 || len(faults) > 0 {
		t.Errorf("%d revisions, %v, %v", n, faults, err)
	}
	if h, err := b.History(ctx, old.ID); err != nil || len(h) != 2 || !bytes.Equal(h[0].Body, old.Body) ||
		!bytes.Equal(h[1].Body, changed.Body) {
		t.Errorf("%d in its history, %v", len(h), err)
	}
}

// A look, an export and a copy change nothing in a book of version 3: whatever keeps others from writing keeps nobody
// from reading.
func TestVersion3Read(t *testing.T) {
	ctx := context.Background()
	file := version3(t)
	before, err := os.ReadFile(file)
	noErr(t, err)
	b, err := ReadFile(ctx, file)
	noErr(t, err)
	export := asThen(t, b)
	copied := filepath.Join(t.TempDir(), "copy.db")
	noErr(t, b.Backup(ctx, copied))
	noErr(t, b.Close())
	if after, err := os.ReadFile(file); err != nil || !bytes.Equal(before, after) {
		t.Errorf("it was changed: %v", err)
	}
	if a, err := Look(ctx, file); err != nil || a.Version != 3 {
		t.Errorf("%+v, %v", a, err)
	}
	c, err := OpenFile(ctx, copied)
	noErr(t, err)
	defer c.Close()
	asThen(t, c)
	onBoth(t, func(t *testing.T, b Book) {
		n, err := Import(ctx, b, bytes.NewReader(export))
		if err != nil || n != 9 {
			t.Errorf("%d taken in, %v", n, err)
		}
		asThen(t, b)
	})
}

// Who saves brings it up to date, after a copy; what was kept is read as before.
func TestVersion3Write(t *testing.T) {
	ctx := context.Background()
	file := version3(t)
	b, err := OpenFile(ctx, file)
	noErr(t, err)
	asThen(t, b)
	saveAfter(t, b)
	copied := filepath.Join(t.TempDir(), "copy.db")
	noErr(t, b.Backup(ctx, copied))
	noErr(t, b.Close())
	for _, f := range []string{file, copied} {
		if a, err := Look(ctx, f); err != nil || a.Version != Version {
			t.Errorf("%+v, %v", a, err)
		}
	}
	copies, _ := filepath.Glob(file + ".before-version-4.*")
	if len(copies) != 1 {
		t.Fatalf("copies %v", copies)
	}
	c, err := ReadFile(ctx, copies[0])
	noErr(t, err)
	defer c.Close()
	asThen(t, c)
}

// A body of version 3 that is damaged is left out and named, as any other.
func TestVersion3Damaged(t *testing.T) {
	ctx := context.Background()
	file := version3(t)
	raw, err := OpenRaw(file)
	noErr(t, err)
	_, err = raw.Exec("UPDATE revisions SET body = substr(body, 1, length(body) - 9) WHERE kind = 'trial'")
	noErr(t, err)
	noErr(t, raw.Close())
	b, err := ReadFile(ctx, file)
	noErr(t, err)
	defer b.Close()
	const gone = "has a body that cannot be read"
	// one fault for the revision, one for its head
	if faults, n, err := b.Check(ctx); err != nil || n != 9 || len(faults) != 2 ||
		strings.Count(strings.Join(faults, "\n"), gone) != 2 {
		t.Errorf("%d revisions, %v, %v", n, faults, err)
	}
	var lost *Missing
	if n, err := Export(ctx, b, io.Discard); n != 8 || !errors.As(err, &lost) {
		t.Errorf("%d exported, %v", n, err)
	}
}

// The same rows on a server.
func TestVersion3Server(t *testing.T) {
	ctx := context.Background()
	address := serverAddress(t)
	old, _, err := dial(ctx, address, false)
	noErr(t, err)
	_, err = old.migrate(ctx, 3)
	noErr(t, err)
	from, err := ReadFile(ctx, version3(t))
	noErr(t, err)
	defer from.Close()
	rows, err := from.(*store).read.QueryContext(ctx, "SELECT "+rowColumns+" FROM revisions ORDER BY at")
	noErr(t, err)
	defer rows.Close()
	var list []prepared
	for rows.Next() {
		r, packed, err := scanPacked(rows)
		noErr(t, err)
		r.Body, err = unpack(packed)
		noErr(t, err)
		list = append(list, prepared{rev: r, packed: packed, listing: r.listing()})
	}
	noErr(t, rows.Err())
	w := &writer{e: &postgres, db: old.write}
	noErr(t, w.transaction(&[]saving{{ctx: ctx, list: list}}, false))
	noErr(t, old.Close())
	look, err := readServer(ctx, address)
	noErr(t, err)
	asThen(t, look)
	noErr(t, look.Close())
	b, err := openServer(ctx, address)
	noErr(t, err)
	defer b.Close()
	asThen(t, b)
	saveAfter(t, b)
	if _, v, err := dial(ctx, address, false); err != nil || v != Version {
		t.Errorf("version %d, %v", v, err)
	}
}
