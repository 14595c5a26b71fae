package cli

import (
	"context"
	"math"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

// difference is one figure in two cards.
type difference struct {
	Name string  `json:"name"`
	Unit string  `json:"unit"`
	A    float64 `json:"a"`
	B    float64 `json:"b"`
	By   float64 `json:"by"` // % of a
	Why  string  `json:"why,omitempty"`
}

// twoArgs wants two cards.
func twoArgs(_ *cobra.Command, args []string) error {
	if len(args) != 2 {
		return wrong("two cards are wanted", `type their ids, or names in quotes: brazebooth book compare "tank lid" "tank rim"`)
	}
	return nil
}

// share is how far b lies from a, %; none where a is zero.
func share(a, b float64) float64 {
	if a == 0 {
		return 0
	}
	return 100 * (b/a - 1)
}

// differences are the figures that two cards do not agree on; one that only one has is named with the other at zero.
func differences(a, b *book.Kept) []difference {
	var list []difference
	in := map[string]book.Figure{}
	for _, f := range b.Figures {
		in[f.Name] = f
	}
	for _, f := range a.Figures {
		g, ok := in[f.Name]
		delete(in, f.Name)
		if ok && math.Abs(f.Value-g.Value) <= 1e-9*math.Abs(f.Value) {
			continue
		}
		why := ""
		switch {
		case !ok:
			why = "only the first has it"
		case f.Formula != g.Formula:
			why = f.Formula + " → " + g.Formula
		case f.Source != g.Source:
			why = f.Source + " → " + g.Source
		}
		list = append(list, difference{f.Name, f.Unit, f.Value, g.Value, share(f.Value, g.Value), why})
	}
	for _, g := range b.Figures {
		if _, left := in[g.Name]; left {
			list = append(list, difference{g.Name, g.Unit, 0, g.Value, 0, "only the second has it"})
		}
	}
	return list
}

func (d *Deps) printDifferences(list []difference) error {
	if len(list) == 0 {
		return d.say("no figure differs\n")
	}
	for _, x := range list {
		if err := d.tell("  %-18s %9.4g → %-9.4g %-6s %+.1f %%  %s\n", calc.FigureLabel(x.Name), x.A, x.B, quantity.Label(x.Unit, quantity.Metric), x.By, plain.Line(x.Why, 120)); err != nil {
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
			return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
				_, first, err := cardOf(ctx, b, args[0])
				if err != nil {
					return err
				}
				_, second, err := cardOf(ctx, b, args[1])
				if err != nil {
					return err
				}
				list := differences(&first.Card, &second.Card)
				if asJSON {
					return d.encode(map[string]any{"schema": book.Schema, "version": Version, "differences": orNone(list)})
				}
				if err := d.say("%s → %s\n", first.Name, second.Name); err != nil {
					return err
				}
				return d.printDifferences(list)
			})
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "JSON")
	return cmd
}

func orNone[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
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
			return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
				if !all {
					_, c, err := cardOf(ctx, b, strings.Join(args, " "))
					if err != nil {
						return err
					}
					list, err := d.today(ctx, &c)
					if err != nil {
						return err
					}
					if asJSON {
						return d.encode(map[string]any{"schema": book.Schema, "version": Version, "differences": orNone(list)})
					}
					if err := d.say("%s: saved → today, version %s\n", c.Name, Version); err != nil {
						return err
					}
					return d.printDifferences(list)
				}
				return d.recomputeAll(ctx, b)
			})
		},
	}
	cmd.Flags().BoolVar(&all, "all", false, "every card: a notice of what a correction touches")
	cmd.Flags().BoolVar(&asJSON, "json", false, "JSON")
	return cmd
}

// today is what differs between a kept card and the same job computed now.
func (d *Deps) today(ctx context.Context, c *book.Card) ([]difference, error) {
	card, err := d.solve(ctx, c.Card.Used)
	if err != nil {
		return nil, err
	}
	now := book.Keep(&card)
	return settled(differences(&c.Card, &now)), nil
}

// settled leaves out what differs in words only: a setting that was suggested is given when it is computed again.
func settled(list []difference) []difference {
	var out []difference
	for _, x := range list {
		if math.Abs(x.By) > 0.05 || x.A == 0 || x.B == 0 {
			out = append(out, x)
		}
	}
	return out
}

func (d *Deps) recomputeAll(ctx context.Context, b book.Book) error {
	n, touched := 0, 0
	for {
		list, err := b.List(ctx, book.Query{Kind: book.CardKind, Limit: 200, Offset: n})
		if err != nil {
			return err
		}
		if len(list) == 0 {
			return d.say("%d of %d cards are touched; none was changed\n", touched, n)
		}
		for _, h := range list {
			n++
			_, c, err := cardOf(ctx, b, h.ID)
			if err != nil {
				return err
			}
			diff, err := d.today(ctx, &c)
			if err != nil {
				if err := d.say("%s %s: this program has no card for it: %s\n", h.ID, c.Name, plain.Line(err.Error(), 120)); err != nil {
					return err
				}
				touched++
				continue
			}
			if len(diff) == 0 {
				continue
			}
			touched++
			if err := d.say("%s %s\n", h.ID, c.Name); err != nil {
				return err
			}
			if err := d.printDifferences(diff); err != nil {
				return err
			}
		}
	}
}
