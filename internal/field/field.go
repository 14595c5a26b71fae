// Package field is a job's choices as a hand types them: one name, one way to read it and one way to show it, the same
// for flags, screens and files.
package field

import (
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// Field is one choice of a job.
type Field struct {
	Name, Usage string
	Without     string                        // what a card takes where it is not given, "" for what its assumptions say
	Set         func(*calc.Job, string) error // reads what was typed; the job is unchanged on an error
	Values      func() []string               // what completes it, nil for sizes
	At          func(*calc.Job) *calc.Opt     // where its number stands, nil for names
	Unit        string                        // of that number
	Kind        quantity.Field                // the box it is typed into, 0 for names
}

// onCard are the choices that every card takes.
var onCard = []Field{
	{Name: "metal", Usage: "base metal: mild-steel, galvanized, stainless-304 ... (see tables metals)",
		Set: func(j *calc.Job, s string) error { return named(&j.Metal, s, metalID) }, Values: metalIDs},
	{Name: "gauge", Usage: "thickness: 16ga, .060 or 1.5mm", Kind: quantity.FieldSize,
		Set: func(j *calc.Job, s string) error { return thickness(&j.Gauge, &j.Thickness, s) }},
	{Name: "coating", Usage: "coating: none, G60, Z180, A40 ... (see tables coatings)",
		Set: func(j *calc.Job, s string) error { return named(&j.Coating, s, coatingID) }, Values: coatingIDs},
	{Name: "metal2", Usage: "second member's metal; without it as the first",
		Set: func(j *calc.Job, s string) error { return named(&j.Metal2, s, metalID) }, Values: metalIDs},
	{Name: "gauge2", Usage: "second member's thickness", Kind: quantity.FieldSize,
		Set: func(j *calc.Job, s string) error { return thickness(&j.Gauge2, &j.Thickness2, s) }},
	{Name: "coating2", Usage: "second member's coating",
		Set: func(j *calc.Job, s string) error { return named(&j.Coating2, s, coatingID) }, Values: coatingIDs},
	{Name: "joint", Usage: "lap, butt, tee, corner, plug or overlay",
		Set: func(j *calc.Job, s string) error { return named(&j.Joint, s, optionID(tables.FindJoint)) }, Values: optionIDs(tables.Joints)},
	sized("gap", "root opening: 0, 1.5mm or 1/16in", "mm",
		func(j *calc.Job) *calc.Opt { return &j.Gap }, quantity.ParseGap, quantity.FieldGap, 1),
	{Name: "filler", Usage: "cusi3, cual8, ERCuSi-A ... (see tables fillers)",
		Set: func(j *calc.Job, s string) error { return named(&j.Filler, s, fillerID) }, Values: fillerIDs},
	sized("wire", "wire diameter: .035, 1/16 or 0.9mm", "mm",
		func(j *calc.Job) *calc.Opt { return &j.Wire }, quantity.ParseWire, quantity.FieldWire, 1),
	{Name: "mode", Usage: "dip, pulsed or timed",
		Set: func(j *calc.Job, s string) error { return named(&j.Mode, s, optionID(tables.FindMode)) }, Values: optionIDs(tables.Modes)},
	{Name: "gas", Usage: "argon, argon-co2-2 ... (see tables gases)",
		Set: func(j *calc.Job, s string) error { return named(&j.Gas, s, gasID) }, Values: gasIDs},
	sized("feed", "wire feed: 250ipm or 6.3m/min", "m/min",
		func(j *calc.Job) *calc.Opt { return &j.Feed }, quantity.ParseFeed, quantity.FieldFeed, 0.06).suggested(),
	sized("amps", "current: another way to say the feed, a reading where both are given", "A",
		func(j *calc.Job) *calc.Opt { return &j.Amps }, quantity.ParseCurrent, quantity.FieldCurrent, 1),
	sized("volts", "arc voltage, as the meter shows it while the arc runs", "V",
		func(j *calc.Job) *calc.Opt { return &j.Volts }, quantity.ParseVoltage, quantity.FieldVoltage, 1),
	sized("travel", "travel: 6mm/s, 14ipm or 16s/100mm", "mm/s",
		func(j *calc.Job) *calc.Opt { return &j.Travel }, quantity.ParseTravel, quantity.FieldTravel, 1).suggested(),
	sized("stickout", "stick-out from contact tip to arc: 12mm or 1/2in", "mm",
		func(j *calc.Job) *calc.Opt { return &j.StickOut }, quantity.ParseStickOut, quantity.FieldStickOut, 1),
	sized("arc-on", "timed arc: how long on, 0.4s", "s",
		func(j *calc.Job) *calc.Opt { return &j.ArcOn }, quantity.ParseDuration, quantity.FieldDuration, 1),
	sized("arc-off", "timed arc: how long off, 0.6s", "s",
		func(j *calc.Job) *calc.Opt { return &j.ArcOff }, quantity.ParseDuration, quantity.FieldDuration, 1),
	sized("spot-step", "timed arc: how far on from spot to spot, 3mm or 1/8in", "mm",
		func(j *calc.Job) *calc.Opt { return &j.SpotStep }, quantity.ParseLength, quantity.FieldLength, 1),
	sized("length", "seam's length: 300mm or 12in", "mm",
		func(j *calc.Job) *calc.Opt { return &j.Length }, quantity.ParseLength, quantity.FieldLength, 1),
	{Name: "position", Usage: "flat, horizontal, vertical-up, vertical-down or overhead",
		Set: func(j *calc.Job, s string) error { return named(&j.Position, s, optionID(tables.FindPosition)) }, Values: optionIDs(tables.Positions)},
	sized("preheat", "temperature of the parts before the arc: 95C or 200F", "C",
		func(j *calc.Job) *calc.Opt { return &j.Preheat }, quantity.ParseTemperature, quantity.FieldTemperature, 1),
	sized("aim", "arc's offset toward the second member: 0.5mm or -0.5mm", "mm",
		func(j *calc.Job) *calc.Opt { return &j.Aim }, quantity.ParseOffset, quantity.FieldOffset, 1),
	sized("zinc-limit", "widest zinc-boiled half-width accepted: 4mm", "mm",
		func(j *calc.Job) *calc.Opt { return &j.ZincLimit }, quantity.ParseLength, quantity.FieldLength, 1),
	sized("flow", "gas flow: 12 L/min or 25cfh", "L/min",
		func(j *calc.Job) *calc.Opt { return &j.Flow }, quantity.ParseFlow, quantity.FieldFlow, 1),
}

// OnCard lists the choices that every card takes, in their fixed order; read only.
func OnCard() []Field { return onCard }

// OnPages lists those that only the pages beside the card need; read only.
func OnPages() []Field { return onPages }

// ByName returns the choice with exactly this name.
func ByName(name string) (*Field, bool) {
	for _, list := range [...][]Field{onCard, onPages} {
		for i := range list {
			if list[i].Name == name {
				return &list[i], true
			}
		}
	}
	return nil, false
}

// Help is the usage of a choice of a card, with what is taken where it is not given.
func (f *Field) Help() string {
	if f.Without == "" {
		return f.Usage
	}
	return f.Usage + "; without it " + f.Without
}

// Show is a number as the job has it, "" where it was not given or is no number.
func (f *Field) Show(j *calc.Job, sys quantity.System) string {
	if f.At == nil || !f.At(j).Set {
		return ""
	}
	text := quantity.Show(f.At(j).V, f.Unit, sys)
	if strings.HasPrefix(f.Unit, "per ") && j.Currency != "" {
		text += " in " + j.Currency
	}
	return text
}

// Clear leaves a number open again; with the last price its currency goes too.
func (f *Field) Clear(j *calc.Job) {
	if f.At == nil {
		return
	}
	*f.At(j) = calc.Opt{}
	if !j.WirePrice.Set && !j.GasPrice.Set && !j.LabourRate.Set && !j.SteelPrice.Set {
		j.Currency = ""
	}
}
