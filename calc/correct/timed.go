package correct

import (
	"math"

	"brazebooth/calc"
	"brazebooth/tables"
)

// timedLimits are the ends between which a timed arc's times are good, s.
type timedLimits struct{ onMin, onMax, offMin, offMax float64 }

// cause is what is wrong with on and off times, s, under a shift of the heat: more heat makes both ends of on shorter
// and keeps the sheet liquid for longer.
func (l *timedLimits) cause(on, off, shift float64) string {
	f := math.Exp(-shift)
	switch {
	case on > l.onMax*f:
		return tables.CauseOnLong
	case on < l.onMin*f:
		return tables.CauseOnShort
	case off > l.offMax/f:
		return tables.CauseOffLong
	case off < l.offMin/f:
		return tables.CauseOffShort
	}
	return tables.CauseFine
}

// timedLimits are a job's ends by the plane's heat, whatever its own times are.
func (v *posterior) timedLimits(job *calc.Job) (l timedLimits) {
	free := *job
	free.ArcOn, free.ArcOff, free.Travel = calc.Opt{}, calc.Opt{}, calc.Opt{}
	if l, ok := v.times[free]; ok {
		return l
	}
	var s calc.Timed
	if s, v.err = calc.SolveTimed(v.ctx, free, nil); v.err != nil {
		return l
	}
	end := func(name string) float64 { f, _ := calc.FigureNamed(s.Figures, name); return f.Value }
	l = timedLimits{end("arc_on_min"), end("arc_on_max"), end("arc_off_min"), end("arc_off_max")}
	v.times[free] = l
	return l
}

// timedArc is the cure of a timed arc that is too hot (heat −1) or too cold (1): the time at fault, unless that alone
// makes the next bead less likely to be good. Then it is the likeliest of: the wire feed, which moves what both times
// have to be; the other time; both times, one after the other.
func (v *posterior) timedArc(t *Try, before, heat float64, fault, other int) *move {
	best := v.along(t, &levers[fault], heat*levers[fault].hotter)
	if v.off || best != nil && best.good >= before {
		return best
	}
	for _, i := range [...]int{leverFeed, other} {
		if m := v.along(t, &levers[i], heat*levers[i].hotter); m != nil && (best == nil || m.good > best.good) {
			best = m
		}
	}
	both := v.both(t, heat, fault, other)
	if both == nil || best != nil && best.good > both.together {
		return best
	}
	return both
}

// both looks for the two times that together make a good bead likeliest; the one that does more alone comes first.
func (v *posterior) both(t *Try, heat float64, fault, other int) *move {
	a, b, together := &levers[fault], &levers[other], -1.0
	var pair [2]float64
	for _, x := range v.notches(t, a, heat*a.hotter) {
		for _, y := range v.notches(t, b, heat*b.hotter) {
			j := t.Job
			*a.opt(&j), *b.opt(&j) = calc.Some(x), calc.Some(y)
			if g := v.good(&j); g > together {
				together, pair = g, [2]float64{x, y}
			}
		}
	}
	if together < 0 {
		return nil
	}
	first, second := v.set(t, a, pair[0]), v.set(t, b, pair[1])
	if second.good > first.good {
		first, second = second, first
	}
	first.then, first.together = second, together
	return first
}
