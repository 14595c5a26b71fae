package book

import (
	"bytes"
	"compress/gzip"
	"context"
	"database/sql"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// released is a book that a released program wrote, and its export by the same program. .ci/released-book makes both
// once for each release.
type released struct {
	name      string // path without its endings
	export    []byte
	revisions int
}

// eachRelease runs a test with the book of every release.
func eachRelease(t *testing.T, test func(t *testing.T, r *released)) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("testdata", "released", "*.db.gz"))
	noErr(t, err)
	if len(files) == 0 {
		t.Fatal("the books of the releases are gone")
	}
	for _, file := range files {
		r := &released{name: strings.TrimSuffix(file, ".db.gz")}
		r.export = unzipped(t, r.name+".jsonl.gz")
		r.revisions = bytes.Count(r.export, []byte("\n"))
		t.Run(filepath.Base(r.name), func(t *testing.T) { test(t, r) })
	}
}

func unzipped(t *testing.T, file string) []byte {
	t.Helper()
	f, err := os.Open(file)
	noErr(t, err)
	defer f.Close()
	z, err := gzip.NewReader(f)
	noErr(t, err)
	b, err := io.ReadAll(z)
	noErr(t, err)
	return b
}

// file is a copy of the book in a new folder.
func (r *released) file(t *testing.T) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "book.db")
	noErr(t, os.WriteFile(file, unzipped(t, r.name+".db.gz"), 0o600))
	return file
}

// asThen checks that a book's export is, to the byte, the one that the released program made.
func (r *released) asThen(t *testing.T, b Book) {
	t.Helper()
	ctx := context.Background()
	faults, n, err := b.Check(ctx)
	if err != nil || n != r.revisions || len(faults) > 0 {
		t.Errorf("%d revisions of %d, %v, %v", n, r.revisions, faults, err)
	}
	var out bytes.Buffer
	_, err = Export(ctx, b, &out)
	noErr(t, err)
	if !bytes.Equal(out.Bytes(), r.export) {
		t.Errorf("exported is now\n%s", out.Bytes())
	}
	for _, kind := range Kinds {
		list, err := b.List(ctx, Query{Kind: kind, Deleted: true})
		if err != nil || len(list) == 0 {
			t.Errorf("%s: %v, %v", kind, list, err)
		}
		for _, h := range list {
			if got, err := b.Get(ctx, h.ID); err != nil || got.Rev != h.Rev || got.Verify() != nil {
				t.Errorf("%s %s: %v, %v", kind, h.ID, got.Verify(), err)
			}
		}
	}
}

// rows are all rows of a book's tables as stored.
func rows(t *testing.T, file string) (list []string) {
	t.Helper()
	raw, err := OpenRaw(file)
	noErr(t, err)
	defer raw.Close()
	for _, query := range [...]string{"SELECT name, value FROM meta ORDER BY name",
		"SELECT " + revisionColumns + " FROM revisions ORDER BY rev",
		"SELECT n, id, rev, kind, at, deleted, name, line, words FROM heads ORDER BY n",
		"SELECT word, n FROM words ORDER BY word, n", "SELECT sql FROM sqlite_master ORDER BY name"} {
		noErr(t, each(context.Background(), raw, func(found *sql.Rows) error {
			names, _ := found.Columns()
			values, into := make([]any, len(names)), make([]any, len(names))
			for i := range values {
				into[i] = &values[i]
			}
			err := found.Scan(into...)
			list = append(list, fmt.Sprintf("%q", values))
			return err
		}, query))
	}
	return list
}

// version is the version of a book's tables.
func version(t *testing.T, file string) int {
	t.Helper()
	a, err := Look(context.Background(), file)
	noErr(t, err)
	return a.Version
}
