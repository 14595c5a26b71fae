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

// source makes sure that the power source of what is kept is in the book, and gives it the name that it was entered
// by. One that nobody entered is entered with it, and where the book has others that is said. A name that is one slip
// of the hand from another, with the same figures in it, is refused: two power sources would share one's readings.
// "booth 2" beside "booth 1" is another one. While the server is away nobody can tell, and the name is taken as it
// is.
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
			if i < 6 { // a remark names no more
				others = append(others, plain.Line(h.Name, 40))
			}
			if slipOf(*name, h.Name) {
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

// manySources is how many names are compared with a new one.
const manySources = 500

// slipOf reports whether a name differs from another by a slip of the hand: its figures are the same and its letters
// nearly.
func slipOf(name, other string) bool {
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
