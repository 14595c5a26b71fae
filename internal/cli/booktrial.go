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
		Long:    "Keep a test bead of a kept card: the card's job with the flags that were set otherwise, what was seen, and the verdict.",
		Example: `  brazebooth book trial "tank lid" --travel 7.5 --seen rolled-edge --verdict bad --peel "lets go at the toe"`,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 && !jobFlags(cmd) {
				return wrong("a trial of no job",
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
			t.Source = sourceFlag(cmd)
			return d.act(cmd, func(s *shop.Shop) (shop.Done, error) { return s.SaveTrial(cmd.Context(), t) })
		},
	}
	bindAll(cmd)
	cmd.Flags().StringVar(&t.Seen, "seen", "", "what the bead shows, as in correct")
	cmd.Flags().StringVar(&t.Verdict, "verdict", "", "good, acceptable or bad")
	cmd.Flags().StringVar(&t.Peel, "peel", "", "how the peel or bend went")
	cmd.Flags().StringVar(&t.Photo, "photo", "", "name of a photo's file")
	cmd.Flags().StringVar(&t.Lot, "lot", "", "lot of the wire")
	cmd.Flags().StringVar(&t.Note, "note", "", "anything worth knowing")
	return cmd
}

// jobFlags reports whether anything of a job was given.
func jobFlags(cmd *cobra.Command) bool {
	return slices.ContainsFunc(choice.All(), func(c choice.Choice) bool { return cmd.Flags().Changed(c.Name) })
}
