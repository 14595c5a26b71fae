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
	"brazebooth/internal/shop"
)

func (d *Deps) practiceCommand() *cobra.Command {
	var tried []string
	cmd := &cobra.Command{
		Use:   "practice",
		Short: "Practise correcting test beads in a simulated booth",
		Long: `A job of the shop in a simulated booth. The booth hides how hot it really runs: its calibration voltage,
arc efficiency and stick-out are drawn from the bands that every card has. The last welder left a setting on the machine
whose bead is bad; for each setting that you give you see the bead that this booth lays: drawn, described and judged by
the edges. Once a bead is good, or with --solution, you also see the program's own corrections from the same start, and
what the booth hid.

Settings that are not given stay as the last welder left them. The same level and seed give the same booth. Dirt, gas,
fit-up and zinc vapour are not simulated. Nothing is kept without --keep. Without --level it lists the levels.`,
		Example: `  brazebooth practice --level 2 --seed 7
  brazebooth practice --level 2 --seed 7 --travel 9
  brazebooth practice --level 2 --seed 7 --travel 7.5 --tried travel=9 --keep
  brazebooth practice --level 2 --seed 7 --solution`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if !cmd.Flags().Changed("level") {
				return d.listLevels(cmd)
			}
			return d.practise(cmd, tried)
		},
	}
	cmd.Flags().String("level", "", "1 to 5; without it the levels are listed")
	cmd.Flags().String("seed", "1", "which booth: any whole number")
	bind(cmd, choice.HandNames()...)
	without(cmd, "without it as the last welder left it", choice.HandNames()...)
	cmd.Flags().StringArrayVar(&tried, "tried", nil,
		"settings of an earlier bead of yours: travel=9,volts=14; may be repeated")
	cmd.Flags().Bool("solution", false, "end the job: the program's own beads, and what the booth hid")
	cmd.Flags().Bool("keep", false, "keep in the book: level, seed, your beads, the program's")
	bindAnswer(cmd, "practice-schema.json")
	return cmd
}

// practise lays the beads of the given settings and prints them.
func (d *Deps) practise(cmd *cobra.Command, tried []string) error {
	ctx, keep := cmd.Context(), flagOn(cmd, "keep")
	booth, err := boothOf(cmd)
	if err != nil {
		return err
	}
	settings, laid, err := settingsTried(cmd, booth.Start, tried)
	if err != nil {
		return err
	}
	p, err := lay(ctx, booth, settings)
	if err != nil {
		return err
	}
	if keep && !laid {
		return wrong("--keep without a bead of your own", "give a setting, such as --travel 9")
	}
	if flagOn(cmd, "solution") || laid && p.Beads[len(p.Beads)-1].Verdict == practice.BeadGood {
		if err := solve(ctx, p); err != nil {
			return err
		}
	}
	err = d.showPractice(cmd, p)
	if err == nil && keep {
		err = d.keepPractice(cmd, p)
	}
	return err
}

func boothOf(cmd *cobra.Command) (*practice.Booth, error) {
	level, err := strconv.Atoi(flagText(cmd, "level"))
	if n := len(practice.Levels()); err != nil || level < 1 || level > n {
		return nil, wrong("--level: there is no level "+quote(flagText(cmd, "level")), fmt.Sprintf("type 1 to %d", n))
	}
	seed, err := strconv.ParseUint(flagText(cmd, "seed"), 10, 64)
	if err != nil {
		return nil, wrong("--seed: "+quote(flagText(cmd, "seed"))+" is not a seed", "type a whole number, such as 7")
	}
	b, err := practice.New(cmd.Context(), level, seed)
	return &b, err
}

// settingsTried are the start setting, those of --tried and that of the flags; now reports whether the flags gave one.
func settingsTried(cmd *cobra.Command, start calc.Job, tried []string) (list []calc.Job, now bool, err error) {
	list = []calc.Job{start}
	for _, text := range tried {
		j, err := triedSetting(start, text)
		if err != nil {
			return nil, false, err
		}
		list = append(list, j)
	}
	j := start
	if err := jobInto(cmd, &j); err != nil {
		return nil, false, err
	}
	if now = slices.ContainsFunc(choice.HandNames(), cmd.Flags().Changed); now {
		list = append(list, j)
	} else if len(tried) > 0 {
		return nil, false, wrong("--tried without a new bead", "give its setting, such as --travel 9")
	}
	sys, _ := unitsOf(cmd) // for the words only
	for i := range list[1:] {
		if list[i+1] == list[i] {
			return nil, false, wrong(fmt.Sprintf("bead %d has the same setting as the one before", i+2),
				"change something first: another value than --"+practiceLike(&start, sys))
		}
	}
	return list, now, nil
}

