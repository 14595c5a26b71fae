package cli

import (
	"context"

	"github.com/spf13/cobra"

	"brazebooth/internal/book"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/internal/shop"
)

func (d *Deps) bookValidation() *cobra.Command {
	cmd := &cobra.Command{
		Use: "validation", Short: "What was computed beside what this shop measured", Args: noArgs,
		Long: `What this program computes beside what the shop measured: current and volts of its readings, width, leg,
throat and bare zinc of the test beads that were cut. For each quantity it prints the mean ratio, the scatter, and how
many values lie in the computed 95 % band. It computes without what the book has taught the program, because the values
would then be tested against themselves.`,
		Example: `  brazebooth book trial "tank lid" --verdict good --measured-width 6.1mm
  brazebooth book validation`,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
				blocks, err := shop.Validation(ctx, b, d.units)
				d.say("%s", report.Text(blocks, report.Options{Units: d.units, Comma: d.comma}))
				return err
			})
		},
	}
	cmd.Flags().String("units", "", unitsUsage)
	return cmd
}

func measuredInto(cmd *cobra.Command, into *book.Measured) error {
	for _, m := range shop.Cut {
		size, err := quantityOf(cmd, m.Flag, quantity.FieldLength)
		switch {
		case err != nil:
			return err
		case size.Set && (size.V <= 0 || size.V > 100):
			return wrong("--"+m.Flag+": "+quote(flagText(cmd, m.Flag))+" is no size of a bead",
				"type it in mm, over 0 and at most 100: 6.1mm")
		}
		*m.Of(into) = size.V
	}
	return nil
}
