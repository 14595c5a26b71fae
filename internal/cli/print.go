package cli

import (
	"context"
	"fmt"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
	"brazebooth/internal/report"
	"brazebooth/internal/shop"
)

func (d *Deps) bookPrint() *cobra.Command {
	cmd := &cobra.Command{
		Use: "print NAME", Short: "A kept card as a page to hang at the booth, as PDF",
		Long: `A kept card as a page to hang at the booth: its settings readable from two metres, its operating window,
every caution.`,
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

// printCard writes a live card as a page for the wall.
func (d *Deps) printCard(cmd *cobra.Command, card *calc.Card, file string) error {
	p := report.WallOf(card, "Settings card")
	p.When = time.Now()
	if d.Now != nil {
		p.When = d.Now()
	}
	p.Foot = fmt.Sprintf("brazebooth %s, %s, not kept in a book", Version, p.When.UTC().Format(time.DateOnly))
	return d.printWall(cmd, p, card.Job, file)
}

// printWall writes a page for the wall, with the job's window where it has one, into a file that is not there yet.
func (d *Deps) printWall(cmd *cobra.Command, p report.Wall, job calc.Job, file string) error {
	sys, err := unitsOf(cmd)
	if err != nil {
		return err
	}
	papers := map[string]report.Paper{"": report.A4, "a4": report.A4, "letter": report.Letter}
	size, ok := papers[strings.ToLower(flagText(cmd, "paper"))]
	if !ok {
		return wrong("--paper: there is no paper "+quote(flagText(cmd, "paper")), "type a4 or letter")
	}
	w, err := calc.WindowOf(cmd.Context(), job, calc.FullWindow, d.progress())
	if err == nil {
		p.Map = &w
	} else if mistake.Of(err) == nil {
		return cancelled(cmd.Context(), err)
	}
	p.Comma = d.comma
	pdf, gone, err := report.WallPDF(&p, size, sys)
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

// keptWall is a kept card as it was saved, for the wall.
func keptWall(r *book.Revision, c *book.Card) report.Wall {
	p := report.Wall{Name: c.Name, Job: c.Line(), Note: c.Note, Notes: c.Card.Notes, Warnings: c.Card.Warns,
		Zone: c.Card.Zone}
	if assumed := shop.Assumed(c); assumed != "" {
		p.Job += " (assumed: " + assumed + ")"
	}
	for _, f := range c.Card.Figures {
		p.Figures = append(p.Figures, calc.Figure{Name: f.Name, Value: f.Value, Low: f.Low, High: f.High, Unit: f.Unit})
	}
	p.When, _ = time.Parse(time.RFC3339Nano, r.At)
	p.Foot = fmt.Sprintf("brazebooth %s, card %s, saved %s by %s", plain.Line(r.Program, 20), r.ID, r.At[:10],
		shop.SavedBy(r))
	return p
}
