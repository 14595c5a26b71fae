package cli

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/field"
	"brazebooth/internal/sheet"
)

func (d *Deps) windowCommand() *cobra.Command {
	var out output
	var pngFile, svgFile string
	cmd := &cobra.Command{
		Use:   "window",
		Short: "The operating window: what every feed and travel would do",
		Long: `The operating window of a job: a map of wire feed and travel with what each would do, the setting
furthest from every edge, how sure it is, and, where no setting is good, what would open one.`,
		Example: `  brazebooth window --metal galvanized --gauge 20ga
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
			m, err := calc.Window(cmd.Context(), job, d.progress())
			if err != nil {
				return cancelled(cmd.Context(), err)
			}
			if err := d.savePictures(&m, pngFile, svgFile); err != nil || pngFile == "-" || svgFile == "-" {
				return err
			}
			return d.answer(out, func(o sheet.Options) string { return sheet.WindowText(&m, o) }, func() ([]byte, error) { return sheet.WindowJSON(&m, Version) })
		},
	}
	bind(cmd)
	bindSource(cmd)
	bindFrom(cmd, field.OnPages(), []string{"use", "hazard"})
	out.bind(cmd)
	cmd.Flags().StringVar(&pngFile, "png", "", "write the map as a PNG picture into a new file; - is standard output")
	cmd.Flags().StringVar(&svgFile, "svg", "", "write the map as an SVG picture into a new file; - is standard output")
	return cmd
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
func (d *Deps) savePictures(m *calc.Map, pngFile, svgFile string) error {
	if svgFile != "" {
		if err := d.picture(svgFile, 0o644, sheet.WindowSVG(m)); err != nil {
			return err
		}
	}
	if pngFile == "" {
		return nil
	}
	b, err := sheet.WindowPNG(m)
	if err != nil {
		return err
	}
	return d.picture(pngFile, 0o644, b)
}

// cancelled says plainly that an answer was given up.
func cancelled(ctx context.Context, err error) error {
	if ctx.Err() != nil {
		return fmt.Errorf("cancelled: %w", err)
	}
	return err
}
