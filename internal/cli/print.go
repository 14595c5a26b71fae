package cli

import (
	"context"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/internal/shop"
)

// now is the time of what is saved or printed.
func (d *Deps) now() time.Time {
	if d.Now != nil {
		return d.Now()
	}
	return time.Now()
}

func paperOf(text string) (report.Paper, error) {
	switch text {
	case "", "a4", "A4":
		return report.A4, nil
	case "letter", "Letter":
		return report.Letter, nil
	}
	return "", wrong("--paper: no paper is called "+quote(text), "type a4 or letter")
}

// printWall writes a page for the wall into a file that is not there yet.
func (d *Deps) printWall(p *report.Wall, file, paper string, sys quantity.System) error {
	size, err := paperOf(paper)
	if err != nil {
		return err
	}
	p.Comma = d.comma
	pdf, gone, err := report.WallPDF(p, size, sys)
	if err != nil {
		return err
	}
	if err := d.picture(file, 0o600, pdf); err != nil {
		return err
	}
	if file != "-" {
		if _, err := fmt.Fprintf(d.Err, "printed to %s\n", plain.Line(file, 200)); err != nil {
			return err
		}
	}
	if len(gone) > 0 {
		_, err = fmt.Fprintf(d.Err, "these letters are not in the page's font and stand as question marks: %s\n", plain.Line(string(gone), 60))
	}
	return err
}

// mapFor is the window of a job for a page, nil where it has none.
func (d *Deps) mapFor(ctx context.Context, job calc.Job) (*calc.Window, error) {
	m, err := calc.WindowOf(ctx, job, calc.FullWindow, d.progress())
	switch {
	case mistake.Of(err) != nil:
		return nil, nil
	case err != nil:
		return nil, cancelled(ctx, err)
	}
	return &m, nil
}

func (d *Deps) bookPrint() *cobra.Command {
	var file, paper, units string
	cmd := &cobra.Command{
		Use: "print NAME", Short: "A kept card as a page to hang at the booth, as PDF",
		Long:    "A kept card as a page to hang at the booth: its settings readable from two metres, the map of all settings, every caution.",
		Example: `  brazebooth book print tank lid --pdf tank-lid.pdf`,
		RunE: func(cmd *cobra.Command, args []string) error {
			if file == "" {
				return wrong("a page of no file", "type --pdf wall.pdf, or --pdf - for standard output")
			}
			if err := d.free(file); err != nil {
				return err
			}
			sys, err := unitsOf(units)
			if err != nil {
				return err
			}
			return d.withCard(cmd, args, func(ctx context.Context, _ book.Book, r *book.Revision, c *book.Card) error {
				p := keptWall(r, c)
				var err error
				if p.Window, err = d.mapFor(ctx, c.Card.Used); err != nil {
					return err
				}
				return d.printWall(&p, file, paper, sys)
			})
		},
	}
	cmd.Flags().StringVar(&file, "pdf", "", "the file to write, a new one; - is standard output")
	cmd.Flags().StringVar(&paper, "paper", "a4", "a4 or letter")
	cmd.Flags().StringVar(&units, "units", "", unitsUsage)
	return cmd
}

func wallAssumed(text string) string {
	if text == "" {
		return ""
	}
	return " (assumed: " + text + ")"
}

// keptWall is a kept card as it was saved, for the wall.
func keptWall(r *book.Revision, c *book.Card) report.Wall {
	card := shop.AsKept(c)
	p := report.Wall{Name: c.Name, Job: c.Line() + wallAssumed(shop.Assumed(c)), Note: c.Note, Card: &card, Foot: keptFoot(r)}
	p.When, _ = time.Parse(time.RFC3339Nano, r.At)
	return p
}

// keptFoot says where a kept card comes from.
func keptFoot(r *book.Revision) string {
	return fmt.Sprintf("brazebooth %s, card %s, saved %s by %s", plain.Line(r.Program, 20), r.ID, r.At[:10], shop.SavedBy(r))
}

// printCard writes a live card as a page for the wall.
func (d *Deps) printCard(ctx context.Context, card *calc.Card, file, paper string, sys quantity.System) error {
	p := report.WallOf(card, "Settings card")
	p.When = d.now()
	p.Foot = fmt.Sprintf("brazebooth %s, %s, not kept in a book", Version, p.When.UTC().Format("2006-01-02"))
	var err error
	if p.Window, err = d.mapFor(ctx, card.Job); err != nil {
		return err
	}
	return d.printWall(&p, file, paper, sys)
}
