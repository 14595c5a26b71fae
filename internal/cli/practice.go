package cli

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/choice"
	"brazebooth/internal/near"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// practiceAsk is what the command was given.
type practiceAsk struct {
	level, seed    string
	tried          []string
	solution, keep bool
	out            output
}

func (d *Deps) practiceCommand() *cobra.Command {
	var a practiceAsk
	cmd := &cobra.Command{
		Use:   "practice",
		Short: "Practise correcting test beads in a simulated booth",
		Long: `A job of the shop in a simulated booth. The booth hides a heat of its own: calibration voltage, arc efficiency and
stick-out drawn from the bands that every card carries. The last hand left a setting on the machine whose bead is bad; each
setting that you give is answered with the bead that this booth lays: drawn, described and judged by the edges. Once a bead
is good, or with --solution, the program's own corrections from the same start stand beside it, with what the booth hid.

Settings that are not given stay as the last hand left them. The same level and seed give the same booth. Dirt, gas, fit-up
and zinc vapour are not simulated. Nothing is kept but with --keep. Without --level it lists the levels.`,
		Example: `  brazebooth practice --level 2 --seed 7
  brazebooth practice --level 2 --seed 7 --travel 9
  brazebooth practice --level 2 --seed 7 --travel 7.5 --tried travel=9 --keep
  brazebooth practice --level 2 --seed 7 --solution`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if !cmd.Flags().Changed("level") {
				return d.listLevels(cmd, a.out.json)
			}
			return d.practise(cmd, &a)
		},
	}
	cmd.Flags().StringVar(&a.level, "level", "", "1 to 5; without it the levels are listed")
	cmd.Flags().StringVar(&a.seed, "seed", "1", "which booth: any whole number")
	bind(cmd, choice.HandNames()...)
	without(cmd, "without it as the last hand left it", choice.HandNames()...)
	cmd.Flags().StringArrayVar(&a.tried, "tried", nil, "settings of an earlier bead of yours: travel=9,volts=14; again for each")
	cmd.Flags().BoolVar(&a.solution, "solution", false, "end the job: the program's own beads, and what the booth hid")
	cmd.Flags().BoolVar(&a.keep, "keep", false, "keep in the book: level, seed, your beads, the program's")
	a.out.bind(cmd, "practice-schema.json")
	return cmd
}

// practise answers with the beads of the settings that were given.
func (d *Deps) practise(cmd *cobra.Command, a *practiceAsk) error {
	ctx := cmd.Context()
	if _, err := unitsOf(a.out.units); err != nil {
		return err
	}
	job, err := a.job(ctx)
	if err != nil {
		return err
	}
	p, laid, err := a.lay(cmd, job)
	if err != nil {
		return cancelled(ctx, err)
	}
	if a.keep && !laid {
		return wrong("--keep of a job without a bead of yours", "give a setting, as --travel 9")
	}
	last := &p.Beads[len(p.Beads)-1]
	if a.solution || laid && last.Verdict == practice.BeadGood {
		if err := solve(ctx, p); err != nil {
			return cancelled(ctx, err)
		}
	}
	if err := d.showPractice(p, a); err != nil || !a.keep {
		return err
	}
	return d.keepPractice(cmd, p, a.out.json)
}

// job reads level and seed.
func (a *practiceAsk) job(ctx context.Context) (*practice.Booth, error) {
	level, err := strconv.Atoi(a.level)
	if n := len(practice.Levels()); err != nil || level < 1 || level > n {
		return nil, wrong("--level: there is no level "+quote(a.level), fmt.Sprintf("type 1 to %d", n))
	}
	seed, err := strconv.ParseUint(a.seed, 10, 64)
	if err != nil {
		return nil, wrong("--seed: "+quote(a.seed)+" is no seed", "type a whole number, as 7")
	}
	p, err := practice.New(ctx, level, seed)
	return &p, cancelled(ctx, err)
}

