package book

import (
	"bytes"
	"compress/flate"
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A book of every earlier version is updated, with a copy beside it; a newer one is only read.
func TestMigrations(t *testing.T) {
	ctx, now := context.Background(), time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	for from := 1; from < oldest; from++ {
		dir := t.TempDir()
		file := filepath.Join(dir, "book.db")
		old := oldBook(t, file, from)
		r, err := by(&now).New(CardKind, someCard(t, "from long ago", gutter))
		noErr(t, err)
		plant(t, old, &r, from)
		noErr(t, old.Close())
		b, err := ReadFile(ctx, file) // reading updates it too
		noErr(t, err)
		if list, err := b.List(ctx, Query{Text: "long"}); err != nil || len(list) != 1 {
			t.Errorf("from version %d: %v, %v", from, list, err)
		}
		noErr(t, b.Close())
		copies, _ := filepath.Glob(filepath.Join(dir, "book.db.before-version-*"))
		if len(copies) != 1 {
			t.Errorf("from version %d: copies %v", from, copies)
		}
	}
	file := filepath.Join(t.TempDir(), "book.db")
	b, err := OpenFile(ctx, file)
	noErr(t, err)
	_, err = b.(*store).write.Exec("UPDATE meta SET value = '99' WHERE name = 'version'")
	noErr(t, err)
	noErr(t, b.Close())
	b, err = OpenFile(ctx, file)
	noErr(t, err)
	defer b.Close()
	if !strings.Contains(b.(*store).readOnly, "newer program") {
		t.Errorf("read only: %q", b.(*store).readOnly)
	}
}

// oldBook is a book's file as an earlier program wrote it.
func oldBook(t *testing.T, file string, version int) *store {
	t.Helper()
	s := &store{engine: sqlite, place: file}
	s.closing = s.close
	var err error
	s.write, err = OpenRaw(file)
	noErr(t, err)
	oldTables(t, s, version)
	return s
}

// oldTables makes the tables of version 1 or 2.
func oldTables(t *testing.T, s *store, version int) {
	t.Helper()
	tables := append(revisionTables[:],
		`CREATE TABLE heads (id TEXT{c} PRIMARY KEY, rev TEXT{c} NOT NULL REFERENCES revisions (rev),
			kind TEXT NOT NULL, at TEXT{c} NOT NULL, deleted INTEGER NOT NULL, name TEXT NOT NULL, line TEXT NOT NULL)`,
		`CREATE INDEX heads_kind ON heads (kind, deleted, at DESC, id DESC)`,
		`CREATE INDEX heads_at ON heads (deleted, at DESC, id DESC)`)
	if version == 2 {
		tables = append(tables,
			`CREATE TABLE words (word TEXT{c} NOT NULL, id TEXT{c} NOT NULL REFERENCES heads (id),
				PRIMARY KEY (word, id))`,
			`CREATE INDEX words_id ON words (id, word)`)
	}
	for _, step := range append(tables, fmt.Sprintf("INSERT INTO meta VALUES ('version', '%d')", version)) {
		_, err := s.write.Exec(s.own.Replace(step))
		noErr(t, err)
	}
}

// plant saves a revision as an earlier program did.
func plant(t *testing.T, s *store, r *Revision, version int) {
	t.Helper()
	if version > 2 {
		t.Fatalf("add how version %d saved a revision", version)
	}
	_, err := s.write.Exec("INSERT INTO revisions ("+revisionColumns+") VALUES ($1, $2, $3, $4, $5, $6, $7, $8, "+
		"$9, $10, $11)",
		r.Rev, r.ID, r.Parent, string(r.Kind), r.At, r.Who, r.Where, r.Program, r.Schema, 0, flated(t, r.Body))
	noErr(t, err)
	_, err = s.write.Exec("INSERT INTO heads (id, rev, kind, at, deleted, name, line) VALUES ($1, $2, $3, $4, 0, "+
		"$5, $6)",
		r.ID, r.Rev, string(r.Kind), r.At, "from long ago", "")
	noErr(t, err)
	if version < 2 {
		return
	}
	for _, w := range words("from long ago") {
		_, err = s.write.Exec("INSERT INTO words (word, id) VALUES ($1, $2)", w, r.ID)
		noErr(t, err)
	}
}

// flated compresses a body with DEFLATE, as earlier programs did.
func flated(t *testing.T, body []byte) []byte {
	t.Helper()
	var out bytes.Buffer
	w, err := flate.NewWriter(&out, flate.BestSpeed)
	noErr(t, err)
	_, err = w.Write(body)
	noErr(t, err)
	noErr(t, w.Close())
	return out.Bytes()
}

// A server's book of every earlier version is updated too.
func TestServerMigrations(t *testing.T) {
	ctx, now := context.Background(), time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	for from := 1; from < oldest; from++ {
		address := serverAddress(t)
		old, _, err := dial(ctx, address, false)
		noErr(t, err)
		oldTables(t, old, from)
		r, err := by(&now).New(CardKind, someCard(t, "from long ago", gutter))
		noErr(t, err)
		plant(t, old, &r, from)
		noErr(t, old.Close())
		b, err := openServer(ctx, address)
		noErr(t, err)
		if list, err := b.List(ctx, Query{Text: "long ago"}); err != nil || len(list) != 1 {
			t.Errorf("from version %d: %v, %v", from, list, err)
		}
		if faults, n, err := b.Check(ctx); err != nil || n != 1 || len(faults) > 1 { // the planted head has no line
			t.Errorf("from version %d: %v, %d, %v", from, faults, n, err)
		}
		next, err := by(&now).Change(&r, someCard(t, "of today", gutter))
		noErr(t, err)
		noErr(t, b.SaveOn(ctx, next))
		if list, err := b.List(ctx, Query{Text: "long"}); err != nil || len(list) != 0 {
			t.Errorf("from version %d: %v, %v", from, list, err)
		}
		noErr(t, b.Close())
	}
}

// Damaged revisions do not keep an old book from being opened: the other records are found, a damaged one is still
// listed if its place can be read, and a check names it.
func TestADamagedOldBookIsUpdated(t *testing.T) {
	ctx, now := context.Background(), time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	for from := 1; from < oldest; from++ {
		for harm, listed := range map[string]bool{"body = x'00ff'": true, "body = zeroblob(30000000)": true,
			"deleted = 'abc'": false, "parent = rev": false} {
			what := fmt.Sprintf("from version %d, %s", from, harm)
			file := filepath.Join(t.TempDir(), "book.db")
			old := oldBook(t, file, from)
			sound, err := by(&now).New(CardKind, someCard(t, "from long ago", gutter))
			noErr(t, err)
			plant(t, old, &sound, from)
			for i, kind := range Kinds {
				id := fmt.Sprintf("%016x", i)
				plant(t, old, &Revision{Rev: id + id, ID: id, Kind: kind, At: sound.At, Body: []byte("{}")}, from)
				_, err = old.write.Exec("UPDATE revisions SET "+harm+" WHERE id = $1", id)
				noErr(t, err)
			}
			noErr(t, old.Close())
			b, err := OpenFile(ctx, file)
			if err != nil {
				t.Fatalf("%s: %v", what, err)
			}
			found, err := b.List(ctx, Query{Text: "long"})
			if err != nil || len(found) != 1 || found[0].ID != sound.ID {
				t.Errorf("%s: found %v, %v", what, found, err)
			}
			heads, err := b.List(ctx, Query{})
			if want := 1 + len(Kinds); err != nil || listed && len(heads) != want || !listed && len(heads) != 1 {
				t.Errorf("%s: listed %v, %v", what, heads, err)
			}
			faults, _, err := b.Check(ctx)
			for i := range Kinds {
				if id := fmt.Sprintf("%016x", i); err != nil || !strings.Contains(strings.Join(faults, "\n"), id) {
					t.Errorf("%s: a check does not name %s: %q, %v", what, id, faults, err)
				}
			}
			noErr(t, b.Close())
		}
	}
}
