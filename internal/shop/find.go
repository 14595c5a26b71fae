package shop

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
)

// Entry is one record in a list. It is an alias of a plain struct, which tui and linear declare with the same fields,
// so that none of the three imports another.
type Entry = struct{ ID, Kind, Name, At, Line string }

// CardOf finds a kept card by its name, its id or the beginning of the id.
func CardOf(ctx context.Context, b book.Book, word string) (book.Revision, book.Card, error) {
	return bodyOf[book.Card](ctx, b, book.CardKind, word)
}

// bodyOf finds a record by its name, its id or the beginning of the id.
func bodyOf[T any](ctx context.Context, b book.Book, kind book.Kind, word string) (r book.Revision, body T, err error) {
	if r, err = book.Resolve(ctx, b, kind, word); err == nil {
		body, err = book.Body[T](&r)
	}
	return r, body, err
}

// Load is the job of the kept card with this id.
func (s *Shop) Load(ctx context.Context, id string) (job calc.Job, err error) {
	err = s.With(ctx, false, func(b book.Book) error {
		_, c, err := CardOf(ctx, b, id)
		job = c.Job
		return err
	})
	return job, err
}

// List lists the records of a kind, "" for every kind, by the beginnings of words, newest first; none if there is no
// book yet.
func (s *Shop) List(ctx context.Context, kind, text string) (list []Entry, err error) {
	err = s.with(ctx, false, func(b book.Book) error {
		heads, err := b.List(ctx, book.Query{Kind: book.Kind(kind), Text: text})
		list = Listed(ctx, b, heads, text)
		return err
	})
	if errors.Is(err, book.ErrNone) {
		return nil, nil
	}
	return list, s.Told(err)
}

// Listed are the records of a list; those whose name is exactly the text come first, and those with the same name also
// have what distinguishes them.
func Listed(ctx context.Context, b book.Book, heads []book.Head, text string) []Entry {
	exact := func(h book.Head) int {
		if strings.EqualFold(h.Name, strings.TrimSpace(text)) {
			return 0
		}
		return 1
	}
	if strings.TrimSpace(text) != "" {
		slices.SortStableFunc(heads, func(a, b book.Head) int { return cmp.Compare(exact(a), exact(b)) })
	}
	list := make([]Entry, len(heads))
	for i, h := range heads {
		list[i] = Entry{h.ID, string(h.Kind), plain.Line(h.Name, 60), h.At[:10], plain.Line(h.Line, 100)}
	}
	tellApart(ctx, b, heads, list)
	return list
}

// tellApart adds what distinguishes records of the same kind, name and day: the time of day, if needed with seconds,
// and a card's wire feed and travel.
func tellApart(ctx context.Context, b book.Book, heads []book.Head, list []Entry) {
	alike := map[Entry][]int{}
	for i, e := range list {
		key := Entry{Kind: e.Kind, Name: strings.ToLower(e.Name), At: e.At}
		alike[key] = append(alike[key], i)
	}
	for _, rows := range alike {
		if len(rows) < 2 {
			continue
		}
		until := len("2026-03-01T11:04")
		times := map[string]bool{}
		for _, i := range rows {
			times[heads[i].At[:until]] = true
		}
		if len(times) < len(rows) {
			until += len(":05")
		}
		for _, i := range rows {
			list[i].At = strings.Replace(heads[i].At[:until], "T", " ", 1)
			list[i].Line = strings.TrimPrefix(setAs(ctx, b, &heads[i])+", "+list[i].Line, ", ")
		}
	}
}

// setAs is the wire feed and travel of a kept card; "" for any other record.
func setAs(ctx context.Context, b book.Book, h *book.Head) string {
	if h.Kind != book.CardKind {
		return ""
	}
	_, c, err := CardOf(ctx, b, h.ID)
	if err != nil || !c.Card.Used.Feed.Set || !c.Card.Used.Travel.Set {
		return ""
	}
	return fmt.Sprintf("%.2f m/min at %.1f mm/s", c.Card.Used.Feed.V, c.Card.Used.Travel.V)
}
