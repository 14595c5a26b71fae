package correct

import (
	"brazebooth/calc"
	"math"
)

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
