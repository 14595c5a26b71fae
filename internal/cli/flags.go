package cli

import (
	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

const unitsUsage = "metric, inch or both"

// jobFlag is one choice of a job as a flag.
type jobFlag struct {
	name, usage string
	set         func(*calc.Job, string) error
	values      func() []string // what completes it, nil for sizes
}

var jobFlags = []jobFlag{
	{"metal", "base metal: mild-steel, galvanized, stainless-304 ... (see tables metals)",
		func(j *calc.Job, s string) error { return named(&j.Metal, s, metalID) }, metalIDs},
	{"gauge", "thickness: 16ga, .060 or 1.5mm",
		func(j *calc.Job, s string) error { return thickness(&j.Gauge, &j.Thickness, s) }, nil},
	{"coating", "coating: none, G60, Z180, A40 ... (see tables coatings)",
		func(j *calc.Job, s string) error { return named(&j.Coating, s, coatingID) }, coatingIDs},
	{"metal2", "second member's metal; without it as the first",
		func(j *calc.Job, s string) error { return named(&j.Metal2, s, metalID) }, metalIDs},
	{"gauge2", "second member's thickness",
		func(j *calc.Job, s string) error { return thickness(&j.Gauge2, &j.Thickness2, s) }, nil},
	{"coating2", "second member's coating",
		func(j *calc.Job, s string) error { return named(&j.Coating2, s, coatingID) }, coatingIDs},
	{"joint", "lap, butt, tee, corner, plug or overlay",
		func(j *calc.Job, s string) error { return named(&j.Joint, s, optionID(tables.FindJoint)) }, optionIDs(tables.Joints)},
	{"gap", "root opening: 0, 1.5mm or 1/16in",
		func(j *calc.Job, s string) error { return size(&j.Gap, s, quantity.ParseGap, 1) }, nil},
	{"filler", "cusi3, cual8, ERCuSi-A ... (see tables fillers)",
		func(j *calc.Job, s string) error { return named(&j.Filler, s, fillerID) }, fillerIDs},
	{"wire", "wire diameter: .035, 1/16 or 0.9mm",
		func(j *calc.Job, s string) error { return size(&j.Wire, s, quantity.ParseWire, 1) }, nil},
	{"mode", "dip, pulsed or timed",
		func(j *calc.Job, s string) error { return named(&j.Mode, s, optionID(tables.FindMode)) }, optionIDs(tables.Modes)},
	{"gas", "argon, argon-co2-2 ... (see tables gases)",
		func(j *calc.Job, s string) error { return named(&j.Gas, s, gasID) }, gasIDs},
	{"feed", "wire feed: 250ipm or 6.3m/min; without it one is suggested",
		func(j *calc.Job, s string) error { return size(&j.Feed, s, quantity.ParseFeed, 0.06) }, nil},
	{"amps", "current: another way to say the feed, a reading where both are given",
		func(j *calc.Job, s string) error { return size(&j.Amps, s, quantity.ParseCurrent, 1) }, nil},
	{"volts", "arc voltage, as the meter shows it while the arc runs",
		func(j *calc.Job, s string) error { return size(&j.Volts, s, quantity.ParseVoltage, 1) }, nil},
	{"travel", "travel: 6mm/s, 14ipm or 16s/100mm; without it one is suggested",
		func(j *calc.Job, s string) error { return size(&j.Travel, s, quantity.ParseTravel, 1) }, nil},
	{"stickout", "stick-out from contact tip to arc: 12mm or 1/2in",
		func(j *calc.Job, s string) error { return size(&j.StickOut, s, quantity.ParseStickOut, 1) }, nil},
	{"arc-on", "timed arc: how long on, 0.4s",
		func(j *calc.Job, s string) error { return size(&j.ArcOn, s, quantity.ParseDuration, 1) }, nil},
	{"arc-off", "timed arc: how long off, 0.6s",
		func(j *calc.Job, s string) error { return size(&j.ArcOff, s, quantity.ParseDuration, 1) }, nil},
	{"spot-step", "timed arc: how far on from spot to spot, 3mm or 1/8in",
		func(j *calc.Job, s string) error { return size(&j.SpotStep, s, quantity.ParseLength, 1) }, nil},
	{"length", "seam's length: 300mm or 12in",
		func(j *calc.Job, s string) error { return size(&j.Length, s, quantity.ParseLength, 1) }, nil},
	{"position", "flat, horizontal, vertical-up, vertical-down or overhead",
		func(j *calc.Job, s string) error { return named(&j.Position, s, optionID(tables.FindPosition)) }, optionIDs(tables.Positions)},
	{"preheat", "temperature of the parts before the arc: 95C or 200F",
		func(j *calc.Job, s string) error { return size(&j.Preheat, s, quantity.ParseTemperature, 1) }, nil},
	{"aim", "arc's offset toward the second member: 0.5mm or -0.5mm",
		func(j *calc.Job, s string) error { return size(&j.Aim, s, quantity.ParseOffset, 1) }, nil},
	{"zinc-limit", "widest zinc-boiled half-width accepted: 4mm",
		func(j *calc.Job, s string) error { return size(&j.ZincLimit, s, quantity.ParseLength, 1) }, nil},
	{"flow", "gas flow: 12 L/min or 25cfh",
		func(j *calc.Job, s string) error { return size(&j.Flow, s, quantity.ParseFlow, 1) }, nil},
}

// named finds the row that text means and puts its id.
func named(id *string, text string, find func(string) (string, error)) error {
	found, err := find(text)
	if err == nil {
		*id = found
	}
	return err
}

func metalID(s string) (string, error)   { m, err := tables.FindMetal(s); return m.ID, err }
func coatingID(s string) (string, error) { c, err := tables.FindCoating(s); return c.ID, err }
func fillerID(s string) (string, error)  { f, err := tables.FindFiller(s); return f.ID, err }
func gasID(s string) (string, error)     { g, err := tables.FindGas(s); return g.ID, err }

func optionID(find func(string) (tables.Option, error)) func(string) (string, error) {
	return func(s string) (string, error) { o, err := find(s); return o.ID, err }
}

// size reads a quantity into a number of the job; scale turns the parser's unit into the job's.
func size[Q ~float64](o *calc.Opt, text string, parse func(string) (Q, error), scale float64) error {
	v, err := parse(text)
	if err == nil {
		*o = calc.Some(float64(v) * scale)
	}
	return err
}

// thickness reads a gauge or a thickness.
func thickness(gauge *int, mm *calc.Opt, text string) error {
	s, err := quantity.ParseSize(text)
	switch {
	case err != nil:
	case s.Gauge != 0:
		*gauge = s.Gauge
	default:
		*mm = calc.Some(float64(s.Length))
	}
	return err
}

// bind adds the named job flags, or all of them, to a command.
func bind(cmd *cobra.Command, names ...string) {
	if len(names) == 0 {
		for i := range jobFlags {
			names = append(names, jobFlags[i].name)
		}
	}
	bindFrom(cmd, jobFlags, names)
}

// bindFrom adds the named flags of a list.
func bindFrom(cmd *cobra.Command, list []jobFlag, names []string) {
	for i := range list {
		f := &list[i]
		if !contains(names, f.name) {
			continue
		}
		cmd.Flags().String(f.name, "", f.usage)
		if f.values != nil {
			ids := f.values
			_ = cmd.RegisterFlagCompletionFunc(f.name, func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
				return ids(), cobra.ShellCompDirectiveNoFileComp
			})
		}
	}
}

