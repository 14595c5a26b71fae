package book

import (
	"bytes"
	"context"
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"iter"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"brazebooth/internal/deep"
)

// Sound pages in wrong places, as a disk leaves them that mixes up two writes or loses one. SQLite reads them without
// an error. Every lost revision is named, none is exported twice, no id shows another record, check finds the damage,
// and a backup is sound.
func TestPagesOutOfPlace(t *testing.T) {
	deep.Turn(t)
	alone(t)
	file, all, pages := shopBook(t, 40)
	text, err := os.ReadFile(file)
	noErr(t, err)
	other, _ := newShopBook(t, 40) // the same records with other ids
	foreign, err := os.ReadFile(other)
	noErr(t, err)
	own := exported(t, file)
	r := deep.Rand(t)
	page := func(of []byte, n int64) []byte { return of[n*pageSize : (n+1)*pageSize] }
	some := func() int64 { return 1 + r.Int64N(pages-1) }
	for _, kind := range []struct {
		what string
		harm func(x []byte)
	}{
		{"swapped", func(x []byte) {
			a, b := some(), some()
			copy(page(x, a), page(text, b))
			copy(page(x, b), page(text, a))
		}},
		{"another page of this book", func(x []byte) { copy(page(x, some()), page(text, some())) }},
		{"a page of another book", func(x []byte) {
			n := 1 + r.Int64N(min(pages, int64(len(foreign)/pageSize))-1)
			copy(page(x, n), page(foreign, n))
		}},
		{"bytes", func(x []byte) {
			for range 20 {
				x[pageSize+r.IntN(len(x)-pageSize)] = byte(r.IntN(256))
			}
		}},
	} {
		for n := range deep.Many(1, 7) {
			bad := bytes.Clone(text)
			kind.harm(bad)
			name := filepath.Join(t.TempDir(), "bad.db")
			noErr(t, os.WriteFile(name, bad, 0o600))
			outOfPlace(t, fmt.Sprintf("%s, %d", kind.what, n), name, own, all)
		}
	}
}

// The first page of a table is replaced by one with more rows: the row after the original last one is then found on the
// next page by its number, and on this page by reading on from the row before.
func TestPageWithMoreRows(t *testing.T) {
	deep.Turn(t)
	const all = 40
	file := personsBook(t, all, strings.Repeat("x", 60))
	text, err := os.ReadFile(file)
	noErr(t, err)
	own, tried := exported(t, file), 0
	foreign, err := os.ReadFile(personsBook(t, all, ""))
	noErr(t, err)
	for a := range firstLeaves(text) {
		for b := range firstLeaves(foreign) {
			bad := bytes.Clone(text)
			copy(bad[a:a+pageSize], foreign[b:])
			name := filepath.Join(t.TempDir(), "bad.db")
			noErr(t, os.WriteFile(name, bad, 0o600))
			outOfPlace(t, fmt.Sprintf("bytes %d, another book's %d", a, b), name, own, all)
			tried++
		}
	}
	if tried == 0 {
		t.Error("no page with a table's first row was found")
	}
}

// personsBook is a book of persons whose names have a given ending.
func personsBook(t *testing.T, n int, name string) string {
	t.Helper()
	now := time.Date(2025, 3, 1, 8, 0, 0, 0, time.UTC)
	file := filepath.Join(t.TempDir(), "persons.db")
	b, err := OpenFile(context.Background(), file)
	noErr(t, err)
	var list []Revision
	for i := range n {
		now = now.Add(time.Minute)
		p, err := by(&now).New(PersonKind, Person{Name: fmt.Sprintf("p%d%s", i, name)})
		noErr(t, err)
		list = append(list, p)
	}
	noErr(t, b.Save(context.Background(), list...))
	noErr(t, b.Close())
	return file
}

// firstLeaves are the offsets of table leaf pages that hold row 1. The layout is from SQLite's documentation, "Database
// File Format", 1.6.
func firstLeaves(file []byte) iter.Seq[int] {
	return func(yield func(int) bool) {
		for at := pageSize; at < len(file); at += pageSize {
			page := file[at : at+pageSize]
			if page[0] != 0x0d || binary.BigEndian.Uint16(page[3:]) == 0 {
				continue
			}
			cell := page[binary.BigEndian.Uint16(page[8:]):]
			for cell[0] >= 0x80 { // the bytes of the payload's length
				cell = cell[1:]
			}
			if cell[1] == 1 && !yield(at) {
				return
			}
		}
	}
}

// outOfPlace reads a damaged book in every way and checks what it gets.
func outOfPlace(t *testing.T, what, file string, own map[string]int, all int) {
	t.Helper()
	ctx := context.Background()
	b, err := ReadFile(ctx, file)
	if err != nil {
		if !unreadablePage(err) {
			t.Errorf("%s: %v", what, err)
		}
		return
	}
	defer b.Close()
	var out bytes.Buffer
	_, err = Export(ctx, b, &out)
	lost, had := missing(t, what, err), 0
	for rev, n := range revsOf(t, out.Bytes()) {
		had += own[rev]
		if n > 1 {
			t.Errorf("%s: revision %s is exported %d times", what, rev, n)
		}
	}
	if had+lost < all {
		t.Errorf("%s: %d had and %d told of %d", what, had, lost, all)
	}
	if faults, _, err := b.Check(ctx); err != nil || had < all && len(faults) == 0 {
		t.Errorf("%s: check: %q, %v", what, faults, err)
	}
	list, err := b.List(ctx, Query{Limit: 1000, Deleted: true})
	if err != nil && !unreadablePage(err) {
		t.Errorf("%s: list: %v", what, err)
	}
	for _, h := range list {
		if r, err := b.Get(ctx, h.ID); err == nil && (r.ID != h.ID || r.hash() != r.Rev) || err != nil &&
			!unreadablePage(err) && !errors.Is(err, ErrNone) {
			t.Errorf("%s: %s shows %s, %v", what, h.ID, r.ID, err)
		}
	}
	copy := filepath.Join(t.TempDir(), "copy.db")
	missing(t, what+": backup", b.Backup(ctx, copy))
	for rev, n := range exported(t, copy) {
		had -= n * own[rev]
	}
	if had != 0 {
		t.Errorf("%s: %d revisions more in the export than in the copy", what, had)
	}
	soundCopy(t, what, copy)
}

// soundCopy checks that a book lacks only parents that could not be read.
func soundCopy(t *testing.T, what, file string) {
	t.Helper()
	c, err := ReadFile(context.Background(), file)
	noErr(t, err)
	defer c.Close()
	faults, _, err := c.Check(context.Background())
	noErr(t, err)
	for _, f := range faults {
		if !strings.Contains(f, "which is not here") {
			t.Errorf("%s: the copy: %s", what, f)
		}
	}
}

// exported counts the revisions of a book that can be read.
func exported(t *testing.T, file string) map[string]int {
	t.Helper()
	b, err := ReadFile(context.Background(), file)
	noErr(t, err)
	defer b.Close()
	var out bytes.Buffer
	_, err = Export(context.Background(), b, &out)
	missing(t, "export", err)
	return revsOf(t, out.Bytes())
}

func revsOf(t *testing.T, lines []byte) map[string]int {
	t.Helper()
	list := map[string]int{}
	for line := range bytes.Lines(lines) {
		var r Revision
		noErr(t, json.Unmarshal(line, &r))
		list[r.Rev]++
	}
	return list
}
