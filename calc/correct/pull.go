package correct

import (
	"math"

	"brazebooth/calc"
	"brazebooth/calc/limit"
)

// pull looks along one lever for the smallest change with a chance of at least one half; nil if the lever has
// no room or no effect that way.
func (v *posterior) pull(t *Try, l *lever, heat float64) *move {
	sign := v.sense(t, l, heat)
	list := v.notches(t, l, sign)
	if sign == 0 || len(list) == 0 {
		return nil
	}
	job := func(i int) calc.Job { j := t.Job; *l.opt(&j) = calc.Some(list[i]); return j }
	first, last := 0, len(list)-1
	for first < last && math.Abs(list[first]-l.opt(&t.Job).V) < l.usual(l.opt(&t.Job).V)-1e-9 {
		first++
	}
	if v.off { // without a window: the usual step
		return &move{lever: l, job: job(first)}
	}
	for last >= 0 && !v.keepsOtherEdges(&t.Job, job(last)) {
		last--
	}
	if last < first {
		return nil
	}
	best, good := smallestGood(first, last, func(i int) float64 { j := job(i); return v.good(&j) })
	j := job(best)
	gain := v.widened(&t.Job, &j, heat)
	if gain <= 0 { // it no longer helps
		return nil
	}
	return &move{lever: l, job: j, good: good, gain: gain}
}

// smallestGood looks for the first job in a row with a chance of at least one half: it tries five, then bisects
// between the last that fails and the first that passes. Without one it takes the likeliest; if nothing has any
// chance, it takes the last, which helps most without breaking another limit.
func smallestGood(first, last int, chance func(int) float64) (best int, good float64) {
	best = first - 1
	low, high := first-1, -1 // the first good one lies in (low, high]
	for n := 0; n < 5 && high < 0; n++ {
		i := first + (last-first)*n/4
		g := chance(i)
		if best < first || g > good {
			best, good = i, g
		}
		if g >= 0.5 {
			high = i
		} else {
			low = i
		}
	}
	for high >= 0 && high-low > 1 {
		i := (low + high) / 2
		g := chance(i)
		if g >= 0.5 {
			high, good = i, g
		} else {
			low = i
		}
	}
	switch {
	case high >= 0:
		best = high
	case good < 0.01:
		best = last
	}
	return best, good
}

// sense is the sign of a lever's change that widens the limit: with more heat (heat 1) or less (−1); 0 if the
// lever does neither. It goes by the window, or by the trade's rule if there is none.
func (v *posterior) sense(t *Try, l *lever, heat float64) float64 {
	if v.off || v.timed {
		return l.hotter * heat
	}
	at := l.opt(&t.Job).V
	for _, sign := range [...]float64{1, -1} {
		j := t.Job
		*l.opt(&j) = calc.Some(at + sign*l.usual(at))
		if v.widened(&t.Job, &j, heat) > 0.002 {
			return sign
		}
	}
	return 0
}

// widened is how much further inside the limit of cold (heat 1) or of melting (−1) one job is than another,
// logarithmic. It is the smaller of the gains at the computed heat and at the posterior's mean heat, leaving
// out those that are deep inside already. 0 if one of the jobs is not modelled.
func (v *posterior) widened(from, to *calc.Job, heat float64) float64 {
	const plenty = 0.3 // deeper inside than this, a change neither helps nor harms
	least, open := math.Inf(1), math.Inf(1)
	for _, shift := range [...]float64{0, v.middle()} {
		a, okA := v.inside(from, heat, shift)
		b, okB := v.inside(to, heat, shift)
		if !okA || !okB {
			return 0
		}
		least = min(least, b-a)
		if a, b = min(a, plenty), min(b, plenty); a < plenty || b < plenty {
			open = min(open, b-a)
		}
	}
	if !math.IsInf(open, 1) {
		return open
	}
	return least
}

// inside is calc.Probe's Inside; false if the job cannot be computed.
func (v *posterior) inside(j *calc.Job, heat, shift float64) (float64, bool) {
	p, err := calc.ProbeOf(v.ctx, j)
	if err != nil {
		return 0, false
	}
	return p.Inside(heat, shift)
}

// middle is the mean shift.
func (v *posterior) middle() float64 {
	sum := 0.0
	for i, s := range v.shifts {
		sum += v.weights[i] * s
	}
	return sum
}

// keepsOtherEdges reports whether a change breaks no edge other than those of heat: filled, gap bridged, metal stays
// up, arc steady, a hand's speed.
func (v *posterior) keepsOtherEdges(from *calc.Job, to calc.Job) bool {
	a, okA := v.simpleLimits(from)
	b, okB := v.simpleLimits(&to)
	if !okA || !okB {
		return false
	}
	for i := range a {
		if b[i] < 0 && b[i] < a[i]-1e-9 {
			return false
		}
	}
	return true
}

func (v *posterior) simpleLimits(j *calc.Job) (limit.All, bool) {
	p, err := calc.ProbeOf(v.ctx, j)
	if err != nil {
		return limit.All{}, false
	}
	return p.Simple()
}
