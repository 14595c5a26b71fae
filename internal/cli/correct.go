package cli

import (
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
	var tried []string
	cmd := &cobra.Command{
		Use:   "correct",
		Short: "What a test bead shows, what lies behind it, and the one thing to change",
		Long: `What the last test bead shows, what likely lies behind it, and the smallest change of one setting that is
more likely than not to make the next one good; where no setting is at fault, what cures the fault. Give the settings
that the bead was laid with; without --seen it lists what may be seen, drawn. --tried gives earlier beads that differed
in one setting, oldest first: what they showed narrows the range that is left, so that each answer halves it. An earlier
bead with the same setting as the last one means that the cure did not help: the next cause then comes first.

` + sightList(),
		Example: `  brazebooth correct --metal galvanized --gauge 18ga --feed 5 --travel 9 --seen rolled-edge
  brazebooth correct --metal galvanized --gauge 18ga --feed 5 --travel 7 --seen thin-wide` +
			` --tried travel=9:rolled-edge`,
		Args: noArgs,
		RunE: d.answers(func(cmd *cobra.Command, job calc.Job) ([]report.Block, error) {
			if !cmd.Flags().Changed("seen") {
				return nil, d.unseen(cmd, job, tried)
			}
			tries, err := earlier(cmd, job, tried)
			if err != nil {
				return nil, err
			}
			last := correct.Try{Job: job, Seen: tables.SightsSaid(flagText(cmd, "seen"))}
			p, err := correct.Next(cmd.Context(), append(tries, last))
			if err != nil {
				return nil, err
			}
			return report.Page(&p, openFlags(&p)), nil
		}),
	}
	page, _ := advice.EntryByName("correct")
	bindCard(cmd, page.Needs...)
	bindAnswer(cmd, "schema.json")
	cmd.Flags().String("seen", "", "what the bead shows, with commas: rolled-edge, burn-through,pores ...")
	cmd.Flags().StringArrayVar(&tried, "tried", nil, "an earlier bead: travel=9:rolled-edge; may be repeated")
	return cmd
}

// unseen prints the stops of the job, then every sight with its drawing.
func (d *Deps) unseen(cmd *cobra.Command, job calc.Job, tried []string) error {
	if len(tried) > 0 {
		return wrong("--tried without --seen", "say what the last bead shows: --seen rolled-edge")
	}
	if asJSON(cmd) {
		return d.table("sights", true)
	}
	if card, err := calc.Solve(job); err == nil && job != (calc.Job{}) {
		for _, w := range calc.Stops(card.Warnings) {
			d.tell("STOP  %s\n", w.Text)
		}
	}
	for _, s := range tables.Sights {
		d.say("%s: %s\n    %s\n\n", s.ID, s.Name, strings.Join(s.Drawing, "\n    "))
	}
	d.say("Lay a bead on scrap, look at both faces, and say what it shows: brazebooth correct --seen rolled-edge ...\n")
	return nil
}

// earlier reads the beads of --tried: each has another value of one setting, and what it showed.
func earlier(cmd *cobra.Command, job calc.Job, tried []string) ([]correct.Try, error) {
	var list []correct.Try
	for _, text := range tried {
		name, rest, ok1 := strings.Cut(text, "=")
		value, seen, ok2 := strings.Cut(rest, ":")
		if !ok1 || !ok2 {
			return nil, wrong("--tried: "+quote(text)+" is not a bead",
				"type setting=value:what was seen, such as travel=9:rolled-edge")
		}
		f := choice.ByName(strings.TrimSpace(name))
		if f == nil || f.Unit == "" {
			return nil, noSetting(name)
		}
		j := job
		if err := f.Set(&j, value); err != nil {
			return nil, inFlag("tried", err)
		}
		if !correct.SameBead(j, job) {
			return nil, noSetting(name)
		}
		if !cmd.Flags().Changed(f.Name) {
			return nil, wrong("--tried: the last bead's own "+f.Name+" is not given",
				"type --"+f.Name+" as the last bead was laid with, too")
		}
		ids, err := correct.SeenIDs(tables.SightsSaid(seen))
		if err != nil {
			return nil, err
		}
		list = append(list, correct.Try{Job: j, Seen: ids})
	}
	return list, nil
}

func noSetting(name string) error {
	return wrong("--tried: "+quote(name)+" is not a setting of the arc",
		"type "+near.Or(choice.HandNames())+" before the =")
}

func sightList() string {
	var b strings.Builder
	b.WriteString("What may be seen:\n")
	for _, s := range tables.Sights {
		fmt.Fprintf(&b, "  %-17s %s\n", s.ID, s.Name)
	}
	return strings.TrimRight(b.String(), "\n")
}