func lay(ctx context.Context, booth *practice.Booth, settings []calc.Job) (*report.Practice, error) {
	card, err := calc.Solve(booth.Start)
	if err != nil {
		return nil, err
	}
	p := &report.Practice{Job: booth, Card: &card}
	for _, j := range settings {
		b, err := booth.Bead(ctx, j)
		if err != nil {
			return nil, err
		}
		p.Beads = append(p.Beads, b)
	}
	return p, nil
}

// triedSetting reads the settings of an earlier bead: travel=9,volts=14.
func triedSetting(start calc.Job, text string) (calc.Job, error) {
	for _, part := range strings.Split(text, ",") {
		name, value, ok := strings.Cut(part, "=")
		name = strings.TrimSpace(name)
		if !ok || !slices.Contains(choice.HandNames(), name) {
			return start, wrong("--tried: "+quote(part)+" is not a setting",
				"type "+near.Or(choice.HandNames())+" with = and its value, such as travel=9,volts=14")
		}
		if err := choice.ByName(name).Set(&start, value); err != nil {
			return start, inFlag("tried", err)
		}
	}
	return start, nil
}

// solve adds the program's own corrections, and the hidden state of the booth at the last bead.
func solve(ctx context.Context, p *report.Practice) error {
	run, err := p.Job.Par(ctx)
	if err != nil {
		return err
	}
	r, err := p.Job.Reveal(ctx, p.Beads[len(p.Beads)-1].Job)
	p.Run, p.Revealed = &run, &r
	return err
}

func (d *Deps) showPractice(cmd *cobra.Command, p *report.Practice) error {
	if err := d.answer(cmd, p.Blocks()); err != nil || p.Run != nil || asJSON(cmd) {
		return err
	}
	d.tell("\n%s", report.Wrapped("", fmt.Sprintf("Lay the next with another value, such as: brazebooth practice "+
		"--level %d --seed %d --%s. Settings that are not given stay as in bead 1. --solution ends the job. "+
		"Nothing is kept without --keep.", p.Job.Level, p.Job.Seed, practiceLike(another(p), d.units))))
	return nil
}

// another is the start with a travel or an on time that no bead had: a step below the least so far.
func another(p *report.Practice) *calc.Job {
	const step = 0.9
	j := p.Job.Start
	for i := range p.Beads {
		b := &p.Beads[i].Job
		j.Travel.V, j.ArcOn.V = min(j.Travel.V, b.Travel.V), min(j.ArcOn.V, b.ArcOn.V)
	}
	j.Travel.V, j.ArcOn.V = j.Travel.V*step, j.ArcOn.V*step
	return &j
}

// practiceLike is one setting of the job as a flag with its value, rounded as on a dial; it is an example to change.
func practiceLike(start *calc.Job, sys quantity.System) string {
	name := "travel"
	if start.Mode == "timed" {
		name = "arc-on"
	}
	c := choice.ByName(name)
	v := quantity.OnDial(c.Figure, c.At(start).V, c.Unit, sys.Lead())
	shown := quantity.ShowDialed(c.Figure, v, c.Unit, sys.Lead())
	return name + " " + strings.ReplaceAll(shown, " ", "")
}

// keepPractice saves the outcome in the book and prints all that is kept.
func (d *Deps) keepPractice(cmd *cobra.Command, p *report.Practice) error {
	done, err := d.done(cmd, func(ctx context.Context, s *shop.Shop) (shop.Done, error) {
		run := p.Run
		if run == nil {
			own, err := p.Job.Par(ctx)
			if err != nil {
				return shop.Done{}, err
			}
			run = &own
		}
		return s.SavePractice(ctx, p.Job.Went(len(p.Beads), p.Beads[len(p.Beads)-1].Verdict, run))
	})
	if err == nil && !asJSON(cmd) {
		d.tell("kept: %s\n", done.What)
	}
	return err
}

func (d *Deps) listLevels(cmd *cobra.Command) error {
	for _, name := range append([]string{"seed", "tried", "solution", "keep"}, choice.HandNames()...) {
		if cmd.Flags().Changed(name) {
			return wrong("--"+name+" without a level", "type --level 1 before it")
		}
	}
	if asJSON(cmd) {
		return d.document(report.Schema, map[string]any{"levels": practice.Levels()})
	}
	for _, l := range practice.Levels() {
		d.say("  %d  %s\n", l.Level, l.Name)
		for _, w := range l.Works {
			d.say("       %s\n", w.Name)
		}
	}
	d.say("\n%s", report.Wrapped("CAUTION  ", practice.Caution.Text))
	d.say("Begin with: brazebooth practice --level 1 --seed 7\n")
	return nil
}
