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
