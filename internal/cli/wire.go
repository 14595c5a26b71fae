package cli

import (
	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/report"
)

func (d *Deps) wireCommand() *cobra.Command {
	var out output
	cmd := &cobra.Command{
		Use:   "wire",
		Short: "A wire's mass, length, melting, and feed from current or back",
		Example: `  brazebooth wire --filler cusi3 --wire .035
  brazebooth wire --filler ERCuAl-A1 --wire 1.0mm --amps 110
  brazebooth wire --wire .035 --feed 250ipm --stickout 12mm`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			job, err := jobOf(cmd)
			if err != nil {
				return err
			}
			card, err := calc.Wire(job)
			if err != nil {
				return err
			}
			return d.answer(out, report.Wire(&card))
		},
	}
	bind(cmd, "filler", "wire", "feed", "amps", "stickout", "mode")
	out.bind(cmd, "schema.json")
	return cmd
}
