package cli

import (
	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/report"
)

func (d *Deps) gapCommand() *cobra.Command {
	var out output
	var csvFile, pngFile string
	cmd := &cobra.Command{
		Use:   "gap",
		Short: "Timed arc across an open root: how long on, how long off, how far on",
		Long: `On and off times and the step of a timed arc, found by following the heat in the sheet's plane until
the beat repeats; what ends each range, and what would help where there is no rhythm. The mode is timed,
whatever --mode says. Without --feed the first of a few feeds at which a rhythm exists is taken.`,
		Example: `  brazebooth gap --metal mild-steel --gauge 16ga --joint butt --gap 2mm
  brazebooth gap --metal galvanized --gauge 20ga --joint lap --csv heat.csv --png heat.png`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if err := d.free(csvFile, pngFile); err != nil {
				return err
			}
			job, err := d.jobWith(cmd)
			if err != nil {
				return err
			}
			if job.Travel.Set {
				return wrong("--travel: a timed arc has none of its own, it follows from the step and the beat", "leave it out, or give --spot-step, --arc-on and --arc-off")
			}
			s, err := calc.SolveTimed(cmd.Context(), job, d.progress())
			if err != nil {
				return cancelled(cmd.Context(), err)
			}
			if err := d.saveTrace(&s, csvFile, pngFile); err != nil || csvFile == "-" || pngFile == "-" {
				return err
			}
			return d.answer(out, report.Timed(&s))
		},
	}
	bindCard(cmd, "use", "hazard")
	_ = cmd.Flags().MarkHidden("travel") // it is bound; who gives it is told why not
	out.bind(cmd, "gap-schema.json")
	cmd.Flags().StringVar(&csvFile, "csv", "", "write the heat trace as CSV into a new file; - is standard output")
	cmd.Flags().StringVar(&pngFile, "png", "", "write the heat trace as a PNG picture into a new file; - is standard output")
	return cmd
}

func (d *Deps) saveTrace(s *calc.Timed, csvFile, pngFile string) error {
	for _, f := range []struct {
		name string
		make func(*calc.Timed) ([]byte, error)
	}{{csvFile, report.TraceCSV}, {pngFile, report.TracePNG}} {
		if f.name == "" {
			continue
		}
		b, err := f.make(s)
		if err != nil {
			return err
		}
		if err := d.picture(f.name, 0o644, b); err != nil {
			return err
		}
	}
	return nil
}
