package cli

import (
	"context"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/report"
)

func (d *Deps) windowCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "window",
		Short: "The operating window: what every feed and travel would do",
		Long: `The operating window of a job: wire feed against travel, with what each pair would do, the setting
furthest from every edge, how sure it is, and, where no setting is good, what would open one. The window is of all
feeds and travels; with --feed, --amps or --travel it marks that setting and says how far every edge is from it. A job
that takes long to compute has a window of fewer points, and not every remedy is tried; the answer says so.`,
		Example: `  brazebooth window --metal galvanized --gauge 20ga
  brazebooth window --metal galvanized --gauge 20ga --feed 5 --travel 8
  brazebooth window --metal stainless-304 --gauge 1mm --joint tee --svg window.svg`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error { return d.window(cmd) },
	}
	bindCard(cmd, "use", "hazard")
	without(cmd, "marked in the window, which is of all feeds and travels", "feed", "amps", "travel")
	bindAnswer(cmd, "window-schema.json")
	cmd.Flags().String("png", "", "write the window as a PNG picture into a new file; - is standard output")
	cmd.Flags().String("svg", "", "write the window as an SVG picture into a new file; - is standard output")
	return cmd
}

func (d *Deps) window(cmd *cobra.Command) error {
	ctx := cmd.Context()
	if err := d.free(flagText(cmd, "png"), flagText(cmd, "svg")); err != nil {
		return err
	}
	job, err := d.jobWith(cmd)
	if err != nil {
		return err
	}
	w, err := calc.WindowOf(ctx, job, calc.FullWindow, d.progress())
	if err != nil {
		return cancelled(ctx, err)
	}
	given, err := d.givenCard(ctx, job)
	if err != nil {
		return err
	}
	alone, err := d.pictures(cmd,
		picture{"svg", func() ([]byte, error) { return report.WindowSVG(&w, given), nil }},
		picture{"png", func() ([]byte, error) { return report.WindowPNG(&w, given) }})
	if err != nil || alone {
		return err
	}
	return d.answer(cmd, report.Window(&w, given), func() ([]byte, error) {
		return report.WindowJSON(&w, given, Version)
	})
}

// givenCard is the card of the setting that was asked about, nil where neither feed nor travel was given.
func (d *Deps) givenCard(ctx context.Context, job calc.Job) (*calc.Card, error) {
	if !job.Feed.Set && !job.Amps.Set && !job.Travel.Set {
		return nil, nil
	}
	card, err := d.solve(ctx, job)
	return &card, err
}
