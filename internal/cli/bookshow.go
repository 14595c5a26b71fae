package cli

import (
	"context"
	"errors"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"brazebooth/internal/book"
	"brazebooth/internal/report"
	"brazebooth/internal/shop"
)

// ofKind makes a command answer about a record of the kind of --kind that its words mean.
func ofKind(cmd *cobra.Command, do func(cmd *cobra.Command, kind book.Kind, name string) error) *cobra.Command {
	kind := cmd.Flags().String("kind", "card", kindUsage)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		k, err := kindOf(*kind)
		if err != nil {
			return err
		}
		name, err := nameOf(args)
		if err != nil {
			return err
		}
		return do(cmd, k, name)
	}
	return cmd
}

func (d *Deps) bookShow() *cobra.Command {
	cmd := &cobra.Command{Use: "show NAME", Short: "A kept card as it was saved, or any other record",
		Long: `A kept card as it was saved, or with --kind another record, by its name, its id or the first four letters of that. --all
adds its history, and to a card the test beads laid with it and what this program says of it today.`}
	asJSON := cmd.Flags().Bool("json", false, "JSON")
	all := cmd.Flags().Bool("all", false, "with history, test beads and what this program says today")
	units := cmd.Flags().String("units", "", unitsUsage)
	return ofKind(cmd, func(cmd *cobra.Command, kind book.Kind, name string) error {
		sys, err := unitsOf(*units)
		if err != nil {
			return err
		}
		return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
			r, err := book.Resolve(ctx, b, kind, name)
			switch {
			case err != nil:
				return err
			case *asJSON:
				return d.encode(map[string]any{"schema": book.Schema, "version": Version, "revision": r})
			}
			blocks, err := shop.Held(&r)
			if *all {
				blocks, err = shop.RecordOf(ctx, b, &r)
			}
			if err != nil {
				return err
			}
			return d.tell("%s", report.Text(blocks, report.Options{Units: sys.Lead()}))
		})
	})
}

func (d *Deps) bookHistory() *cobra.Command {
	cmd := &cobra.Command{Use: "history NAME", Short: "Every state that a record ever had"}
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
			return d.tell("%s", report.Text([]report.Block{shop.History(list)}, report.Options{}))
		})
	})
}

func (d *Deps) bookDelete() *cobra.Command {
	return d.marking("delete NAME", "Mark a record as not wanted; it stays in the history", (*shop.Shop).Delete)
}

func (d *Deps) bookRestore() *cobra.Command {
	return d.marking("restore ID", "Take a deletion back", (*shop.Shop).Restore)
}

func (d *Deps) marking(use, short string,
	mark func(*shop.Shop, context.Context, book.Kind, string) (shop.Done, error)) *cobra.Command {
	return ofKind(&cobra.Command{Use: use, Short: short}, func(cmd *cobra.Command, kind book.Kind, name string) error {
		return d.act(cmd, func(s *shop.Shop) (shop.Done, error) { return mark(s, cmd.Context(), kind, name) })
	})
}

func (d *Deps) bookEdit() *cobra.Command {
	cmd := &cobra.Command{
		Use: "edit NAME", Short: "Another name, tags or note for a kept card; the old ones stay in its history",
		RunE: func(cmd *cobra.Command, args []string) error {
			name, err := nameOf(args)
			if err != nil {
				return err
			}
			return d.act(cmd, func(s *shop.Shop) (shop.Done, error) {
				return s.EditCard(cmd.Context(), name, given(cmd))
			})
		},
	}
	cmd.Flags().String("name", "", "what it is called from now on")
	cmd.Flags().String("tags", "", "words to find it by, with commas")
	cmd.Flags().String("note", "", "anything worth knowing")
	return cmd
}

// given are the flags that were given, with what stands behind them.
func given(cmd *cobra.Command) map[string]string {
	list := map[string]string{}
	cmd.Flags().Visit(func(f *pflag.Flag) { list[f.Name] = f.Value.String() })
	return list
}
