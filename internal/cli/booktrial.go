package cli

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/calc/correct"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/tables"
)

func (d *Deps) bookTrial() *cobra.Command {
	var t book.Trial
	cmd := &cobra.Command{
		Use: "trial [NAME]", Short: "Keep a test bead: how it was laid, what it showed, what came of it",
		Long:    "Keep a test bead of a kept card: the card's job with the flags that were set otherwise, what was seen, and the verdict.",
		Example: `  brazebooth book trial "tank lid" --travel 7.5 --seen rolled-edge --verdict bad --peel "lets go at the toe"`,
		RunE: func(cmd *cobra.Command, args []string) error {
			if !slices.Contains([]string{"good", "acceptable", "bad"}, t.Verdict) {
				return wrong("a trial wants a verdict", "type --verdict good, acceptable or bad")
			}
			if t.Seen != "" {
				ids, err := correct.SeenIDs(tables.SightsSaid(t.Seen))
				if err != nil {
					return err
				}
				t.Seen = ids
			}
			if t.Verdict == "good" && t.Seen != "" && t.Seen != "good" || t.Verdict == "bad" && t.Seen == "good" {
				return wrong("the verdict "+t.Verdict+" together with "+t.Seen, "say acceptable where a fault was let pass, or what was seen otherwise")
			}
			if len(args) == 0 && !jobFlags(cmd) {
				return wrong("a trial of no job", "name the kept card that was laid, or give the job: --metal --gauge --feed --travel")
			}
			if len(args) > 0 {
				err := d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
					r, c, err := cardOf(ctx, b, strings.Join(args, " "))
					t.Card, t.Job = r.ID, c.Card.Used
					return err
				})
				if err != nil {
					return err
				}
			}
			if err := jobInto(cmd, &t.Job); err != nil {
				return err
			}
			t.Source = cmd.Flags().Lookup("power-source").Value.String()
			return d.keepTrial(cmd, t)
		},
	}
	bindAll(cmd)
	cmd.Flags().StringVar(&t.Seen, "seen", "", "what the bead shows, as in correct")
	cmd.Flags().StringVar(&t.Verdict, "verdict", "", "good, acceptable or bad")
	cmd.Flags().StringVar(&t.Peel, "peel", "", "how the peel or bend went")
	cmd.Flags().StringVar(&t.Photo, "photo", "", "name of a photo's file")
	cmd.Flags().StringVar(&t.Lot, "lot", "", "lot of the wire")
	cmd.Flags().StringVar(&t.Note, "note", "", "anything worth knowing")
	return cmd
}

// keepTrial saves a whole trial and says what it teaches.
func (d *Deps) keepTrial(cmd *cobra.Command, t book.Trial) error {
	used, err := calc.Complete(t.Job)
	if err != nil {
		return err
	}
	t.Job = used
	if card, err := calc.Solve(t.Job); err == nil {
		t.Job = calc.Laid(&card)
		if err := d.sayStops(card.Warnings); err != nil {
			return err
		}
	}
	t.Clean()
	first, err := d.source(cmd, &t.Source)
	if err != nil {
		return err
	}
	inBook, err := d.keep(cmd, book.TrialKind, t, "test bead, "+t.Verdict, first...)
	if err != nil || !inBook || t.Source == "" {
		return err
	}
	return d.afterwards(cmd, func() error {
		return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error { return d.tellEta(ctx, b, t.Source) })
	})
}

// jobFlags reports whether anything of a job was given.
func jobFlags(cmd *cobra.Command) bool {
	for _, f := range [...]string{"metal", "gauge", "filler", "wire", "mode", "feed", "amps", "travel"} {
		if cmd.Flags().Changed(f) {
			return true
		}
	}
	return false
}

// tellEta says what a power source's trials teach of the heat, each with how much it was expected.
func (d *Deps) tellEta(ctx context.Context, b book.Book, source string) error {
	list, err := book.Verdicts(ctx, b, source)
	if err != nil {
		return err
	}
	e := calc.LearnEta(list)
	if e.Used == 0 {
		return d.say("%s: no verdict tells of its heat yet\n", plain.Line(source, 60))
	}
	var said []string
	for _, x := range e.Evidence {
		said = append(said, fmt.Sprintf("%s (expected in %.0f of 100)", x.Heat, x.Expected))
	}
	return d.tell("%s: arc efficiency %.3f (± %.3f) by %d verdicts: %s\n", plain.Line(source, 60), e.Mean, 2*e.Sigma, e.Used, strings.Join(said, ", "))
}
