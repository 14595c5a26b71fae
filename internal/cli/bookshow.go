package cli

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/internal/shop"
)

// ofKind makes a command work on the record that its arguments name, of the kind that --kind gives.
func ofKind(cmd *cobra.Command, do func(cmd *cobra.Command, kind book.Kind, name string) error) *cobra.Command {
	cmd.Flags().String("kind", "card", kindUsage)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		kind, err := kindOf(cmd)
		if err != nil {
			return err
		}
		name, err := nameOf(args)
		if err != nil {
			return err
		}
		return do(cmd, kind, name)
	}
	return cmd
}

// kindOf reads --kind; "" means every kind.
func kindOf(cmd *cobra.Command) (book.Kind, error) {
	text := flagText(cmd, "kind")
	if k := book.Kind(strings.ToLower(text)); text == "" || slices.Contains(book.Kinds[:], k) {
		return k, nil
	}
	return "", wrong("--kind: there is no kind "+quote(text), "type "+kindUsage)
}

func (d *Deps) bookShow() *cobra.Command {
	cmd := withJSON(&cobra.Command{Use: "show NAME", Short: "A kept card as it was saved, or any other record",
		Long: `A kept card as it was saved, or with --kind another record, by its name, its id or the first four
characters of the id. --all adds its history, and for a card its test beads and what this program computes for it
today.`,
		Example: "  brazebooth book show tank lid\n  brazebooth book show --all tank lid\n" +
			"  brazebooth book show --kind source booth 1"})
	cmd.Flags().Bool("all", false, "with history, test beads and what this program computes today")
	cmd.Flags().String("units", "", unitsUsage)
	return ofKind(cmd, func(cmd *cobra.Command, kind book.Kind, name string) error {
		return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
			r, err := book.Resolve(ctx, b, kind, name)
			switch {
			case err != nil:
				return err
			case asJSON(cmd):
				return d.document(book.Schema, map[string]any{"revision": r})
			}
			blocks, err := shop.Held(&r)
			if flagOn(cmd, "all") {
				blocks, err = shop.RecordOf(ctx, b, &r)
			}
			if err == nil {
				d.tell("%s", report.Text(blocks, report.Options{Units: d.units.Lead()}))
			}
			return err
		})
	})
}

func (d *Deps) bookHistory() *cobra.Command {
	cmd := &cobra.Command{Use: "history NAME", Short: "All revisions of a record, oldest first",
		Example: "  brazebooth book history tank lid"}
	return ofKind(cmd, func(cmd *cobra.Command, kind book.Kind, name string) error {
		return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
			r, err := book.Resolve(ctx, b, kind, name)
			if errors.Is(err, book.ErrNone) {
				if gone, deleted := book.ResolveDeleted(ctx, b, kind, name); deleted == nil {
					r, err = gone, nil
				}
			}
			if err != nil {
				return err
			}
			list, err := b.History(ctx, r.ID)
			if err != nil {
				return err
			}
			d.tell("%s", report.Text([]report.Block{shop.History(list)}, report.Options{}))
			return nil
		})
	})
}

func (d *Deps) bookDelete() *cobra.Command {
	return d.marking("delete NAME", "Mark a record as not wanted; it stays in the history",
		"  brazebooth book delete stove leg\n  brazebooth book delete --kind trial 3f0a", (*shop.Shop).Delete)
}

func (d *Deps) bookRestore() *cobra.Command {
	return d.marking("restore NAME", "Undo a deletion", "  brazebooth book restore stove leg", (*shop.Shop).Restore)
}

func (d *Deps) marking(use, short, example string,
	mark func(*shop.Shop, context.Context, book.Kind, string) (shop.Done, error)) *cobra.Command {
	cmd := &cobra.Command{Use: use, Short: short, Example: example}
	return ofKind(cmd, func(cmd *cobra.Command, kind book.Kind, name string) error {
		return d.act(cmd, func(ctx context.Context, s *shop.Shop) (shop.Done, error) {
			return mark(s, ctx, kind, name)
		})
	})
}

