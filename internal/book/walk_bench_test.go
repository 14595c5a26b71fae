package book

import (
	"context"
	"path/filepath"
	"testing"
	"time"
)

// All revisions of a book of two thousand cards: in one query that stays open, which is the baseline; each with its own
// query; and the same with a check of each hash, as in an export.
func BenchmarkEach(b *testing.B) {
	ctx, now := context.Background(), time.Now()
	s := newFile(b).(*store)
	card := someCard(b, "x", gutter)
	var list []Revision
	for range 2000 {
		now = now.Add(time.Millisecond)
		r, err := by(&now).New(CardKind, card)
		noErr(b, err)
		list = append(list, r)
	}
	noErr(b, s.Save(ctx, list...))
	for _, way := range []struct {
		name string
		all  func(visit func(Revision) error) error
	}{
		{"one-query", func(visit func(Revision) error) error { return s.stream(ctx, visit, func(error) {}) }},
		{"one-by-one", func(visit func(Revision) error) error { return s.eachOr(ctx, visit, func(error) {}) }},
		{"verified", func(visit func(Revision) error) error { return s.Each(ctx, visit) }},
	} {
		b.Run(way.name, func(b *testing.B) {
			for range b.N {
				n := 0
				noErr(b, way.all(func(Revision) error { n++; return nil }))
				if n != len(list) {
					b.Fatalf("%d revisions", n)
				}
			}
		})
	}
}

// A query of a screen, which opens the book and closes it again: alone, and while another holder in this process has
// the book open.
func BenchmarkLookUp(b *testing.B) {
	ctx, now := context.Background(), time.Now()
	file := filepath.Join(b.TempDir(), "book.db")
	book, err := OpenFile(ctx, file)
	noErr(b, err)
	r, err := by(&now).New(CardKind, someCard(b, "x", gutter))
	noErr(b, err)
	noErr(b, book.Save(ctx, r))
	look := func(b *testing.B) {
		for range b.N {
			x, err := ReadFile(ctx, file)
			noErr(b, err)
			_, err = x.Get(ctx, r.ID)
			noErr(b, err)
			noErr(b, x.Close())
		}
	}
	b.Run("shared", look)
	noErr(b, book.Close())
	b.Run("alone", look)
}
