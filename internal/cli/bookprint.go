package cli

import (
	"context"
	"fmt"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/choice"
	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
	"brazebooth/internal/report"
	"brazebooth/internal/shop"
)

func (d *Deps) bookPrint() *cobra.Command {
	cmd := &cobra.Command{
		Use: "print NAME", Short: "A kept card as a page to hang at the booth, as PDF",
		Long: `A kept card as a page to hang at the booth: its settings readable from two metres, its operating window,
every caution. A second sheet has the window alone, to be read from two metres too.`,
		Example: `  brazebooth book print tank lid --pdf tank-lid.pdf`,
		RunE: func(cmd *cobra.Command, args []string) error {
			file := flagText(cmd, "pdf")
			if file == "" {
				return wrong("there is no file for the page", "type --pdf wall.pdf, or --pdf - for standard output")
			}
			if err := d.free(file); err != nil {
				return err
			}
			return d.withCard(cmd, args, func(_ context.Context, _ book.Book, r *book.Revision, c *book.Card) error {
				return d.printWall(cmd, keptWall(r, c), c.Card.Used, file)
			})
		},
	}
	cmd.Flags().String("pdf", "", "the file to write, a new one; - is standard output")
	cmd.Flags().String("paper", "a4", "a4 or letter")
	cmd.Flags().String("units", "", unitsUsage)
	return cmd
}

// printCard writes a card that is not kept in a book as a page for the wall.
func (d *Deps) printCard(cmd *cobra.Command, card *calc.Card, file string) error {
	p := report.WallOf(card, "Settings card", d.units)
	p.When = time.Now()
	if d.Now != nil {
		p.When = d.Now()
	}
	p.Foot = fmt.Sprintf("brazebooth %s, %s, not kept in a book", Version, p.When.UTC().Format(time.DateOnly))
	return d.printWall(cmd, p, card.Job, file)
}

// printWall writes a page for the wall into a new file, with the job's operating window if it has one.
func (d *Deps) printWall(cmd *cobra.Command, p report.Wall, job calc.Job, file string) error {
	papers := map[string]report.Paper{"": report.A4, "a4": report.A4, "letter": report.Letter}
	size, ok := papers[strings.ToLower(flagText(cmd, "paper"))]
	if !ok {
		return wrong("--paper: there is no paper "+quote(flagText(cmd, "paper")), "type a4 or letter")
	}
	var err error
	if p.Map, err = d.mapOf(cmd.Context(), job); err != nil && mistake.Of(err) == nil {
		return err
	}
	p.Comma = d.comma
	pdf, gone, err := report.WallPDF(&p, size, d.units)
	if err != nil {
		return err
	}
	if err := d.save(file, 0o600, pdf); err != nil {
		return err
	}
	if file != "-" {
		d.note("printed to %s\n", plain.Line(file, 200))
	}
	if len(gone) > 0 {
		d.note("these letters are not in the page's font and are printed as question marks: %s\n",
			plain.Line(string(gone), 60))
	}
	return nil
}

func (d *Deps) mapOf(ctx context.Context, job calc.Job) (*report.Map, error) {
	w, err := calc.WindowOf(ctx, job, mapSize, d.progress())
	if err != nil {
		return nil, err
	}
	c, err := calc.ChartOf(ctx, &w)
	if err != nil {
		return nil, err
	}
	return &report.Map{Window: &w, Chart: &c, Comma: d.comma}, nil
}

// keptWall is the page for the wall of a kept card, as it was saved.
func keptWall(r *book.Revision, c *book.Card) report.Wall {
	card := shop.AsKept(c)
	p := report.Wall{Name: c.Name, Job: c.Line(), Note: c.Note, Card: &card, Foot: keptFoot(r)}
	p.When, _ = time.Parse(time.RFC3339Nano, r.At)
	return p
}

// keptFoot is the line at the bottom of a page: which card of the book it is, and who saved it when.
func keptFoot(r *book.Revision) string {
	return fmt.Sprintf("brazebooth %s, card %s, saved %s by %s", plain.Line(r.Program, 20), r.ID, r.At[:10],
		shop.SavedBy(r))
}

