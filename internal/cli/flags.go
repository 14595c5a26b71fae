package cli

import (
	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/near"
	"brazebooth/internal/quantity"
)

var unitsUsage = near.Or(settingValues("units"))

// bind adds the flags of the named choices to a command that has them not yet.
func bind(cmd *cobra.Command, names ...string) {
	for _, name := range names {
		if cmd.Flags().Lookup(name) == nil {
			cmd.Flags().String(name, "", choice.ByName(name).Usage)
		}
	}
}

// without says of flags what a command takes where they are not given.
func without(cmd *cobra.Command, what string, names ...string) {
	for _, name := range names {
		cmd.Flags().Lookup(name).Usage = choice.ByName(name).Usage + "; " + what
	}
}

// bindCard adds every choice of a card, the named ones of the pages beside it, and the power source whose readings narrow it.
func bindCard(cmd *cobra.Command, pages ...string) {
	for i := range choice.OnCard() {
		c := &choice.OnCard()[i]
		cmd.Flags().String(c.Name, "", c.Help())
	}
	bind(cmd, pages...)
	bindSource(cmd)
}

// bindAll adds every choice of a card and of all pages.
func bindAll(cmd *cobra.Command) {
	var names []string
	for _, c := range choice.OnPages() {
		names = append(names, c.Name)
	}
	bindCard(cmd, names...)
}

// bindSource adds the power source whose plate and readings a card takes.
func bindSource(cmd *cobra.Command) {
	cmd.Flags().String("power-source", "", "power source in the book: its plate, and what its readings taught")
}

// jobOf reads the job flags that were given.
func jobOf(cmd *cobra.Command) (calc.Job, error) {
	var j calc.Job
	err := jobInto(cmd, &j)
	return j, err
}

// jobInto reads the job flags that were given into a job, in their fixed order, so that of two mistakes the same one is
// always named.
//
// A number whose unit was left out, and that may have been meant otherwise, is said on standard error with how it was read.
func jobInto(cmd *cobra.Command, j *calc.Job) error {
	var said []string
	sys := shownUnits(cmd)
	for i := range choice.All() {
		c := &choice.All()[i]
		f := cmd.Flags().Lookup(c.Name)
		if f == nil || !f.Changed {
			continue
		}
		if err := c.Set(j, f.Value.String()); err != nil {
			return inFlag(f.Name, err)
		}
		if text := quantity.Reading(c.Kind, f.Value.String(), sys); text != "" {
			said = append(said, "--"+f.Name+": "+text)
		}
	}
	for _, text := range said {
		remark(cmd, text)
	}
	return nil
}

// shownUnits are the units that a command's answer is shown in.
func shownUnits(cmd *cobra.Command) quantity.System {
	if f := cmd.Flags().Lookup("units"); f != nil {
		if sys, err := unitsOf(f.Value.String()); err == nil {
			return sys
		}
	}
	return quantity.Metric
}

// unitsOf reads --units; nothing is metric.
func unitsOf(s string) (quantity.System, error) {
	if s == "" {
		return quantity.Metric, nil
	}
	if sys, ok := quantity.FindSystem(s); ok {
		return sys, nil
	}
	return "", wrong("--units: no units are called "+quote(s), "type "+unitsUsage)
}
