package cli

import (
	"context"
	"errors"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/book"
	"brazebooth/internal/plain"
)

// known looks a record up by its name; a book that is not there yet knows none. While the server is away nobody can tell,
// and that is an error: a second record of the name would hide the first.
func (d *Deps) known(cmd *cobra.Command, kind book.Kind, name string) (r book.Revision, found bool, err error) {
	where, err := d.place(cmd)
	if err != nil {
		return r, false, err
	}
	b, err := book.Read(cmd.Context(), where)
	if errors.Is(err, book.ErrNone) {
		return r, false, nil
	}
	if err != nil {
		return r, false, bookError(err)
	}
	defer b.Close()
	r, err = book.Named(cmd.Context(), b, kind, name)
	if errors.Is(err, book.ErrNone) {
		return r, false, nil
	}
	return r, err == nil, bookError(err)
}

// change saves another state of a record; that wants the book itself. What comes of the record is asked again where
// somebody else changes it meanwhile; a nil body leaves it as it is.
func (d *Deps) change(cmd *cobra.Command, old *book.Revision, next func(*book.Revision) (body any, what string, err error)) error {
	return d.withBook(cmd, true, func(ctx context.Context, b book.Book) error {
		for {
			now, err := b.Get(ctx, old.ID)
			if err != nil {
				return err
			}
			body, what, err := next(&now)
			if err != nil {
				return err
			}
			if body == nil {
				return d.tell("%s\n", plain.Line(what, 200))
			}
			r, err := d.author().Change(&now, body)
			if err != nil {
				return err
			}
			err = b.SaveOn(ctx, r)
			if errors.Is(err, book.ErrStale) && ctx.Err() == nil {
				continue
			}
			if err != nil {
				return err
			}
			return d.tell("changed %s %s\n", r.ID, plain.Line(what, 200))
		}
	})
}

func (d *Deps) bookPerson() *cobra.Command {
	return &cobra.Command{
		Use: "person [NAME]", Short: "A short name of somebody who saves; without one it lists them",
		RunE: func(cmd *cobra.Command, args []string) error {
			p := book.Person{Name: strings.Join(args, " ")}
			p.Clean()
			if p.Name == "" {
				return d.list(cmd, book.Query{Kind: book.PersonKind}, false)
			}
			_, known, err := d.known(cmd, book.PersonKind, p.Name)
			if err != nil {
				return err
			}
			if known {
				return d.say("%s is in the book\n", plain.Line(p.Name, 60))
			}
			_, err = d.keep(cmd, book.PersonKind, p, "person "+p.Name)
			return err
		},
	}
}
