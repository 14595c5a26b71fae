package cli

import (
	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/field"
	"brazebooth/internal/quantity"
)

const unitsUsage = "metric, inch or both"

// bind adds the named job flags to a command, or all of them to one that answers with a card.
func bind(cmd *cobra.Command, names ...string) {
	bindFrom(cmd, field.OnCard(), names)
	if len(names) > 0 {
		return
	}
	for i := range field.OnCard() {
		f := &field.OnCard()[i]
		cmd.Flags().Lookup(f.Name).Usage = f.Help()
	}
}

// without says of flags what a command takes where they are not given.
func without(cmd *cobra.Command, what string, names ...string) {
	for _, name := range names {
		f, _ := field.ByName(name) // it was bound by that name
		cmd.Flags().Lookup(name).Usage = f.Usage + "; " + what
	}
}

// bindFrom adds the named flags of a list, or all of it where no name is given.
func bindFrom(cmd *cobra.Command, list []field.Field, names []string) {
	for i := range list {
		f := &list[i]
		if len(names) > 0 && !contains(names, f.Name) {
			continue
		}
		cmd.Flags().String(f.Name, "", f.Usage)
	}
}

// bindCard adds every choice of a card and of the pages beside it, and the power source whose readings narrow it.
func bindCard(cmd *cobra.Command) {
	bind(cmd)
	bindFrom(cmd, field.OnPages(), nil)
	bindSource(cmd)
}

// bindSource adds the power source whose plate and readings a card takes.
func bindSource(cmd *cobra.Command) {
	cmd.Flags().String("power-source", "", "power source in the book: its plate, and what its readings taught")
}

// bindPages adds the named choices of the pages.
func bindPages(cmd *cobra.Command, names ...string) { bindFrom(cmd, field.OnPages(), names) }

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
	for _, list := range [...][]field.Field{field.OnCard(), field.OnPages()} {
		for i := range list {
			f := cmd.Flags().Lookup(list[i].Name)
			if f == nil || !f.Changed {
				continue
			}
			if err := list[i].Set(j, f.Value.String()); err != nil {
				return inFlag(f.Name, err)
			}
			if text := quantity.Reading(list[i].Kind, f.Value.String(), sys); text != "" {
				said = append(said, "--"+f.Name+": "+text)
			}
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
	switch s {
	case "", "metric":
		return quantity.Metric, nil
	case "inch", "imperial", "us":
		return quantity.Inch, nil
	case "both":
		return quantity.Both, nil
	}
	return "", wrong("--units: no units are called "+quote(s), "type metric, inch or both")
}

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}
