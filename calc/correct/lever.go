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
	leverPreheat // of the parts; nothing on the machine
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

// within are the ends of a lever that no job moves.
func within(low, high float64) func(*calc.Job) (low, high float64) {
	return func(*calc.Job) (float64, float64) { return low, high }
}

// preheatEnds are how warm parts are made for the arc, C.
func preheatEnds(j *calc.Job) (low, high float64) {
	low, high = metalEnds(j.Metal)
	if calc.HighStrength(j.Metal) || calc.HighStrength(j.Metal2) {
		high = min(high, tables.HardenedWarmest.V)
	}
	return low, high
}

// metalEnds are how warm the first member alone is made, C.
func metalEnds(metal string) (low, high float64) {
	m, _ := tables.Metals.ByID(metal)
	switch m.Family {
	case tables.CastIron:
		return tables.IronPreheat.Low, tables.PreheatIron.High
	case tables.CopperFam:
		return 20, tables.PreheatCopper.High
	}
	return 20, tables.PreheatSteel.High
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

// one is a usual step of one lever, or the middle of what is known on both sides.
func (v *posterior) one(t *Try, l *lever, sign float64) *move {
	list := v.notches(t, l, sign)
	if len(list) == 0 {
		return nil
	}
	at := l.opt(&t.Job).V
	i, step := 0, l.usual(at)
	if calm, ok := v.calm(t, l, sign); ok {
		step = min(step, math.Abs(calm-at)/2) // half way back to what ran
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

// calm is the nearest value of the volts on that side at which a bead with the same other settings ran without
// stubbing or burning back.
func (v *posterior) calm(t *Try, l *lever, sign float64) (float64, bool) {
	if l.what != "volts" {
		return 0, false
	}
	return v.nearest(t, l, sign, func(seen string) bool { return voltSign(seen) == 0 })
}

// along is the first notch of a lever that is more likely than not to be good, or the likeliest.
func (v *posterior) along(t *Try, l *lever, sign float64) *move {
	list := v.notches(t, l, sign)
	if v.off {
		return v.one(t, l, sign)
	}
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
	if best != nil && best.good < 0.01 { // far off: as far as one step goes
		*l.opt(&best.job) = calc.Some(list[len(list)-1])
	}
	return best
}
