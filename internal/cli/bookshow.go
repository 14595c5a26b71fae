package cli

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/internal/sheet"
)

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
				return d.tell("%s", text)
			})
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "JSON")
	cmd.Flags().BoolVar(&all, "all", false, "with history, test beads and what this program says today")
	cmd.Flags().StringVar(&kind, "kind", "card", kindUsage)
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
	if text := assumedText(c); text != "" {
		b.WriteString(sheet.Wrapped("assumed: ", text))
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

// assumedText lists what nobody chose when a card was kept.
func assumedText(c *book.Card) string {
	var list []string
	for _, a := range c.Card.Assumed {
		list = append(list, plain.Line(strings.ReplaceAll(a.Field, "_", " ")+" "+a.Value, 60))
	}
	return strings.Join(list, ", ")
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
				return d.tell("%s", historyText(list))
			})
		},
	}
	cmd.Flags().StringVar(&kind, "kind", "card", kindUsage)
	return cmd
}
