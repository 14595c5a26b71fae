package cli

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/internal/sheet"
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

func (d *Deps) bookShow() *cobra.Command {
	var asJSON, all bool
	var units, kind string
	cmd := &cobra.Command{
		Use: "show NAME", Short: "A kept card as it was saved, or any other record", Long: `A kept card as it was saved, or with --kind another record, by its name, its id or the first four letters of that. --all
adds its history, and to a card the test beads laid with it and what this program says of it today.`,
		RunE: func(cmd *cobra.Command, args []string) error {
			sys, err := unitsOf(units)
			if err != nil {
				return err
			}
			k, err := kindOf(kind)
			if err != nil {
				return err
			}
			name, err := nameOf(args)
			if err != nil {
				return err
			}
			return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
				r, err := book.Resolve(ctx, b, k, name)
				if err != nil {
					return err
				}
				if asJSON {
					return d.encode(map[string]any{"schema": book.Schema, "version": Version, "revision": r})
				}
				show := shownText
				if all {
					show = RecordText
				}
				text, err := show(ctx, b, r.ID, sys)
				if err != nil {
					return err
				}
				return d.say("%s", text)
			})
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "JSON")
	cmd.Flags().BoolVar(&all, "all", false, "with history, test beads and what this program says today")
	cmd.Flags().StringVar(&kind, "kind", "card", "card, trial, reading, source, spool or person")
	cmd.Flags().StringVar(&units, "units", "", unitsUsage)
	return cmd
}

// keptText is a kept card in at most 80 columns.
func keptText(r *book.Revision, c *book.Card, sys quantity.System) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n%s, saved %s by %s with version %s\n", c.Name, r.ID, r.At[:16], orUnknown(plain.Line(r.Who, 40)), plain.Line(r.Program, 20))
	b.WriteString(sheet.Wrapped("", c.Line()))
	if len(c.Tags) > 0 {
		b.WriteString(sheet.Wrapped("tags: ", strings.Join(c.Tags, ", ")))
	}
	if c.Note != "" {
		b.WriteString(sheet.Wrapped("note: ", c.Note))
	}
	b.WriteByte('\n')
	for _, w := range c.Card.Warns {
		if w.Severity == calc.Stop {
			b.WriteString(sheet.Wrapped("STOP  ", w.Text))
		}
	}
	for _, f := range c.Card.Figures {
		value, band := quantity.Band(f.Value, f.Low, f.High, f.Unit, one(sys))
		if f.Low == f.High {
			band = ""
		}
		fmt.Fprintf(&b, "  %-15s %9s %-7s %s\n", calc.FigureLabel(f.Name), value, quantity.Label(f.Unit, one(sys)), band)
	}
	fmt.Fprintf(&b, "  zone            %s\n\n", c.Card.Zone)
	for _, w := range c.Card.Warns {
		if w.Severity != calc.Stop {
			b.WriteString(sheet.Wrapped(strings.ToUpper(plain.Line(string(w.Severity), 10))+"  ", w.Text))
		}
	}
	b.WriteString("\nStrike a test bead on scrap of the same sheet first, and peel it.\n")
	return b.String()
}

func one(sys quantity.System) quantity.System {
	if sys == quantity.Both {
		return quantity.Metric
	}
	return sys
}

func orUnknown(s string) string {
	if s == "" {
		return "nobody named"
	}
	return s
}

func (d *Deps) bookHistory() *cobra.Command {
	var kind string
	cmd := &cobra.Command{
		Use: "history NAME", Short: "Every state that a record ever had",
		RunE: func(cmd *cobra.Command, args []string) error {
			name, err := nameOf(args)
			if err != nil {
				return err
			}
			k, err := kindOf(kind)
			if err != nil {
				return err
			}
			return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
				r, err := book.Resolve(ctx, b, k, name)
				if errors.Is(err, book.ErrNone) {
					if gone, deleted := book.ResolveDeleted(ctx, b, k, name); deleted == nil {
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
				return d.say("%s", historyText(list))
			})
		},
	}
	cmd.Flags().StringVar(&kind, "kind", "card", "card, trial, reading, source, spool or person")
	return cmd
}

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
		if err := d.say("  %-18s %9.4g → %-9.4g %-6s %+.1f %%  %s\n", calc.FigureLabel(x.Name), x.A, x.B, quantity.Label(x.Unit, quantity.Metric), x.By, plain.Line(x.Why, 120)); err != nil {
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
	cmd.Flags().StringVar(&kind, "kind", "card", "card, trial, reading, source, spool or person")
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
	cmd.Flags().StringVar(&kind, "kind", "card", "card, trial, reading, source, spool or person")
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