// lay lays the start's bead, the earlier ones, and that of the flags; laid says whether one of these was given.
func (a *practiceAsk) lay(cmd *cobra.Command, job *practice.Booth) (p *report.Practice, laid bool, err error) {
	card, err := calc.Solve(job.Start)
	if err != nil {
		return nil, false, err
	}
	p = &report.Practice{Job: job, Card: &card}
	settings := []calc.Job{job.Start}
	for _, text := range a.tried {
		j, err := triedSetting(job.Start, text)
		if err != nil {
			return nil, false, err
		}
		settings = append(settings, j)
	}
	now := job.Start
	if err := jobInto(cmd, &now); err != nil {
		return nil, false, err
	}
	laid = slices.ContainsFunc(choice.HandNames(), cmd.Flags().Changed)
	if laid {
		settings = append(settings, now)
	} else if len(a.tried) > 0 {
		return nil, false, wrong("--tried without a bead of now", "give its setting, as --travel 9")
	}
	for i, j := range settings {
		if i > 0 && j == settings[i-1] {
			return nil, false, wrong(fmt.Sprintf("bead %d has the same setting as the one before", i+1), "change something first: another value than --"+practiceLike(&job.Start))
		}
		b, err := job.Bead(cmd.Context(), j)
		if err != nil {
			return nil, false, err
		}
		p.Beads = append(p.Beads, b)
	}
	return p, laid, nil
}

// triedSetting reads the settings of an earlier bead: travel=9,volts=14.
func triedSetting(start calc.Job, text string) (calc.Job, error) {
	for _, part := range strings.Split(text, ",") {
		name, value, ok := strings.Cut(part, "=")
		name = strings.TrimSpace(name)
		if !ok || !slices.Contains(choice.HandNames(), name) {
			return start, wrong("--tried: "+quote(part)+" is no setting", "type "+near.Or(choice.HandNames())+" with = and its value, as travel=9,volts=14")
		}
		if err := choice.ByName(name).Set(&start, value); err != nil {
			return start, inFlag("tried", err)
		}
	}
	return start, nil
}

// solve adds what the program would have done, and the truth behind the last bead.
func solve(ctx context.Context, p *report.Practice) error {
	run, err := p.Job.Par(ctx)
	if err != nil {
		return err
	}
	r, err := p.Job.Reveal(ctx, p.Beads[len(p.Beads)-1].Job)
	p.Run, p.Revealed = &run, &r
	return err
}

func (d *Deps) showPractice(p *report.Practice, a *practiceAsk) error {
	if err := d.answer(a.out, p.Blocks()); err != nil || p.Run != nil || a.out.json {
		return err
	}
	return d.tell("\n%s", report.Wrapped("", fmt.Sprintf("Lay the next with another value: brazebooth practice --level %d --seed %d --%s. Settings that are not given stay as in bead 1. --solution ends the job. Nothing is kept but with --keep.",
		p.Job.Level, p.Job.Seed, practiceLike(&p.Job.Start))))
}

// practiceLike is a setting of the job as a flag has it, to be given another value.
func practiceLike(start *calc.Job) string {
	name := "travel"
	if start.Mode == "timed" {
		name = "arc-on"
	}
	return name + " " + strings.ReplaceAll(choice.ByName(name).Show(start, quantity.Metric), " ", "")
}

// keepPractice puts into the book how it went, and says all that is kept.
func (d *Deps) keepPractice(cmd *cobra.Command, p *report.Practice, quiet bool) error {
	run := p.Run
	if run == nil {
		own, err := p.Job.Par(cmd.Context())
		if err != nil {
			return cancelled(cmd.Context(), err)
		}
		run = &own
	}
	last := &p.Beads[len(p.Beads)-1]
	how := p.Job.Went(len(p.Beads), last.Verdict, run)
	s, err := d.shop(cmd)
	if err != nil {
		return err
	}
	done, err := s.SavePractice(cmd.Context(), how)
	if err != nil {
		return err
	}
	for _, text := range done.Remarks {
		remark(cmd, text)
	}
	if quiet {
		return nil
	}
	return d.tell("kept: %s\n", done.What)
}

// listLevels prints the levels.
func (d *Deps) listLevels(cmd *cobra.Command, asJSON bool) error {
	for _, name := range append([]string{"seed", "tried", "solution", "keep"}, choice.HandNames()...) {
		if cmd.Flags().Changed(name) {
			return wrong("--"+name+" of no level", "type --level 1 before it")
		}
	}
	if asJSON {
		return d.encode(map[string]any{"schema": report.Schema, "version": Version, "levels": practice.Levels()})
	}
	for _, l := range practice.Levels() {
		if err := d.say("  %d  %s\n", l.Level, l.Name); err != nil {
			return err
		}
		for _, w := range l.Works {
			if err := d.say("       %s\n", w.Name); err != nil {
				return err
			}
		}
	}
	return d.say("\n%s", report.Wrapped("CAUTION  ", practice.Caution.Text)+"Begin with: brazebooth practice --level 1 --seed 7\n")
}
