package cli

import (
	"context"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/calc/correct"
	"brazebooth/internal/choice"
	"brazebooth/internal/near"
	"brazebooth/internal/report"
	"brazebooth/tables"
)

func (d *Deps) correctCommand() *cobra.Command {
	var out output
	var seen string
	var tried []string
	cmd := &cobra.Command{
		Use:   "correct",
		Short: "What a test bead shows, what lies behind it, and the one thing to change",
		Long: `What the last test bead shows, what likely lies behind it, and the smallest change of one setting that is more
likely than not to make the next one good; where no setting is at fault, what cures it. Give the settings that the bead was laid with; without --seen it lists what
may be seen, drawn. --tried tells of earlier beads that differed in one setting, oldest first: what they showed narrows
what the window leaves open, so that each answer halves it. A bead told of with the last one's own setting says that
the cure was done in vain: the next cause comes first.

` + sightList(),
		Example: `  brazebooth correct --metal galvanized --gauge 18ga --joint lap --feed 5m/min --travel 9 --seen rolled-edge
  brazebooth correct --metal galvanized --gauge 18ga --joint lap --feed 5m/min --travel 7 --seen thin-wide --tried travel=9:rolled-edge`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if !cmd.Flags().Changed("seen") {
				if len(tried) > 0 {
					return wrong("--tried without --seen", "say what the last bead shows: --seen rolled-edge")
				}
				job, err := d.jobWith(cmd)
				if err != nil {
					return err
				}
				if card, err := calc.Solve(job); err == nil && !out.json && job != (calc.Job{}) {
					for _, w := range calc.Stops(card.Warnings) {
						if err := d.tell("STOP  %s\n", w.Text); err != nil {
							return err
						}
					}
				}
				return d.listSights(out.json)
			}
			job, err := d.jobWith(cmd)
			if err != nil {
				return err
			}
			tries, err := earlier(cmd, job, tried)
			if err != nil {
				return err
			}
			p, err := correctNext(cmd.Context(), append(tries, correct.Try{Job: job, Seen: tables.SightsSaid(seen)}))
			if err != nil {
				return err
			}
			return d.answer(out, report.Page(&p, openFlags(&p)))
		},
	}
	page, _ := advice.EntryByName("correct")
	bindCard(cmd, page.Needs...)
	out.bind(cmd, "schema.json")
	cmd.Flags().StringVar(&seen, "seen", "", "what the bead shows, with commas: rolled-edge, burn-through,pores ...")
	cmd.Flags().StringArrayVar(&tried, "tried", nil, "an earlier bead: travel=9:rolled-edge; again for each")
	return cmd
}

func correctNext(ctx context.Context, tries []correct.Try) (advice.Page, error) {
	p, err := correct.Next(ctx, tries)
	return p, cancelled(ctx, err)
}

// earlier reads the beads of --tried: the job with one setting otherwise, and what it showed.
func earlier(cmd *cobra.Command, job calc.Job, tried []string) ([]correct.Try, error) {
	const like = "type setting=value:what was seen, as travel=9:rolled-edge"
	var list []correct.Try
	for _, text := range tried {
		setting, rest, ok1 := strings.Cut(text, "=")
		value, seen, ok2 := strings.Cut(rest, ":")
		if !ok1 || !ok2 {
			return nil, wrong("--tried: "+quote(text)+" is no bead", like)
		}
		f := choice.ByName(strings.TrimSpace(setting))
		if f == nil || f.Unit == "" {
			return nil, wrong("--tried: no setting is called "+quote(setting), "type "+near.Or(choice.HandNames())+" before the =")
		}
		j := job
		if err := f.Set(&j, value); err != nil {
			return nil, inFlag("tried", err)
		}
		if !correct.SameBead(j, job) {
			return nil, wrong("--tried: "+quote(setting)+" is no setting of the arc", "type "+near.Or(choice.HandNames())+" before the =")
		}
		if flag := cmd.Flags().Lookup(f.Name); flag == nil || !flag.Changed {
			return nil, wrong("--tried: the last bead's own "+f.Name+" is not given", "type --"+f.Name+" as the last bead was laid with, too")
		}
		ids, err := correct.SeenIDs(tables.SightsSaid(seen))
		if err != nil {
			return nil, err
		}
		list = append(list, correct.Try{Job: j, Seen: ids})
	}
	return list, nil
}

func sightList() string {
	var b strings.Builder
	b.WriteString("What may be seen:\n")
	for _, s := range tables.Sights() {
		fmt.Fprintf(&b, "  %-17s %s\n", s.ID, s.Name)
	}
	return strings.TrimRight(b.String(), "\n")
}

// listSights prints what may be seen, drawn.
func (d *Deps) listSights(asJSON bool) error {
	if asJSON {
		return d.table("sights", true)
	}
	for _, s := range tables.Sights() {
		if _, err := fmt.Fprintf(d.Out, "%s: %s\n    %s\n\n", s.ID, s.Name, strings.Join(s.Drawing, "\n    ")); err != nil {
			return err
		}
	}
	_, err := fmt.Fprintln(d.Out, "Lay a bead on scrap, look at both faces, and say what it shows: brazebooth correct --seen rolled-edge ...")
	return err
}
