package cli

import (
	"context"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/internal/shop"
)

// differ answers with what differs, under a line that says between what.
func (d *Deps) differ(cmd *cobra.Command, list []shop.Difference, head string) error {
	if asJSON(cmd) {
		return d.document(book.Schema, map[string]any{"differences": notNull(list)})
	}
	d.say("%s\n", head)
	for _, x := range list {
		d.tell("  %-18s %9.4g → %-9.4g %-6s %+.1f %%  %s\n", calc.FigureLabel(x.Name), x.A, x.B,
			quantity.Label(x.Unit, quantity.Metric), x.By, plain.Line(x.Why, 120))
	}
	if len(list) == 0 {
		d.say("no figure differs\n")
	}
	return nil
}

func (d *Deps) bookCompare() *cobra.Command {
	return withJSON(&cobra.Command{
		Use: "compare ID ID", Short: "Two kept cards, figure by figure",
		Args: words(2, 2, "two cards are wanted",
			`their ids, or names in quotes: brazebooth book compare "tank lid" "tank rim"`),
		RunE: func(cmd *cobra.Command, args []string) error {
			from, err := d.shop(cmd)
			if err != nil {
				return err
			}
			first, second, list, err := from.Compare(cmd.Context(), args[0], args[1])
			if err != nil {
				return err
			}
			return d.differ(cmd, list, first.Name+" → "+second.Name)
		},
	})
}

func (d *Deps) bookRecompute() *cobra.Command {
	cmd := withJSON(&cobra.Command{
		Use: "recompute NAME", Short: "What this program says of a kept card, and why it differs",
		Long: `What this program would say of a kept card's job today, figure by figure, and why it differs from what
was saved. The saved card is never changed. --all goes through every card and lists those that a correction changes.`,
		RunE: func(cmd *cobra.Command, args []string) error {
			all := flagOn(cmd, "all")
			if all == (len(args) > 0) {
				return wrong("one card, or all of them", "type a name, or --all")
			}
			if all {
				return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
					return d.recomputeAll(ctx, cmd, b)
				})
			}
			return d.withCard(cmd, args, func(ctx context.Context, _ book.Book, _ *book.Revision, c *book.Card) error {
				list, err := shop.Today(ctx, c, d.progress())
				if err != nil {
					return err
				}
				return d.differ(cmd, list, c.Name+": saved → today, version "+Version)
			})
		},
	})
	cmd.Flags().Bool("all", false, "every card: those that a correction changes")
	return cmd
}

func (d *Deps) recomputeAll(ctx context.Context, cmd *cobra.Command, b book.Book) error {
	n, touched := 0, 0
	err := book.Present(ctx, b, book.CardKind, func(r *book.Revision) error {
		c, err := book.Body[book.Card](r)
		if err != nil {
			return err
		}
		c.Clean()
		n++
		list, err := shop.Today(ctx, &c, d.progress())
		if err == nil && len(list) == 0 {
			return nil
		}
		touched++
		if err != nil {
			d.say("%s %s: this program has no card for it: %s\n", r.ID, c.Name, plain.Line(err.Error(), 120))
			return ctx.Err()
		}
		return d.differ(cmd, list, r.ID+" "+c.Name)
	})
	if err != nil {
		return err
	}
	d.say("%d of %d cards get other figures today; the saved ones stay as they are\n", touched, n)
	return nil
}
