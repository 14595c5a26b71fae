package cli

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/report"
)

func (d *Deps) windowCommand() *cobra.Command {
	var out output
	var pngFile, svgFile string
	cmd := &cobra.Command{
		Use:   "window",
		Short: "The operating window: what every feed and travel would do",
		Long: `The operating window of a job: a map of wire feed and travel with what each would do, the setting
furthest from every edge, how sure it is, and, where no setting is good, what would open one. The map is of all feeds and
travels; with --feed, --amps or --travel it marks that setting and says how far every edge is from it. A job that takes long
to compute has a map of fewer points, and not every remedy is tried; the answer says so.`,
		Example: `  brazebooth window --metal galvanized --gauge 20ga
  brazebooth window --metal galvanized --gauge 20ga --feed 5 --travel 8
  brazebooth window --metal stainless-304 --gauge 1mm --joint tee --svg window.svg`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if err := d.free(pngFile, svgFile); err != nil {
				return err
			}
			job, err := d.jobWith(cmd)
			if err != nil {
				return err
			}
			m, err := calc.WindowOf(cmd.Context(), job, calc.FullWindow, d.progress())
			if err != nil {
				return cancelled(cmd.Context(), err)
			}
			given, err := d.givenCard(cmd.Context(), job)
			if err != nil {
				return err
			}
			if err := d.savePictures(&m, given, pngFile, svgFile); err != nil || pngFile == "-" || svgFile == "-" {
				return err
			}
			return d.answer(out, report.Window(&m, given))
		},
	}
	bindCard(cmd, "use", "hazard")
	without(cmd, "marked on the map, which is of all feeds and travels", "feed", "amps", "travel")
	out.bind(cmd, "window-schema.json")
	cmd.Flags().StringVar(&pngFile, "png", "", "write the map as a PNG picture into a new file; - is standard output")
	cmd.Flags().StringVar(&svgFile, "svg", "", "write the map as an SVG picture into a new file; - is standard output")
	return cmd
}

// givenCard is the card of the setting that was asked about, nil where neither feed nor travel was given.
func (d *Deps) givenCard(ctx context.Context, job calc.Job) (*calc.Card, error) {
	if !job.Feed.Set && !job.Amps.Set && !job.Travel.Set {
		return nil, nil
	}
	card, err := d.solve(ctx, job)
	return &card, err
}

// progress tells on a terminal's standard error how far a long answer is; it says nothing where nobody
// waits for it.
func (d *Deps) progress() func(float64) {
	if !d.Patient {
		return nil
	}
	return func(done float64) {
		fmt.Fprintf(d.Err, "\r%3.0f %%", 100*done)
		if done >= 1 {
			fmt.Fprint(d.Err, "\r     \r")
		}
	}
}

// savePictures writes the map as pictures; one on standard output stands there alone.
func (d *Deps) savePictures(m *calc.Window, given *calc.Card, pngFile, svgFile string) error {
	if svgFile != "" {
		if err := d.picture(svgFile, 0o644, report.WindowSVG(m, given)); err != nil {
			return err
		}
	}
	if pngFile == "" {
		return nil
	}
	b, err := report.WindowPNG(m, given)
	if err != nil {
		return err
	}
	return d.picture(pngFile, 0o644, b)
}

// cancelled says plainly that an answer was given up.
func cancelled(ctx context.Context, err error) error {
	if err != nil && ctx.Err() != nil {
		return fmt.Errorf("cancelled: %w", err)
	}
	return err
}
