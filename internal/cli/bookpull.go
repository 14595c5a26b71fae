package cli

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/internal/shop"
)

func (d *Deps) bookPull() *cobra.Command {
	cmd := &cobra.Command{
		Use: "pull", Short: "Keep a test piece that was pulled until it broke; without its load, list them",
		Long: `Keep a test piece of your own that was pulled until it broke: the joint as it was laid, the length of its
seam, the load and where it broke. From five pieces of one joint on, strength shows beside the table's load the one
that the pieces support: 95 of 100 pieces carry it, with a confidence of 95 in 100. Withdraw a piece that was a mistake:
brazebooth book reading --withdraw ID. Without a load the pieces are listed with what they teach.`,
		Example: `  brazebooth book pull --power-source "booth 1" --metal galvanized --gauge 1mm --joint lap` +
			` --length 50mm --force 17.2kN --broke sheet
  brazebooth book pull --power-source "booth 1"`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error { return d.pull(cmd) },
	}
	bind(cmd, "metal", "metal2", "gauge", "gauge2", "coating", "coating2", "joint", "filler", "wire", "mode", "gas",
		"feed", "travel", "gap", "length", "throat")
	cmd.Flags().String("force", "", "load at which the piece broke: 17.2kN or 3900lbf")
	cmd.Flags().String("broke", "", "where: sheet, bronze or bond")
	bindRecord(cmd)
	return cmd
}

func (d *Deps) pull(cmd *cobra.Command) error {
	force, err := quantityOf(cmd, "force", quantity.FieldForce)
	switch {
	case err != nil:
		return err
	case !force.Set:
		return d.listPulls(cmd)
	}
	job, err := jobOf(cmd)
	if err != nil {
		return err
	}
	r := book.Reading{Source: flagText(cmd, sourceName), Lot: flagText(cmd, "lot"), Note: flagText(cmd, "note"),
		Pull: book.Pulled{Force: force.V, Broke: flagText(cmd, "broke")}}
	return d.act(cmd, func(ctx context.Context, s *shop.Shop) (shop.Done, error) { return s.SavePull(ctx, r, job) })
}

func (d *Deps) listPulls(cmd *cobra.Command) error {
	source := strings.TrimSpace(flagText(cmd, sourceName))
	return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
		list, err := shop.Pulls(ctx, b, source)
		if err != nil {
			return err
		}
		for i := range list {
			rev, r := &list[i].Revision, &list[i].Body
			d.tell("%s %s %-16s %s: %.2f kN on %.0f mm, broke in the %s\n", rev.ID, rev.At[:10],
				plain.Line(r.Source, 16), plain.Line(r.Pull.For, 60), r.Pull.Force, r.Pull.Length,
				plain.Line(r.Pull.Broke, 10))
		}
		d.say("%s\n", quantity.Count(len(list), "pulled piece"))
		if source != "" {
			d.tellLines(shop.PullLessons(list))
		}
		return nil
	})
}
