package cli

import (
	"github.com/spf13/cobra"

	"brazebooth/internal/report"
)

func (d *Deps) bookValidation() *cobra.Command {
	cmd := &cobra.Command{
		Use: "validation", Short: "What was computed beside what this shop measured", Args: noArgs,
		Long: `What this program computes beside what the shop measured: current and volts of its readings, width, leg,
throat and bare zinc of the test beads that were cut. By quantity the mean ratio, the scatter, and how many values lie
in the computed 95 % band. What the book has taught the program is left out: it would test the values by themselves.`,
		Example: `  brazebooth book trial "tank lid" --verdict good --measured-width 6.1mm
  brazebooth book validation`,
		RunE: func(cmd *cobra.Command, _ []string) error {
			from, err := d.shop(cmd)
			if err != nil {
				return err
			}
			units, err := unitsOf(cmd)
			if err != nil {
				return err
			}
			blocks, err := from.Validation(cmd.Context(), units)
			if err != nil {
				return err
			}
			d.say("%s", report.Text(blocks, report.Options{Units: units, Comma: d.comma}))
			return nil
		},
	}
	cmd.Flags().String("units", "", unitsUsage)
	return cmd
}
