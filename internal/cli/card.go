package cli

import (
	"context"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/report"
)

func (d *Deps) cardCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "card",
		Short: "The settings card of a job",
		Long: `The settings card of a job. No flag is required: what is missing is assumed and marked so. --feed
and --amps are two ways to say the same thing; with both, the feed rules and the amps count as a reading of the meter.
--show puts pages beside it on one sheet: all, or any of fit, filler, prepare, overlay, passes, plug, machine, pulse,
strength, distortion, haz, air, cost; what is assumed is then listed in the order of how much it moves the answer.`,
		Example: `  brazebooth card --metal galvanized --gauge 16ga --joint lap --wire .035in
  brazebooth card --metal mild-steel --gauge 18ga --joint tee --feed 250ipm --units both
  brazebooth card --metal stainless-304 --gauge 1mm --json
  brazebooth card --metal galvanized --gauge 20ga --use seal --hazard none --show all --markdown`,
		Args: noArgs,
		RunE: d.answers(d.card),
	}
	bindAll(cmd)
	bindAnswer(cmd, "schema.json")
	cmd.Flags().String("show", "", "pages on the same sheet: all, or fit,strength,cost ...")
	cmd.Flags().String("pdf", "", "write the card as a page for the wall into a new file; - is standard output")
	cmd.Flags().String("paper", "a4", "paper of the page for the wall: a4 or letter")
	bindPictures(cmd, "cross-section")
	cmd.Flags().Bool("markdown", false, "Markdown")
	return cmd
}

func (d *Deps) card(cmd *cobra.Command, job calc.Job) ([]report.Block, error) {
	if calc.Unlearned(job) == (calc.Job{}) {
		return nil, wrong("card: no job is given",
			"type what you have, such as --metal galvanized --gauge 18ga; the rest is assumed and marked so")
	}
	card, err := d.solve(cmd.Context(), job)
	if err != nil {
		return nil, err
	}
	alone, err := d.drawSection(cmd, &card)
	switch pdf := flagText(cmd, "pdf"); {
	case err != nil || alone:
		return nil, err
	case pdf != "":
		return nil, d.printCard(cmd, &card, pdf)
	case flagText(cmd, "show") != "" || flagOn(cmd, "markdown"):
		return whole(cmd, &card)
	}
	return report.Card(&card), nil
}

// drawSection writes the cross-section into the files that were asked for; alone reports that one went to standard
// output.
func (d *Deps) drawSection(cmd *cobra.Command, card *calc.Card) (alone bool, err error) {
	if !card.Section.Drawn && flagText(cmd, "png")+flagText(cmd, "svg") != "" {
		return false, wrong("this joint has no cross-section to draw: it is not modelled", "leave out --png and "+
			"--svg; window draws what every feed and travel would do")
	}
	return d.pictures(cmd, report.Joint{Card: card, Units: d.units, Comma: d.comma}, nil)
}

// whole is the card with advice pages.
func whole(cmd *cobra.Command, card *calc.Card) ([]report.Block, error) {
	if asJSON(cmd) && flagOn(cmd, "markdown") {
		return nil, wrong("--json together with --markdown", "type one of them")
	}
	var pages []advice.Page
	if show := flagText(cmd, "show"); show != "" {
		names, err := advice.PageNames(show)
		if err != nil {
			return nil, err
		}
		if pages, err = advice.Pages(cmd.Context(), card, names); err != nil {
			return nil, err
		}
	}
	return report.Whole(card, pages), nil
}

// solve computes the card of a job, with progress for a timed arc, whose times need a long simulation.
func (d *Deps) solve(ctx context.Context, job calc.Job) (calc.Card, error) {
	return calc.Answer(ctx, job, d.progress())
}

// bindAnswer adds the flags for the form of an answer; schema is the file that describes its JSON.
func bindAnswer(cmd *cobra.Command, schema string) {
	cmd.Flags().String("units", "", unitsUsage)
	cmd.Flags().Bool("json", false, "JSON, described in docs/"+schema)
	cmd.Flags().Bool("why", false, "formula, numbers and source under each figure")
}

// answers makes a command of a function that answers a job; nil blocks mean that the answer went into a file.
func (d *Deps) answers(find func(*cobra.Command, calc.Job) ([]report.Block, error)) func(*cobra.Command,
	[]string) error {
	return func(cmd *cobra.Command, _ []string) error {
		for _, flag := range fileFlags(cmd) {
			if err := d.free(flagText(cmd, flag)); err != nil {
				return err
			}
		}
		job, err := d.jobWith(cmd)
		if err != nil {
			return err
		}
		blocks, err := find(cmd, job)
		if err != nil || blocks == nil {
			return err
		}
		return d.answer(cmd, blocks)
	}
}

// answer prints blocks in the form that the flags ask for.
func (d *Deps) answer(cmd *cobra.Command, blocks []report.Block) error {
	if asJSON(cmd) {
		b, err := report.JSON(blocks, Version)
		d.say("%s", b)
		return err
	}
	text := report.Text
	if flagOn(cmd, "markdown") {
		text = report.Markdown
	}
	d.say("%s", text(blocks, report.Options{Units: d.units, Comma: d.comma, Why: flagOn(cmd, "why")}))
	return nil
}

// example prints an example card where there is no terminal for the screens.
func (d *Deps) example() error {
	card, err := calc.Solve(d.Example)
	if err != nil {
		return err
	}
	d.say("%s\n\n%s\n", d.Title, report.Text(report.Card(&card), report.Options{Units: d.units, Comma: d.comma}))
	d.say("The screens open in a terminal: run brazebooth there. Other jobs: brazebooth card --help\n")
	return nil
}

// progress shows on a terminal's standard error how far a long answer is; nil where nobody waits.
func (d *Deps) progress() func(float64) {
	if !d.Patient {
		return nil
	}
	return func(done float64) {
		d.note("\r%3.0f %%", 100*done)
		if done >= 1 {
			d.note("\r     \r")
		}
	}
}

func (d *Deps) wireCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "wire",
		Short: "A wire's mass, length, melting, and feed from current or back",
		Example: `  brazebooth wire --filler cusi3 --wire .035
  brazebooth wire --filler ERCuAl-A1 --wire 1.0mm --amps 110
  brazebooth wire --wire .035 --feed 250ipm --stickout 12mm`,
		Args: noArgs,
		RunE: d.answers(func(_ *cobra.Command, job calc.Job) ([]report.Block, error) {
			card, err := calc.Wire(job)
			return report.Wire(&card), err
		}),
	}
	bind(cmd, "filler", "wire", "feed", "amps", "stickout", "mode")
	bindAnswer(cmd, "schema.json")
	return cmd
}
