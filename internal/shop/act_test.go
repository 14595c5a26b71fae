package shop

import (
	"context"
	"path/filepath"
	"testing"
	"time"

	"brazebooth/calc"
	"brazebooth/internal/book"
)

// newShop is a shop with an empty book and a clock that advances with each use.
func newShop(t *testing.T) *Shop {
	t.Helper()
	now := time.Date(2026, 3, 1, 9, 30, 0, 0, time.UTC)
	return &Shop{Where: filepath.Join(t.TempDir(), "book.db"), Author: book.Author{Who: "ada", Program: "test",
		Now: func() time.Time { now = now.Add(time.Second); return now }}}
}

type act func(ctx context.Context, s *Shop) (Done, error)

func saveCard(name string) act {
	return func(ctx context.Context, s *Shop) (Done, error) {
		card, err := calc.Solve(lap)
		if err != nil {
			return Done{}, err
		}
		return s.SaveCard(ctx, book.Card{Name: name, Note: "first"}, &card)
	}
}

func saveTrial(job calc.Job, seen, verdict, source string) act {
	return func(ctx context.Context, s *Shop) (Done, error) {
		return s.SaveTrial(ctx, book.Trial{Job: job, Seen: seen, Verdict: verdict, Source: source})
	}
}

func saveReading(source string, feed, stickOut, amps float64) act {
	return func(ctx context.Context, s *Shop) (Done, error) {
		return s.SaveReading(ctx, book.Reading{Source: source, Feed: feed, StickOut: stickOut, Amps: amps}, calc.Job{})
	}
}

// enter saves an entry; texts are names and values in turn.
func enter(kind book.Kind, texts ...string) act {
	given := map[string]string{}
	for i := 0; i < len(texts); i += 2 {
		given[texts[i]] = texts[i+1]
	}
	return func(ctx context.Context, s *Shop) (Done, error) { return s.SaveEntry(ctx, kind, given) }
}

func edit(word string, texts ...string) act {
	given := map[string]string{}
	for i := 0; i < len(texts); i += 2 {
		given[texts[i]] = texts[i+1]
	}
	return func(ctx context.Context, s *Shop) (Done, error) { return s.EditCard(ctx, word, given) }
}

func remove(kind book.Kind, word string) act {
	return func(ctx context.Context, s *Shop) (Done, error) { return s.Delete(ctx, kind, word) }
}

func restore(kind book.Kind, word string) act {
	return func(ctx context.Context, s *Shop) (Done, error) { return s.Restore(ctx, kind, word) }
}

// ofFirst calls do with the id of the first record of a kind.
func ofFirst(kind book.Kind, do func(s *Shop, ctx context.Context, id string) (Done, error)) act {
	return func(ctx context.Context, s *Shop) (Done, error) {
		var heads []book.Head
		err := s.With(ctx, false, func(b book.Book) (err error) {
			heads, err = b.List(ctx, book.Query{Kind: kind, Deleted: true})
			return err
		})
		if err != nil || len(heads) == 0 {
			return Done{}, err
		}
		return do(s, ctx, heads[len(heads)-1].ID)
	}
}

func onlyErr(do func(ctx context.Context, s *Shop) error) act {
	return func(ctx context.Context, s *Shop) (Done, error) { return Done{}, do(ctx, s) }
}

// word is an act on the record that a word names.
func word(w string, do func(s *Shop, ctx context.Context, w string) (Done, error)) act {
	return func(ctx context.Context, s *Shop) (Done, error) { return do(s, ctx, w) }
}
