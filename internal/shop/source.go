package shop

import (
	"context"
	"errors"

	"brazebooth/internal/book"
	"brazebooth/internal/near"
	"brazebooth/internal/plain"
)

// source makes sure that the power source of what is kept is in the book, and gives it the name that it was entered
// by. One that nobody entered is entered with it: nothing that was measured is lost over a name. Where the book has
// others it may be a slip of the hand, which is said. While the server is away nobody can tell, and the name is taken
// as it is.
func (s *Shop) source(ctx context.Context, done *Done, name *string) ([]book.Revision, error) {
	if *name == "" {
		return nil, nil
	}
	var others []string
	err := s.with(ctx, false, func(b book.Book) error {
		old, err := book.Named(ctx, b, book.SourceKind, *name)
		if err == nil {
			if known, err := book.Body[book.Source](&old); err == nil {
				*name = known.Name
			}
			return nil
		}
		known, _ := b.List(ctx, book.Query{Kind: book.SourceKind, Limit: 6}) // for a remark only
		for _, h := range known {
			others = append(others, plain.Line(h.Name, 40))
		}
		return err
	})
	switch {
	case errors.Is(err, book.ErrNone):
		if len(others) > 0 {
			done.remark("the power source " + quote(*name) + " is new and entered too; where " + near.Or(others) +
				" was meant, brazebooth book delete takes both back")
		}
		r, err := s.Author.New(book.SourceKind, book.Source{Name: *name})
		return []book.Revision{r}, err
	case err != nil && book.IsServer(s.Where) && book.Away(ctx, s.Where):
		return nil, nil
	}
	return nil, err
}
