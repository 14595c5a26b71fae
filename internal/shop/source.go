package shop

import (
	"context"
	"errors"
	"strings"
	"unicode"

	"brazebooth/internal/address"
	"brazebooth/internal/book"
	"brazebooth/internal/near"
	"brazebooth/internal/plain"
)

// saveAt saves a new record of a power source, and then reads the book again to say more about it. body must hold the
// source, which gets its name as it was entered; without a source there is no more to say.
func (s *Shop) saveAt(ctx context.Context, done *Done, kind book.Kind, body any, source *string,
	more func(b book.Book) error) error {
	first, err := s.source(ctx, done, source)
	if err == nil {
		err = s.save(ctx, done, kind, body, first...)
	}
	if err == nil && *source != "" {
		s.after(ctx, done, more)
	}
	return err
}

// source makes sure that the power source of a new record is in the book, and sets its name as it was entered. A new
// power source is saved with the record, with a remark if the book has others. A name that looks like a misspelling of
// a known one, with the same digits, is refused, since readings of one power source would otherwise be split between
// two. "booth 2" beside "booth 1" is a new one. While the server cannot be reached, the name is accepted as it is.
func (s *Shop) source(ctx context.Context, done *Done, name *string) ([]book.Revision, error) {
	if *name == "" {
		return nil, nil
	}
	var others, like []string
	err := s.with(ctx, false, func(b book.Book) error {
		old, err := book.Named(ctx, b, book.SourceKind, *name)
		if err == nil {
			if known, err := book.Body[book.Source](&old); err == nil {
				*name = known.Name
			}
			return nil
		}
		all, _ := b.List(ctx, book.Query{Kind: book.SourceKind, Limit: manySources}) // for a remark only
		for i, h := range all {
			if i < 6 { // a remark names at most six
				others = append(others, plain.Line(h.Name, 40))
			}
			if misspeltOf(*name, h.Name) {
				like = append(like, plain.Line(h.Name, 40))
			}
		}
		return err
	})
	switch {
	case errors.Is(err, book.ErrNone) && len(like) > 0:
		return nil, wrong("no power source is called "+quote(*name), "type "+near.Or(like)+", or enter it first: "+
			"brazebooth book source --name "+quote(*name))
	case errors.Is(err, book.ErrNone):
		if len(others) > 0 {
			done.remark("the power source " + quote(*name) + " is new and entered too; where " + near.Or(others) +
				" was meant, brazebooth book delete takes both back")
		}
		r, err := s.Author.New(book.SourceKind, book.Source{Name: *name})
		return []book.Revision{r}, err
	case err != nil && address.Server(s.Where) && book.Away(ctx, s.Where):
		return nil, nil
	}
	return nil, err
}

// manySources is the most names that are compared with a new one.
const manySources = 500

// misspeltOf reports whether a name looks like a misspelling of another: its digits are the same and its letters
// nearly.
func misspeltOf(name, other string) bool {
	digits := func(r rune) rune {
		if unicode.IsDigit(r) {
			return r
		}
		return -1
	}
	a, b := strings.ToLower(name), strings.ToLower(other)
	if strings.Map(digits, a) != strings.Map(digits, b) || strings.HasPrefix(b, a) || strings.HasPrefix(a, b) {
		return false
	}
	return len(near.Names(a, []string{b})) > 0
}
