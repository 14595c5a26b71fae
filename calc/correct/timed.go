package correct

import (
	"math"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/learned"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// timedCauses fills in the causes of a timed arc. Its ends are those of the plane's heat, whatever its own times.
func (v *posterior) timedCauses(job *calc.Job, list []string) {
	free := *job
	free.ArcOn = calc.Opt{}
	var ends learned.Ends
	ends, v.err = calc.TimedEndsOf(v.ctx, free)
	for i, shift := range v.shifts {
		list[i] = timedCause(&ends, job.ArcOn.V, job.ArcOff.V, shift)
	}
}

// timedCause is the fault of on and off times, s, under a shift of the heat: more heat makes both ends of on shorter
// and keeps the sheet liquid for longer.
func timedCause(ends *learned.Ends, on, off, shift float64) string {
	f := math.Exp(-shift)
	switch {
	case on > ends.OnMax*f:
		return tables.CauseOnLong
	case on < ends.OnMin*f:
		return tables.CauseOnShort
	case off > ends.OffMax/f:
		return tables.CauseOffLong
	case off < ends.OffMin/f:
		return tables.CauseOffShort
	}
	return tables.CauseFine
}

// timedArc is the cure of a timed arc that is too hot (heat −1) or too cold (1): the time at fault, if that
// does not make a good bead less likely. Otherwise both times, the one at fault first. Only if that does not
// help either, the wire feed, which changes the right values of both times, or the other time.
func (v *posterior) timedArc(t *Try, before, heat float64, fault, other int) *move {
	best := v.firstGoodNotch(t, &levers[fault], heat*levers[fault].hotter)
	if v.off || best != nil && best.good >= before {
		return best
	}
	if both := v.both(t, heat, fault, other); both != nil && both.together >= before {
		return both
	}
	for _, i := range [...]int{leverFeed, other} {
		m := v.firstGoodNotch(t, &levers[i], heat*levers[i].hotter)
		if m != nil && (best == nil || m.good > best.good) {
			best = m
		}
	}
	return best
}

// apart is the cure of spots that stay apart: a smaller step, which affects nothing else. If that was tried
// already, or makes a good bead less likely, it is a shorter off time.
func (v *posterior) apart(t *Try, before float64) *move {
	m := v.usualStep(t, &levers[leverStep], -1)
	if m == nil || v.steppedCloser(t) || !v.off && m.good < before-scatter {
		return v.timedArc(t, before, 1, leverOff, leverOn)
	}
	return m
}

// scatter is how much the plane's cells alone may change the chance between two equivalent steps.
const scatter = 0.05

// steppedCloser reports whether spots already stayed apart with a larger step.
func (v *posterior) steppedCloser(t *Try) bool {
	_, found := v.nearest(t, &levers[leverStep], 1, func(seen string) bool {
		return slices.Contains(strings.Split(seen, ","), spotsApart)
	})
	return found
}

const spotsApart = "spots-apart"

// Possible returns an error if a bead of this mode cannot look like this.
func Possible(seen, mode string) error {
	if mode != "timed" && slices.Contains(strings.Split(seen, ","), spotsApart) {
		return mistake.In("seen", spotsApart+" is what a timed arc shows: an arc without pauses lays no spots",
			"choose the mode timed where the arc was paused, or what else the bead shows, as rolled-edge or stubbing")
	}
	return nil
}

// both finds the pair of times with the best chance; the move's own lever is the one at fault.
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
	first.then, first.together = second, together
	return first
}
