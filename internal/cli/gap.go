package cli

import (
	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/report"
)

func (d *Deps) gapCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "gap",
		Short: "Timed arc across an open root: how long on, how long off, how far on",
		Long: `On and off times and the step of a timed arc, found by following the heat in the sheet's plane until
each cycle of on and off is like the one before; what ends each range, and what would help where no times are good. The
mode is timed, whatever --mode says. Without --feed the first of a few feeds that have good times is taken.`,
		Example: `  brazebooth gap --metal mild-steel --gauge 16ga --joint butt --gap 2mm
  brazebooth gap --metal galvanized --gauge 20ga --joint lap --csv heat.csv --png heat.png`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error { return d.timedArc(cmd) },
	}
	bindCard(cmd, "use", "hazard")
	_ = cmd.Flags().MarkHidden("travel") // it is bound; who gives it is told why not
	bindAnswer(cmd, "gap-schema.json")
	cmd.Flags().String("csv", "", "write the heat trace as CSV into a new file; - is standard output")
	cmd.Flags().String("png", "", "write the heat trace as a PNG picture into a new file; - is standard output")
	return cmd
}

func (d *Deps) timedArc(cmd *cobra.Command) error {
	if err := d.free(flagText(cmd, "csv"), flagText(cmd, "png")); err != nil {
		return err
	}
	job, err := d.jobWith(cmd)
	if err != nil {
		return err
	}
	if job.Travel.Set {
		return wrong("--travel: a timed arc has no travel of its own: it follows from the step and the times",
			"leave it out, or give --spot-step, --arc-on and --arc-off")
	}
	s, err := calc.SolveTimed(cmd.Context(), job, d.progress())
	if err != nil {
		return cancelled(cmd.Context(), err)
	}
	alone, err := d.pictures(cmd,
		picture{"csv", func() ([]byte, error) { return report.GapCSV(&s) }},
		picture{"png", func() ([]byte, error) { return report.GapPNG(&s) }})
	if err != nil || alone {
		return err
	}
	return d.answer(cmd, report.Timed(&s), func() ([]byte, error) { return report.GapJSON(&s, Version) })
}