// jobOf reads the job flags that were given, in their fixed order, so that of two mistakes the same one
// is always named.
func jobOf(cmd *cobra.Command) (calc.Job, error) {
	var j calc.Job
	for _, list := range [...][]jobFlag{jobFlags, partFlags} {
		for i := range list {
			f := cmd.Flags().Lookup(list[i].name)
			if f == nil || !f.Changed {
				continue
			}
			if err := list[i].set(&j, f.Value.String()); err != nil {
				return j, inFlag(f.Name, err)
			}
		}
	}
	return j, nil
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

func metalIDs() []string { return ids(tables.Metals(), func(m *tables.Metal) string { return m.ID }) }
func coatingIDs() []string {
	return ids(tables.Coatings(), func(c *tables.Coating) string { return c.ID })
}
func fillerIDs() []string {
	return ids(tables.Fillers(), func(f *tables.Filler) string { return f.ID })
}
func gasIDs() []string { return ids(tables.Gases(), func(g *tables.Gas) string { return g.ID }) }

func optionIDs(rows func() []tables.Option) func() []string {
	return func() []string { return ids(rows(), func(o *tables.Option) string { return o.ID }) }
}

func ids[T any](rows []T, id func(*T) string) []string {
	list := make([]string, 0, len(rows))
	for i := range rows {
		list = append(list, id(&rows[i]))
	}
	return list
}
