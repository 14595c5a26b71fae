package cli

import (
	"context"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/report"
)

// The number of points of a map, and the dots per inch of a picture. Tests use coarser ones to save time.
var (
	mapSize     = calc.FullWindow
	dotsPerInch = report.PictureDPI
)

func (d *Deps) windowCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "window",
		Short: "The operating window: what every feed and travel would do",
		Long: `The operating window of a job: wire feed against travel, with what each pair would do, the setting
furthest from every edge, how sure it is, and, where no setting is good, what would make one good. The window covers all
feeds and travels; with --feed, --amps or --travel it marks that setting and says how far every edge is from it. A job
that takes long to compute has a window of fewer points, and not every remedy is tried; the answer says so.`,
		Example: `  brazebooth window --metal galvanized --gauge 20ga
  brazebooth window --metal galvanized --gauge 20ga --feed 5 --travel 8
  brazebooth window --metal stainless-304 --gauge 1mm --joint tee --svg window.svg`,
		Args: noArgs,
		RunE: d.answers(d.window),
	}
	bindCard(cmd, "use", "hazard")
	without(cmd, "the window covers all feeds and travels, and marks this one", "feed", "amps", "travel")
	bindAnswer(cmd, "window-schema.json")
	bindPictures(cmd, "window")
	return cmd
}

func (d *Deps) window(cmd *cobra.Command, job calc.Job) ([]report.Block, error) {
	ctx := cmd.Context()
	w, err := calc.WindowOf(ctx, job, mapSize, d.progress())
	if err != nil {
		return nil, err
	}
	given, err := d.givenCard(ctx, job)
	if err != nil {
		return nil, err
	}
	m := &report.Map{}
	if flagText(cmd, "png")+flagText(cmd, "svg") != "" {
		if m, err = d.mapOf(ctx, job); err != nil {
			return nil, err
		}
		m.Given, m.Units = given, d.units
	}
	if alone, err := d.pictures(cmd, m, nil); err != nil || alone {
		return nil, err
	}
	return report.Window(&w, given), nil
}

// givenCard is the card of the given setting, nil where neither feed nor travel was given.
func (d *Deps) givenCard(ctx context.Context, job calc.Job) (*calc.Card, error) {
	if !job.Feed.Set && !job.Amps.Set && !job.Travel.Set {
		return nil, nil
	}
	card, err := d.solve(ctx, job)
	return &card, err
}

func (d *Deps) gapCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "gap",
		Short: "Timed arc across an open root: how long on, how long off, how far apart",
		Long: `On and off times and the step of a timed arc, computed by following the heat in the sheet's plane until
each cycle of on and off is like the one before; what ends each range, and what would help where no times are good. The
mode is timed, whatever --mode says. Without --feed it takes the feed nearest to the middle of the arc's range whose
times a hand can keep.`,
		Example: `  brazebooth gap --metal mild-steel --gauge 16ga --joint butt --gap 2mm
  brazebooth gap --metal galvanized --gauge 20ga --joint lap --csv heat.csv --png heat.png`,
		Args: noArgs,
		// set before the book is read for what it taught in this mode
		PreRunE: func(cmd *cobra.Command, _ []string) error { return cmd.Flags().Set("mode", "timed") },
		RunE:    d.answers(d.timedArc),
	}
	bindCard(cmd, "use", "hazard")
	_ = cmd.Flags().MarkHidden("travel") // the flag exists so that its error can say why a timed arc has no travel
	bindAnswer(cmd, "gap-schema.json")
	cmd.Flags().String("csv", "", "write the heat trace as CSV into a new file; - is standard output")
	bindPictures(cmd, "heat trace")
	return cmd
}

func (d *Deps) timedArc(cmd *cobra.Command, job calc.Job) ([]report.Block, error) {
	if job.Travel.Set {
		return nil, wrong("--travel: a timed arc has no travel of its own: it follows from the step and the times",
			"leave it out, or give --spot-step, --arc-on and --arc-off")
	}
	s, err := calc.SolveTimed(cmd.Context(), job, d.progress())
	if err != nil {
		return nil, err
	}
	trace := func() ([]byte, error) { return report.TraceCSV(&s) }
	heat := report.Heat{Timed: &s, Units: d.units, Comma: d.comma}
	if alone, err := d.pictures(cmd, heat, trace); err != nil || alone {
		return nil, err
	}
	return report.Timed(&s), nil
}
