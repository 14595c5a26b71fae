package cli

import (
	"context"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/book"
	"brazebooth/internal/choice"
	"brazebooth/internal/shop"
)

func (d *Deps) bookPerson() *cobra.Command {
	return &cobra.Command{
		Use: "person [NAME]", Short: "A short name of somebody who saves; without one it lists them",
		RunE: func(cmd *cobra.Command, args []string) error {
			name := strings.TrimSpace(strings.Join(args, " "))
			return d.enter(cmd, book.PersonKind, name != "", map[string]string{"name": name})
		},
	}
}

func (d *Deps) bookSource() *cobra.Command {
	cmd := &cobra.Command{
		Use: "source", Short: "A power source with its plate; without a name it lists them", Args: noArgs,
		Example: `  brazebooth book source --name "booth 1" --rated-amps 200A --rated-duty 60% --nozzle-bore 1/2in`,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return d.enter(cmd, book.SourceKind, cmd.Flags().Changed("name"), given(cmd))
		},
	}
	bind(cmd, "rated-amps", "rated-duty", "nozzle-bore")
	cmd.Flags().String("name", "", "its name")
	cmd.Flags().String("least-amps", "", "least current on its plate")
	cmd.Flags().String("most-amps", "", "most current on its plate")
	bindNote(cmd)
	return cmd
}

func (d *Deps) bookSpool() *cobra.Command {
	cmd := &cobra.Command{
		Use: "spool", Short: "A spool of wire and what is left on it; without a lot it lists them", Args: noArgs,
		Example: `  brazebooth book spool --lot A17 --filler cusi3 --wire .035 --full 4540
  brazebooth book spool --lot A17 --used 120`,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return d.enter(cmd, book.SpoolKind, cmd.Flags().Changed("lot"), given(cmd))
		},
	}
	bind(cmd, "filler", "wire")
	cmd.Flags().String("lot", "", "lot or number on the spool")
	cmd.Flags().Float64("full", 0, "grams of wire on the full spool")
	cmd.Flags().Float64("used", 0, "grams that were used since")
	bindNote(cmd)
	return cmd
}

// enter enters what was given of a record; without its name it lists those that are known.
func (d *Deps) enter(cmd *cobra.Command, kind book.Kind, named bool, given map[string]string) error {
	if !named {
		return d.list(cmd, book.Query{Kind: kind})
	}
	return d.act(cmd, func(ctx context.Context, s *shop.Shop) (shop.Done, error) {
		return s.SaveEntry(ctx, kind, given)
	})
}

func (d *Deps) bookTrial() *cobra.Command {
	var t book.Trial
	cmd := &cobra.Command{
		Use: "trial [NAME]", Short: "Keep a test bead: how it was laid, what it showed, what came of it",
		Long: `Keep a test bead of a kept card: the card's job with the flags that were set otherwise, what was seen,
and the verdict.`,
		Example: `  brazebooth book trial "tank lid" --travel 7.5 --seen rolled-edge --verdict bad` +
			` --peel "lets go at the toe"`,
		RunE: func(cmd *cobra.Command, args []string) error {
			any := slices.ContainsFunc(choice.All(), func(c choice.Choice) bool { return cmd.Flags().Changed(c.Name) })
			if len(args) == 0 && !any {
				return wrong("a trial without a job",
					"name the kept card that was laid, or give the job: --metal --gauge --feed --travel")
			}
			if len(args) > 0 {
				err := d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
					r, c, err := shop.CardOf(ctx, b, strings.Join(args, " "))
					t.Card, t.Job = r.ID, c.Card.Used
					return err
				})
				if err != nil {
					return err
				}
			}
			if err := jobInto(cmd, &t.Job); err != nil {
				return err
			}
			t.Source, t.Lot, t.Note = flagText(cmd, sourceName), flagText(cmd, "lot"), flagText(cmd, "note")
			return d.act(cmd, func(ctx context.Context, s *shop.Shop) (shop.Done, error) { return s.SaveTrial(ctx, t) })
		},
	}
	bindAll(cmd)
	cmd.Flags().StringVar(&t.Seen, "seen", "", "what the bead shows, as in correct")
	cmd.Flags().StringVar(&t.Verdict, "verdict", "", "good, acceptable or bad")
	cmd.Flags().StringVar(&t.Peel, "peel", "", "how the peel or bend went")
	cmd.Flags().StringVar(&t.Photo, "photo", "", "name of a photo's file")
	bindLot(cmd)
	bindNote(cmd)
	return cmd
}

func bindLot(cmd *cobra.Command) { cmd.Flags().String("lot", "", "lot of the wire") }