func (d *Deps) bookEdit() *cobra.Command {
	cmd := &cobra.Command{
		Use: "edit NAME", Short: "Another name, tags or note for a kept card; the old ones stay in its history",
		Example: `  brazebooth book edit tank lid --name "tank lid, new" --tags tank,lid`,
		RunE: func(cmd *cobra.Command, args []string) error {
			name, err := nameOf(args)
			if err != nil {
				return err
			}
			return d.act(cmd, func(ctx context.Context, s *shop.Shop) (shop.Done, error) {
				return s.EditCard(ctx, name, given(cmd))
			})
		},
	}
	bindNamed(cmd, "its name from now on")
	return cmd
}

func given(cmd *cobra.Command) map[string]string {
	list := map[string]string{}
	cmd.Flags().Visit(func(f *pflag.Flag) { list[f.Name] = f.Value.String() })
	return list
}

// differ prints the differences under a head line that says what is compared; why adds a reason to each.
func (d *Deps) differ(cmd *cobra.Command, list []shop.Difference, head string, why bool) error {
	if asJSON(cmd) {
		return d.document(book.Schema, map[string]any{"differences": report.OrEmpty(list)})
	}
	d.say("%s\n", head)
	for _, x := range list {
		shown := func(v float64) string {
			return quantity.Show(quantity.OnDial(x.Name, v, x.Unit, quantity.Metric), x.Unit, quantity.Metric)
		}
		a, b := shown(x.A), shown(x.B)
		by := fmt.Sprintf("%+.1f %%", x.By)
		switch {
		case a == b: // the difference is smaller than the usual digits show
			a, b = fmt.Sprintf("%.5g", x.A), fmt.Sprintf("%.5g %s", x.B, quantity.Label(x.Unit, quantity.Metric))
		case strings.HasPrefix(x.Why, "only the first"):
			b, by = "none", ""
		case strings.HasPrefix(x.Why, "only the second"):
			a, by = "none", ""
		case x.A == 0:
			by = ""
		}
		d.tell("  %-18s %13s → %-13s %s\n", calc.FigureLabel(x.Name), a, b, by)
		if why {
			d.tell("%s", report.Wrapped("      ", plain.Line(x.Why, 300)))
		}
	}
	if len(list) == 0 {
		d.say("no figure differs\n")
	}
	return nil
}

func (d *Deps) bookCompare() *cobra.Command {
	return withJSON(&cobra.Command{
		Use: "compare NAME NAME", Short: "Two kept cards, figure by figure",
		Example: `  brazebooth book compare "tank lid" "tank rim"`,
		Args: words(2, 2, "this needs two cards",
			`their ids, or names in quotes: brazebooth book compare "tank lid" "tank rim"`),
		RunE: func(cmd *cobra.Command, args []string) error {
			return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
				first, second, list, err := shop.Compare(ctx, b, args[0], args[1])
				if err != nil {
					return err
				}
				return d.differ(cmd, list, first.Name+" → "+second.Name, false)
			})
		},
	})
}

func (d *Deps) bookRecompute() *cobra.Command {
	cmd := withJSON(&cobra.Command{
		Use: "recompute NAME", Short: "What this program computes for a kept card today, and why it differs",
		Long: `What this program computes for a kept card's job today, figure by figure, and why it differs from what
was saved. The saved card is never changed. --all goes through every card and lists those that a correction changes.`,
		Example: "  brazebooth book recompute tank lid\n  brazebooth book recompute --all",
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
				return d.differ(cmd, list, c.Name+": saved → today, version "+Version, true)
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
			d.say("%s %s: this program cannot compute a card for it: %s\n", r.ID, c.Name, plain.Line(err.Error(), 120))
			return ctx.Err()
		}
		return d.differ(cmd, list, r.ID+" "+c.Name, true)
	})
	if err != nil {
		return err
	}
	d.say("%d of %d cards get other figures today; the saved ones stay as they are\n", touched, n)
	return nil
}
