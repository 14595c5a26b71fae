package cli

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/book"
)

// cardOf is a kept card that a hand means.
func cardOf(ctx context.Context, b book.Book, word string) (book.Revision, book.Card, error) {
	r, err := book.Resolve(ctx, b, book.CardKind, word)
	if err != nil {
		return r, book.Card{}, err
	}
	c, err := book.Body[book.Card](&r)
	c.Clean()
	return r, c, err
}

// withCard opens the book and does something with the kept card that is meant.
func (d *Deps) withCard(cmd *cobra.Command, args []string, writes bool, do func(ctx context.Context, b book.Book, r *book.Revision, c *book.Card) error) error {
	name, err := nameOf(args)
	if err != nil {
		return err
	}
	return d.withBook(cmd, writes, func(ctx context.Context, b book.Book) error {
		r, c, err := cardOf(ctx, b, name)
		if err != nil {
			return err
		}
		return do(ctx, b, &r, &c)
	})
}

func (d *Deps) bookEdit() *cobra.Command {
	var name, tags, note string
	cmd := &cobra.Command{
		Use: "edit NAME", Short: "Another name, tags or note for a kept card; the old ones stay in its history",
		RunE: func(cmd *cobra.Command, args []string) error {
			if !cmd.Flags().Changed("name") && !cmd.Flags().Changed("tags") && !cmd.Flags().Changed("note") {
				return wrong("nothing to change", "type --name, --tags or --note with what it is from now on")
			}
			return d.withCard(cmd, args, true, func(ctx context.Context, b book.Book, r *book.Revision, c *book.Card) error {
				if cmd.Flags().Changed("name") {
					c.Name = name
				}
				if cmd.Flags().Changed("tags") {
					c.Tags = strings.Split(tags, ",")
				}
				if cmd.Flags().Changed("note") {
					c.Note = note
				}
				c.Clean()
				if c.Name == "" {
					return wrong("a card without a name", `type --name "tank lid"`)
				}
				next, err := d.author().Change(r, c)
				if err != nil {
					return err
				}
				if err := b.SaveOn(ctx, next); err != nil {
					return err
				}
				return d.say("changed %s %s\n", next.ID, c.Name)
			})
		},
	}
	cmd.Flags().StringVar(&name, "name", "", "what it is called from now on")
	cmd.Flags().StringVar(&tags, "tags", "", "words to find it by, with commas")
	cmd.Flags().StringVar(&note, "note", "", "anything worth knowing")
	return cmd
}

func (d *Deps) bookDelete() *cobra.Command {
	var kind string
	cmd := &cobra.Command{
		Use: "delete NAME", Short: "Mark a record as not wanted; it stays in the history",
		RunE: func(cmd *cobra.Command, args []string) error {
			return d.mark(cmd, args, kind, "deleted", func(a book.Author, r *book.Revision) (book.Revision, error) { return a.Delete(r) })
		},
	}
	cmd.Flags().StringVar(&kind, "kind", "card", kindUsage)
	return cmd
}

func (d *Deps) bookRestore() *cobra.Command {
	var kind string
	cmd := &cobra.Command{
		Use: "restore ID", Short: "Take a deletion back",
		RunE: func(cmd *cobra.Command, args []string) error {
			return d.mark(cmd, args, kind, "restored", func(a book.Author, r *book.Revision) (book.Revision, error) {
				if !r.Deleted {
					return *r, wrong("it was not deleted", "brazebooth book list --deleted shows what was")
				}
				return a.Change(r, r.Body)
			})
		},
	}
	cmd.Flags().StringVar(&kind, "kind", "card", kindUsage)
	return cmd
}

// mark saves another revision of a record.
func (d *Deps) mark(cmd *cobra.Command, args []string, kind, done string, next func(book.Author, *book.Revision) (book.Revision, error)) error {
	which, err := nameOf(args)
	if err != nil {
		return err
	}
	k, err := kindOf(kind)
	if err != nil {
		return err
	}
	return d.withBook(cmd, true, func(ctx context.Context, b book.Book) error {
		find := book.Resolve
		if done == "restored" {
			find = book.ResolveDeleted
		}
		r, err := find(ctx, b, k, which)
		if err != nil {
			return err
		}
		n, err := next(d.author(), &r)
		if err != nil {
			return err
		}
		if err := b.SaveOn(ctx, n); err != nil {
			return err
		}
		return d.say("%s %s\n", done, r.ID)
	})
}