func (d *Deps) bookProcedure() *cobra.Command {
	var ranges []string
	cmd := &cobra.Command{
		Use: "procedure NAME", Short: "A DRAFT procedure specification and record from a kept card and its trials",
		Long: `A draft of a brazing procedure specification with its qualification record, filled from a kept card and
its trials, for a qualified person to check, complete and sign. --range gives what somebody qualified; values outside
it are marked.`,
		Example: "  brazebooth book procedure tank lid --number BPS-3 --range thickness=0.8mm..1.2mm" +
			" --range travel=6..10",
		RunE: func(cmd *cobra.Command, args []string) error {
			list, err := rangesOf(ranges)
			if err != nil {
				return err
			}
			return d.withCard(cmd, args, func(ctx context.Context, b book.Book, r *book.Revision, c *book.Card) error {
				p, err := procedureOf(ctx, b, r, c)
				if err != nil {
					return err
				}
				p.Number, p.Ranges = flagText(cmd, "number"), list
				d.say("%s", report.Text(p.Blocks(), report.Options{Comma: d.comma}))
				return nil
			})
		},
	}
	cmd.Flags().String("number", "", "number of the procedure")
	cmd.Flags().StringArrayVar(&ranges, "range", nil, "a qualified range: thickness=0.8mm..1.2mm; may be repeated")
	return cmd
}

// rangesOf reads --range: a variable and its two ends, read like the flag of that name.
func rangesOf(texts []string) ([]report.Range, error) {
	const like = "type variable=low..high, such as thickness=0.8mm..1.2mm or travel=6..10"
	var list []report.Range
	for _, text := range texts {
		name, rest, ok1 := strings.Cut(text, "=")
		low, high, ok2 := strings.Cut(rest, "..")
		if !ok1 || !ok2 {
			return nil, wrong("--range: "+quote(text)+" is not a range", like)
		}
		var r report.Range
		var err error
		if r.Low, r.Name, err = rangeEnd(name, strings.TrimSpace(low)); err != nil {
			return nil, err
		}
		if r.High, _, err = rangeEnd(name, strings.TrimSpace(high)); err != nil {
			return nil, err
		}
		if r.Low > r.High {
			return nil, wrong("--range: "+quote(text)+" ends below its beginning", like)
		}
		list = append(list, r)
	}
	return list, nil
}

func rangeEnd(name, text string) (v float64, figure string, err error) {
	var j calc.Job
	if member, ok := strings.CutPrefix(name, "thickness"); ok && (member == "" || member == "2") {
		if err := choice.ByName("gauge").Set(&j, text); err != nil || !j.Thickness.Set {
			return 0, "", wrong("--range: "+quote(text)+" is not a thickness", "type it in mm or in: 0.8mm, .032")
		}
		return j.Thickness.V, strings.Replace(name, "2", "_2", 1), nil
	}
	c := choice.ByName(name)
	if c == nil || c.Figure == "" {
		return 0, "", wrong("--range: there is no variable "+quote(name), "type thickness, thickness2, feed, amps, "+
			"volts, travel, stickout, gap, preheat, flow, arc-on or arc-off")
	}
	if err := c.Set(&j, text); err != nil {
		return 0, "", inFlag("range", err)
	}
	return c.At(&j).V, c.Figure, nil
}

// procedureOf is the draft procedure of a kept card with its trials.
func procedureOf(ctx context.Context, b book.Book, r *book.Revision, c *book.Card) (report.Procedure, error) {
	var p report.Procedure
	now, err := calc.Solve(c.Card.Used) // only for its rows of the tables; the figures stay those that were saved
	if err != nil {
		return p, err
	}
	card := shop.AsKept(c)
	card.Setup = now.Setup
	p = report.Procedure{Name: c.Name, Card: &card, Foot: keptFoot(r)}
	trials, err := shop.TrialsOf(ctx, b, r.ID)
	for _, t := range trials {
		p.Trials = append(p.Trials, report.ProcedureTrial{At: t.Revision.At[:10], Who: plain.Line(t.Revision.Who, 40),
			Laid: t.Body.Line(), Verdict: t.Body.Verdict, Seen: t.Body.Seen, Peel: t.Body.Peel, Lot: t.Body.Lot,
			Note: t.Body.Note})
	}
	return p, err
}
