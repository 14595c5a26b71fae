package correct

import (
	"math"

	"brazebooth/calc"
	"brazebooth/tables"
)

// lever is a setting that a welder changes between test beads.
type lever struct {
	what, unit string
	opt        func(*calc.Job) *calc.Opt
	step       tables.Datum // low: usual step, value: largest; % of the present value if Unit is %
	quantum    float64      // the smallest change that can be set
	ends       func(*calc.Job) (low, high float64)
	hotter     float64 // sign of a change to more heat by the trade's rule, used without a window
}

// The levers; those of a steady arc are in the order in which a welder tries them.
const (
	leverStickOut = iota
	leverVolts
	leverFeed
	leverTravel
	leverOn
	leverOff
	leverPreheat // of the parts, not a setting of the machine
	leverStep
)

var levers = [...]lever{
	leverStickOut: {"stickout", "mm", func(j *calc.Job) *calc.Opt { return &j.StickOut }, tables.StepStickOut, 0.5,
		within(tables.StickOutHeld.Low, tables.StickOutHeld.High), -1},
	leverVolts: {"volts", "V", func(j *calc.Job) *calc.Opt { return &j.Volts }, tables.StepVolts, 0.1,
		calc.VoltEnds, 1},
	leverFeed: {"wire_feed", "m/min", func(j *calc.Job) *calc.Opt { return &j.Feed }, tables.StepFeed, 0.1,
		calc.SteadyFeeds, 1},
	leverTravel: {"travel", "mm/s", func(j *calc.Job) *calc.Opt { return &j.Travel }, tables.StepTravel, 0.1,
		within(tables.HandSpeedLow.V, tables.HandSpeedHigh.V), -1},
	leverOn: {"arc_on", "s", func(j *calc.Job) *calc.Opt { return &j.ArcOn }, tables.StepOnOff,
		tables.LeastOnOff.V, within(0.02, 10), 1},
	leverOff: {"arc_off", "s", func(j *calc.Job) *calc.Opt { return &j.ArcOff }, tables.StepOnOff,
		tables.LeastOnOff.V, within(0.02, 10), -1},
	leverPreheat: {"preheat", "C", func(j *calc.Job) *calc.Opt { return &j.Preheat }, tables.StepPreheat, 10,
		preheatEnds, 1},
	leverStep: {"spot_step", "mm", func(j *calc.Job) *calc.Opt { return &j.SpotStep }, tables.StepOnOff, 0.1,
		within(0.5, 20), -1},
}

// within returns ends that do not depend on the job.
func within(low, high float64) func(*calc.Job) (low, high float64) {
	return func(*calc.Job) (float64, float64) { return low, high }
}

// preheatEnds are the temperatures between which the parts are warmed, C.
func preheatEnds(j *calc.Job) (low, high float64) {
	low, high = 20, tables.PreheatSteel.High
	switch m, _ := tables.Metals.ByID(j.Metal); m.Family {
	case tables.CastIron:
		low, high = tables.IronPreheat.Low, tables.PreheatIron.High
	case tables.CopperFam:
		high = tables.PreheatCopper.High
	}
	if calc.HighStrength(j.Metal) || calc.HighStrength(j.Metal2) {
		high = min(high, tables.HardenedWarmest.V)
	}
	return low, high
}

// most and usual are a lever's largest and usual change at a value.
func (l *lever) most(at float64) float64  { return l.amount(at, l.step.V) }
func (l *lever) usual(at float64) float64 { return l.amount(at, l.step.Low) }

func (l *lever) amount(at, step float64) float64 {
	if l.step.Unit == "%" {
		return at * step / 100
	}
	return step
}

// usualStep is a usual step of one lever, or less if an earlier bead already lies that way.
func (v *posterior) usualStep(t *Try, l *lever, sign float64) *move {
	list := v.notches(t, l, sign)
	if len(list) == 0 {
		return nil
	}
	at := l.opt(&t.Job).V
	i, step := 0, l.usual(at)
	if l.what == "volts" { // at most halfway to a value at which the arc neither stubbed nor burnt back
		if well, ok := v.nearest(t, l, sign, func(seen string) bool { return voltSign(seen) == 0 }); ok {
			step = min(step, math.Abs(well-at)/2)
		}
	}
	for i < len(list)-1 && math.Abs(list[i]-at) < step-1e-9 {
		i++
	}
	return v.set(t, l, list[i])
}

// set is the move of one lever to a value.
func (v *posterior) set(t *Try, l *lever, to float64) *move {
	m := &move{lever: l, job: t.Job}
	*l.opt(&m.job) = calc.Some(to)
	m.good = v.good(&m.job)
	return m
}

// firstGoodNotch is the first notch of a lever whose chance is at least one half, or the likeliest notch.
func (v *posterior) firstGoodNotch(t *Try, l *lever, sign float64) *move {
	if v.off {
		return v.usualStep(t, l, sign)
	}
	list := v.notches(t, l, sign)
	var best *move
	for _, x := range list {
		m := v.set(t, l, x)
		if best == nil || m.good > best.good {
			best = m
		}
		if m.good >= 0.5 {
			break
		}
	}
	if best != nil && best.good < 0.01 { // hopeless within one step: take the whole step
		*l.opt(&best.job) = calc.Some(list[len(list)-1])
	}
	return best
}
