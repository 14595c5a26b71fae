package cli

import (
	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/near"
	"brazebooth/internal/quantity"
)

var unitsUsage = near.Or(settingValues("units"))

// flagText is the value of a command's flag, "" if it has no flag of this name.
func flagText(cmd *cobra.Command, name string) string {
	if f := cmd.Flags().Lookup(name); f != nil {
		return f.Value.String()
	}
	return ""
}

// quantityOf reads a flag that is one number with its unit; it is not set without the flag.
func quantityOf(cmd *cobra.Command, name string, field quantity.Field) (calc.Opt, error) {
	text := flagText(cmd, name)
	if text == "" {
		return calc.Opt{}, nil
	}
	v, err := quantity.Read(field, text)
	return calc.Some(v), inFlag(name, err)
}

func flagOn(cmd *cobra.Command, name string) bool { return flagText(cmd, name) == "true" }

// bind adds the flags of the named choices that a command does not have yet.
func bind(cmd *cobra.Command, names ...string) {
	for _, name := range names {
		if cmd.Flags().Lookup(name) == nil {
			cmd.Flags().String(name, "", choice.ByName(name).Usage)
		}
	}
}

// without adds to the usage of flags what a command takes when they are not given.
func without(cmd *cobra.Command, what string, names ...string) {
	for _, name := range names {
		cmd.Flags().Lookup(name).Usage = choice.ByName(name).Usage + "; " + what
	}
}

// bindCard adds every choice of a card, the named choices of the pages beside it, and the power source.
func bindCard(cmd *cobra.Command, pages ...string) {
	for _, c := range choice.OnCard() {
		cmd.Flags().String(c.Name, "", c.Help())
	}
	bind(cmd, pages...)
	bindSource(cmd)
}

// bindAll adds every choice of a card and of all pages.
func bindAll(cmd *cobra.Command) {
	bindCard(cmd, choice.Names(choice.OnPages())...)
}

const sourceName = "power-source"

// bindSource adds the power source whose plate and readings a card uses.
func bindSource(cmd *cobra.Command) {
	cmd.Flags().String(sourceName, "", "power source in the book: its plate, and what its readings taught")
}

func bindNote(cmd *cobra.Command) { cmd.Flags().String("note", "", "anything worth knowing") }

func jobOf(cmd *cobra.Command) (j calc.Job, err error) {
	err = jobInto(cmd, &j)
	return j, err
}

// jobInto reads the job flags that were given into a job, in a fixed order, so that of two mistakes the same one is
// always reported.
//
// For a number without a unit that may have been meant in another one, standard error says how it was read.
func jobInto(cmd *cobra.Command, j *calc.Job) error {
	var said []string
	sys, _ := unitsOf(cmd) // for the words only: a wrong --units was reported before
	for _, c := range choice.All() {
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

// jobWith is the job of the flags with what the power source's readings taught.
func (d *Deps) jobWith(cmd *cobra.Command) (calc.Job, error) {
	job, err := jobOf(cmd)
	if err != nil {
		return job, err
	}
	r := rowCards{d: d, cmd: cmd}
	defer r.close()
	return r.taught(cmd.Context(), job, "")
}

// unitsOf reads --units; "" is metric.
func unitsOf(cmd *cobra.Command) (quantity.System, error) {
	text := flagText(cmd, "units")
	if text == "" {
		return quantity.Metric, nil
	}
	if sys, ok := quantity.FindSystem(text); ok {
		return sys, nil
	}
	return quantity.Metric, wrong("--units: there are no units "+quote(text), "type "+unitsUsage)
}
