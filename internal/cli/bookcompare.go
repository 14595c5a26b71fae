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

// twoArgs wants two cards.
func twoArgs(_ *cobra.Command, args []string) error {
	if len(args) != 2 {
		return wrong("two cards are wanted",
			`type their ids, or names in quotes: brazebooth book compare "tank lid" "tank rim"`)
	}
	return nil
}

// differ answers with what differs, under a line that says between what.
func (d *Deps) differ(list []shop.Difference, asJSON bool, head string) error {
	if asJSON {
		list = append([]shop.Difference{}, list...) // never null
		return d.encode(map[string]any{"schema": book.Schema, "version": Version, "differences": list})
	}
	if err := d.say("%s\n", head); err != nil {
		return err
	}
	if len(list) == 0 {
		return d.say("no figure differs\n")
	}
	for _, x := range list {
		err := d.tell("  %-18s %9.4g → %-9.4g %-6s %+.1f %%  %s\n", calc.FigureLabel(x.Name), x.A, x.B,
			quantity.Label(x.Unit, quantity.Metric), x.By, plain.Line(x.Why, 120))
		if err != nil {
			return err
		}
	}
	return nil
}

func (d *Deps) bookCompare() *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use: "compare ID ID", Short: "Two kept cards, figure by figure", Args: twoArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			from, err := d.shop(cmd)
			if err != nil {
				return err
			}
			first, second, list, err := from.Compare(cmd.Context(), args[0], args[1])
			if err != nil {
				return err
			}
			return d.differ(list, asJSON, first.Name+" → "+second.Name)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "JSON")
	return cmd
}

func (d *Deps) bookRecompute() *cobra.Command {
	var all, asJSON bool
	cmd := &cobra.Command{
		Use: "recompute NAME", Short: "What this program says of a kept card, and why it differs",
		Long: `What this program would say of a kept card's job today, figure by figure, and why it differs from what was saved. The
saved card is never changed. --all goes through every card and lists those that a correction touches.`,
		RunE: func(cmd *cobra.Command, args []string) error {
			if all == (len(args) > 0) {
				return wrong("one card, or all of them", "type a name, or --all")
			}
			if all {
				return d.withBook(cmd, false, d.recomputeAll)
			}
			return d.withCard(cmd, args, func(ctx context.Context, _ book.Book, _ *book.Revision, c *book.Card) error {
				list, err := shop.Today(ctx, c, d.progress())
				if err != nil {
					return err
				}
				return d.differ(list, asJSON, c.Name+": saved → today, version "+Version)
			})
		},
	}
	cmd.Flags().BoolVar(&all, "all", false, "every card: a notice of what a correction touches")
	cmd.Flags().BoolVar(&asJSON, "json", false, "JSON")
	return cmd
}

func (d *Deps) recomputeAll(ctx context.Context, b book.Book) error {
	n, touched := 0, 0
	err := book.Present(ctx, b, book.CardKind, func(r *book.Revision) error {
		c, err := book.Body[book.Card](r)
		if err != nil {
			return err
		}
		c.Clean()
		n++
		list, err := shop.Today(ctx, &c, d.progress())
		switch {
		case err != nil:
			touched++
			return d.say("%s %s: this program has no card for it: %s\n", r.ID, c.Name, plain.Line(err.Error(), 120))
		case len(list) == 0:
			return nil
		}
		touched++
		return d.differ(list, false, r.ID+" "+c.Name)
	})
	if err != nil {
		return err
	}
	return d.say("%d of %d cards are touched; none was changed\n", touched, n)
}
