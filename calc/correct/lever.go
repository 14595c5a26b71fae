package correct

import (
	"brazebooth/calc"
	"brazebooth/tables"
)

// lever is a setting that a welder changes between test beads.
type lever struct {
	what, unit string
	opt        func(*calc.Job) *calc.Opt
	step       tables.Datum // low the usual step, value the largest; % of the present value where Unit is %
	quantum    float64      // the smallest change that can be set
	ends       func(*calc.Job) (low, high float64)
	hotter     float64 // sign of more heat by the trade's rule, where no window is computed
}

// The levers; those of a steady arc in the order in which a welder tries them.
const (
	leverStickOut = iota
	leverVolts
	leverFeed
	leverTravel
	leverOn
	leverOff
)

var levers = [...]lever{
	leverStickOut: {"stickout", "mm", func(j *calc.Job) *calc.Opt { return &j.StickOut }, tables.StepStickOut, 0.5, stickOutEnds, -1},
	leverVolts:    {"volts", "V", func(j *calc.Job) *calc.Opt { return &j.Volts }, tables.StepVolts, 0.1, calc.VoltEnds, 1},
	leverFeed:     {"wire_feed", "m/min", func(j *calc.Job) *calc.Opt { return &j.Feed }, tables.StepFeed, 0.1, calc.SteadyFeeds, 1},
	leverTravel:   {"travel", "mm/s", func(j *calc.Job) *calc.Opt { return &j.Travel }, tables.StepTravel, 0.1, travelEnds, -1},
	leverOn:       {"arc_on", "s", func(j *calc.Job) *calc.Opt { return &j.ArcOn }, tables.StepOnOff, tables.LeastOnOff.V, timeEnds, 1},
	leverOff:      {"arc_off", "s", func(j *calc.Job) *calc.Opt { return &j.ArcOff }, tables.StepOnOff, tables.LeastOnOff.V, timeEnds, -1},
}

func stickOutEnds(*calc.Job) (low, high float64) {
	return tables.StickOutHeld.Low, tables.StickOutHeld.High
}

func travelEnds(*calc.Job) (low, high float64) {
	return tables.HandSpeedLow.V, tables.HandSpeedHigh.V
}

func timeEnds(*calc.Job) (low, high float64) { return 0.02, 10 }

// most and usual are a lever's largest and usual change at a value.
func (l *lever) most(at float64) float64 { return l.amount(at, l.step.V) }

func (l *lever) usual(at float64) float64 { return l.amount(at, l.step.Low) }

func (l *lever) amount(at, step float64) float64 {
	if l.step.Unit == "%" {
		return at * step / 100
	}
	return step
}
