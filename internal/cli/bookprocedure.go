package cli

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/choice"
	"brazebooth/internal/plain"
	"brazebooth/internal/report"
	"brazebooth/internal/shop"
)

func (d *Deps) bookProcedure() *cobra.Command {
	var number string
	var ranges []string
	cmd := &cobra.Command{
		Use: "procedure NAME", Short: "A DRAFT procedure specification and record from a kept card and its trials",
		Long: `A draft of a brazing procedure specification with its qualification record, filled from a kept card and its trials,
for a qualified person to check, complete and sign. --range says what somebody qualified; what leaves it is alerted.`,
		Example: `  brazebooth book procedure tank lid --number BPS-3 --range thickness=0.8mm..1.2mm --range travel=6..10`,
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
				p.Number, p.Ranges = number, list
				return d.say("%s", report.Text(p.Blocks(), report.Options{Comma: d.comma}))
			})
		},
	}
	cmd.Flags().StringVar(&number, "number", "", "number of the procedure")
	cmd.Flags().StringArrayVar(&ranges, "range", nil, "what is qualified: thickness=0.8mm..1.2mm; again for each")
	return cmd
}

// rangesOf reads --range: a variable and its two ends as the flag of that name reads them.
func rangesOf(texts []string) ([]report.Range, error) {
	const like = "type variable=low..high, as thickness=0.8mm..1.2mm or travel=6..10"
	var list []report.Range
	for _, text := range texts {
		name, rest, ok1 := strings.Cut(text, "=")
		low, high, ok2 := strings.Cut(rest, "..")
		if !ok1 || !ok2 {
			return nil, wrong("--range: "+quote(text)+" is no range", like)
		}
		r := report.Range{Name: name}
		var ends [2]float64
		for i, end := range [...]string{low, high} {
			v, figure, err := rangeEnd(name, strings.TrimSpace(end))
			if err != nil {
				return nil, err
			}
			ends[i], r.Name = v, figure
		}
		if ends[0] > ends[1] {
			return nil, wrong("--range: "+quote(text)+" ends below its beginning", like)
		}
		r.Low, r.High = ends[0], ends[1]
		list = append(list, r)
	}
	return list, nil
}

func rangeEnd(name, text string) (v float64, figure string, err error) {
	var j calc.Job
	if name == "thickness" || name == "thickness2" {
		if err := choice.ByName("gauge").Set(&j, text); err != nil || !j.Thickness.Set {
			return 0, "", wrong("--range: "+quote(text)+" is no thickness", "type it in mm or in: 0.8mm, .032")
		}
		return j.Thickness.V, map[string]string{"thickness": "thickness", "thickness2": "thickness_2"}[name], nil
	}
	c := choice.ByName(name)
	if c == nil || c.Figure == "" {
		return 0, "", wrong("--range: no variable is called "+quote(name), "type thickness, thickness2, feed, amps, volts, travel, stickout, gap, preheat, flow, arc-on or arc-off")
	}
	if err := c.Set(&j, text); err != nil {
		return 0, "", inFlag("range", err)
	}
	return c.At(&j).V, c.Figure, nil
}

// procedureOf is a kept card with its trials as a draft.
func procedureOf(ctx context.Context, b book.Book, r *book.Revision, c *book.Card) (report.Procedure, error) {
	var p report.Procedure
	now, err := calc.Solve(c.Card.Used) // for the rows of its tables only: its figures are those that were saved
	if err != nil {
		return p, err
	}
	card := shop.AsKept(c)
	card.Setup = now.Setup
	p = report.Procedure{Name: c.Name, Card: &card, Foot: keptFoot(r)}
	trials, err := shop.TrialsOf(ctx, b, r.ID)
	if err != nil {
		return p, err
	}
	for _, t := range trials {
		p.Trials = append(p.Trials, report.ProcedureTrial{At: t.Revision.At[:10], Who: plain.Line(t.Revision.Who, 40), Laid: t.Body.Line(), Verdict: t.Body.Verdict, Seen: t.Body.Seen, Peel: t.Body.Peel, Lot: t.Body.Lot, Note: t.Body.Note})
	}
	return p, nil
}
