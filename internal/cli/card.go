package cli

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

func (d *Deps) cardCommand() *cobra.Command {
	var out output
	var show, pdf, paper string
	cmd := &cobra.Command{
		Use:   "card",
		Short: "The settings card of a job",
		Long: `The settings card of a job. Any of the flags will do: what is missing is assumed and marked so.
--feed and --amps are two ways to say the same thing; with both, the feed rules and the amps count as a
reading of the meter. --show puts pages beside it on one sheet: all, or any of fit, filler, prepare, overlay,
machine, strength, air, cost; what is assumed then stands in the order of how much it moves the answer.`,
		Example: `  brazebooth card --metal galvanized --gauge 16ga --joint lap --wire .035in
  brazebooth card --metal mild-steel --gauge 18ga --joint tee --feed 250ipm --units both
  brazebooth card --metal stainless-304 --gauge 1mm --json
  brazebooth card --metal galvanized --gauge 20ga --use seal --hazard none --show all --markdown`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if err := d.free(pdf); err != nil {
				return err
			}
			job, err := d.jobWith(cmd)
			if err != nil {
				return err
			}
			if calc.Unlearned(job) == (calc.Job{}) {
				return wrong("card: no job is given", "type what is at hand, as --metal galvanized --gauge 18ga; the rest is assumed and marked so")
			}
			card, err := d.solve(cmd.Context(), job)
			if err != nil {
				return err
			}
			if pdf != "" {
				sys, err := unitsOf(out.units)
				if err != nil {
					return err
				}
				return d.printCard(cmd.Context(), &card, pdf, paper, sys)
			}
			if show != "" || out.markdown {
				return d.showWhole(cmd.Context(), &card, out, show)
			}
			return d.answer(out, report.Card(&card))
		},
	}
	bindAll(cmd)
	out.bind(cmd, "schema.json")
	cmd.Flags().StringVar(&show, "show", "", "pages on the same sheet: all, or fit,strength,cost ...")
	cmd.Flags().StringVar(&pdf, "pdf", "", "write the card as a page for the wall into a new file; - is standard output")
	cmd.Flags().StringVar(&paper, "paper", "a4", "of that page: a4 or letter")
	cmd.Flags().BoolVar(&out.markdown, "markdown", false, "Markdown")
	return cmd
}

// showWhole prints the card with pages beside it.
func (d *Deps) showWhole(ctx context.Context, card *calc.Card, o output, show string) error {
	if _, err := unitsOf(o.units); err != nil { // before the work
		return err
	}
	if o.json && o.markdown {
		return wrong("--json together with --markdown", "type one of them")
	}
	var pages []advice.Page
	if show != "" {
		names, err := advice.PageNames(show)
		if err != nil {
			return err
		}
		if pages, err = advice.Pages(ctx, card, names); err != nil {
			return err
		}
	}
	return d.answer(o, report.Whole(card, pages))
}

// solve is the card of a job; a timed arc's times come from following its heat.
func (d *Deps) solve(ctx context.Context, job calc.Job) (calc.Card, error) {
	card, err := calc.Answer(ctx, job, d.progress())
	return card, cancelled(ctx, err)
}

// output is how an answer is wanted.
type output struct {
	units    string
	json     bool
	markdown bool
	why      bool
}

// bind adds the flags of an answer; schema is the file that describes its JSON.
func (o *output) bind(cmd *cobra.Command, schema string) {
	cmd.Flags().StringVar(&o.units, "units", "", unitsUsage)
	cmd.Flags().BoolVar(&o.json, "json", false, "JSON, described in docs/"+schema)
	cmd.Flags().BoolVar(&o.why, "why", false, "formula, numbers and source under each figure")
}

// answer prints what was found as it is wanted.
func (d *Deps) answer(o output, blocks []report.Block) error {
	sys, err := unitsOf(o.units)
	if err != nil {
		return err
	}
	if !o.json {
		text := report.Text
		if o.markdown {
			text = report.Markdown
		}
		_, err := fmt.Fprint(d.Out, text(blocks, report.Options{Units: sys, Comma: d.comma, Why: o.why}))
		return err
	}
	b, err := report.JSON(blocks, Version)
	if err != nil {
		return err
	}
	_, err = d.Out.Write(b)
	return err
}

// example prints the example's card where there is no terminal for the screens.
func (d *Deps) example(sys quantity.System) error {
	card, err := calc.Solve(d.Example)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(d.Out, "%s\n\n%s\nThe screens open in a terminal: run brazebooth there. Other jobs: brazebooth card --help\n",
		d.Title, report.Text(report.Card(&card), report.Options{Units: sys, Comma: d.comma}))
	return err
}
