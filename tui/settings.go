package tui

import (
	"math"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// setting is a number on the card that a hand can change. Sizes are in the Job's own units.
type setting struct {
	name   string // of the figure
	opt    func(*calc.Job) *calc.Opt
	metric float64 // one step in metric units
	inch   float64 // one step in inch units
	parse  func(string) (float64, error)
	field  quantity.Field // whose rule for a bare number holds
}

const (
	feedPerIPM   = quantity.MMPerInch / 1000 // m/min per in/min
	travelPerIPM = quantity.MMPerInch / 60   // mm/s per in/min
	flowPerCFH   = 28.316846592 / 60         // L/min per ft3/h, exact
)

var settings = [...]setting{
	{"wire_feed", func(j *calc.Job) *calc.Opt { return &j.Feed }, 0.1, 5 * feedPerIPM,
		number(quantity.ParseFeed, 0.06), quantity.FieldFeed},
	{"volts", func(j *calc.Job) *calc.Opt { return &j.Volts }, 0.1, 0.1,
		number(quantity.ParseVoltage, 1), quantity.FieldVoltage},
	{"travel", func(j *calc.Job) *calc.Opt { return &j.Travel }, 0.25, 0.5 * travelPerIPM,
		number(quantity.ParseTravel, 1), quantity.FieldTravel},
	{"arc_on", func(j *calc.Job) *calc.Opt { return &j.ArcOn }, 0.05, 0.05,
		number(quantity.ParseDuration, 1), quantity.FieldDuration},
	{"arc_off", func(j *calc.Job) *calc.Opt { return &j.ArcOff }, 0.05, 0.05,
		number(quantity.ParseDuration, 1), quantity.FieldDuration},
	{"spot_step", func(j *calc.Job) *calc.Opt { return &j.SpotStep }, 0.25, quantity.MMPerInch / 64,
		number(quantity.ParseLength, 1), quantity.FieldLength},
	{"gas_flow", func(j *calc.Job) *calc.Opt { return &j.Flow }, 1, 2 * flowPerCFH,
		number(quantity.ParseFlow, 1), quantity.FieldFlow},
	{"stickout", func(j *calc.Job) *calc.Opt { return &j.StickOut }, 1, quantity.MMPerInch / 16,
		number(quantity.ParseStickOut, 1), quantity.FieldStickOut},
}

// number turns a parser of a quantity into one of the Job's number.
func number[Q ~float64](parse func(string) (Q, error), scale float64) func(string) (float64, error) {
	return func(s string) (float64, error) {
		q, err := parse(s)
		return float64(q) * scale, err
	}
}

// settingByName returns the setting behind a figure, nil where the figure cannot be changed.
func settingByName(name string) *setting {
	for i := range settings {
		if settings[i].name == name {
			return &settings[i]
		}
	}
	return nil
}

// step returns the next round value above (up > 0) or below v: a knob is turned to full steps.
func (s *setting) step(v float64, up int, units quantity.System) float64 {
	size := s.metric
	if units == quantity.Inch {
		size = s.inch
	}
	n := v / size
	if up > 0 {
		n = math.Floor(n+0.001) + 1
	} else {
		n = math.Ceil(n-0.001) - 1
	}
	return n * size
}

// turned returns the job with the setting moved by one step from where the card has it.
func (s *setting) turned(base calc.Job, c *calc.Card, up int, units quantity.System) calc.Job {
	f, ok := c.Figure(s.name)
	if !ok {
		return base
	}
	*s.opt(&base) = calc.Some(s.step(f.Value, up, units))
	return base
}

// open is a number that nobody chose.
var open calc.Opt

// ruleText says how a bare number in the setting's field is read; of one that is typed and may be meant otherwise, how it is.
func (s *setting) ruleText(typed string, units quantity.System) string {
	return readingOr(s.field, typed, units, quantity.Rule(s.field))
}

// readingOr is what is said of a typed number that may be meant otherwise, else the rule.
func readingOr(f quantity.Field, typed string, units quantity.System, rule string) string {
	if text := quantity.Reading(f, typed, units); text != "" {
		return text
	}
	return rule
}
