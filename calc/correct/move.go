package correct

import (
	"math"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/tables"
)

// move is a change that was looked at.
type move struct {
	lever *lever
	job   calc.Job
	good  float64 // chance of a good bead with it
	gain  float64 // by which it widens the limit in question, logarithmic

	then     *move   // the other of a timed arc's two times, if one alone is not enough
	together float64 // the chance with both
	far      string  // what further steps bring, if this one alone does not raise the chance
}

// choose finds the answer to the likeliest cause: a setting, or the cure in words if none is at fault or helps.
func (v *posterior) choose(t *Try, c *advice.Correction) {
	before := v.good(&t.Job)
	top := &c.Causes[0]
	if !v.off {
		c.GoodBefore, c.GoodAfter = 100*before, 100*before
	}
	if v.onlyZinc {
		v.repairZinc(t, c)
		return
	}
	if heatOf(top.ID)*v.farOff(&t.Job) < 0 {
		v.dispute(t, top, c)
		return
	}
	best := v.remedy(t, top.ID, before)
	switch {
	case best == nil && OfHeat(top.ID) && !v.off && !v.timed && top.ID != tables.CauseMelts:
		v.cannot(t, top, c)
		return
	case best == nil:
		v.noChange(top, c)
		return
	}
	if OfHeat(top.ID) && !v.off && !v.timed && best.lever != nil && max(best.good, best.together)-before < leastGain {
		if best.far = v.beyond(t, best, before); best.far == "" {
			v.cannot(t, top, c)
			return
		}
	}
	if !v.off {
		c.GoodAfter = 100 * max(best.good, best.together)
	}
	put(c, t, best)
	c.Why = v.why(top, c, best)
}

// put writes a move into the correction as its change. The next job is the given one with the bead's settings and the
// change; what was assumed stays open.
func put(c *advice.Correction, t *Try, m *move) {
	if m.lever == nil {
		c.Change = &advice.Change{What: "mode", FromMode: t.Job.Mode, ToMode: m.job.Mode}
		c.Next.Mode, c.Next.Amps = m.job.Mode, calc.Opt{}
		c.Next = unaimed(c.Next)
		return
	}
	to := *m.lever.opt(&m.job)
	c.Change = &advice.Change{What: m.lever.what, From: m.lever.opt(&t.Job).V, To: to.V, Unit: m.lever.unit}
	c.Next = AsSet(c.Next, &t.Job)
	if m.lever.what == "wire_feed" { // the volts stay as they are set
		c.Next.Volts = t.Job.Volts
	}
	*m.lever.opt(&c.Next) = to
}

// remedy is the move against a cause, nil if no setting helps.
func (v *posterior) remedy(t *Try, cause string, before float64) *move {
	switch cause {
	case tables.CauseCold:
		if m := v.shorten(t, before); m != nil {
			return m
		}
		return v.search(t, before, 1, v.warmer(t)...)
	case tables.CauseHot:
		if v.off {
			return v.search(t, before, -1, leverTravel, leverVolts, leverFeed)
		}
		return v.search(t, before, -1, leverStickOut, leverVolts, leverFeed, leverTravel)
	case tables.CauseMelts:
		m := v.search(t, before, -1, leverTravel, leverFeed) // after a hole first faster travel or less wire
		if v.off || t.Job.Mode == "timed" || v.steadyMayWork(t) {
			return m
		}
		return v.timedInstead(t, m)
	case tables.CauseOnLong:
		return v.timedArc(t, before, -1, leverOn, leverOff)
	case tables.CauseOnShort:
		return v.timedArc(t, before, 1, leverOn, leverOff)
	case tables.CauseOffLong:
		return v.apart(t, before)
	case tables.CauseOffShort:
		return v.timedArc(t, before, -1, leverOff, leverOn)
	case tables.CauseVoltsLow:
		if m := v.shorten(t, before); m != nil {
			return m
		}
	}
	return v.treat(t, cause, before)
}

// shorten brings a stick-out longer than the usual range back to its long end, before anything else is changed.
// It is nil if the stick-out is not too long, or if that makes a good bead less likely.
func (v *posterior) shorten(t *Try, before float64) *move {
	l := &levers[leverStickOut]
	_, most := l.ends(&t.Job)
	if t.Job.StickOut.V <= most+l.quantum || v.barred(t, l, -1) {
		return nil
	}
	m := v.set(t, l, most)
	if !v.off && m.good < before {
		return nil
	}
	return m
}

// warmer are the levers for more heat in the order in which they pay. On a heavy part, or copper, half a volt
// or a shorter stick-out has no effect: it needs preheat and more wire. With zinc on it nothing is preheated.
func (v *posterior) warmer(t *Try) []int {
	heavy := calc.MinCore(v.card.Setup.Joined()) > tables.SheetThickest.V
	switch {
	case v.timed:
	case calc.Applies("zinc", &v.card):
		if heavy || v.has(tables.CopperFam) {
			return []int{leverFeed, leverTravel, leverVolts, leverStickOut}
		}
	case heavy && (v.has(tables.CopperFam) || v.has(tables.CastIron)):
		return []int{leverPreheat, leverFeed, leverTravel, leverVolts, leverStickOut}
	case heavy, v.has(tables.CopperFam):
		return []int{leverFeed, leverTravel, leverPreheat, leverVolts, leverStickOut}
	}
	return []int{leverStickOut, leverVolts, leverFeed, leverTravel}
}

// steadyMayWork reports whether a steady arc may be good at a setting between this one and the fastest travel that a
// hand holds, between this one and the least steady feed, or at the card's own setting.
func (v *posterior) steadyMayWork(t *Try) bool {
	fast, low := t.Job, t.Job
	high := tables.HandSpeedHigh.V
	fast.Travel = calc.Some(max(high, t.Job.Travel.V))
	least, _ := calc.SteadyFeeds(&t.Job)
	low.Feed = calc.Some(min(least, t.Job.Feed.V))
	for _, end := range [...]calc.Job{fast, low} {
		half := end
		half.Travel = calc.Some(math.Sqrt(end.Travel.V * t.Job.Travel.V))
		half.Feed = calc.Some(math.Sqrt(end.Feed.V * t.Job.Feed.V))
		if v.good(&end) > hopeful || v.good(&half) > hopeful {
			return true
		}
	}
	j, ok := v.own(opened(t.Job), func(c *calc.Card) bool { return !c.Warned("no-good-setting") })
	return ok && v.good(&j) > hopeful
}

// hopeful is the chance of a good bead above which a steady arc is not given up.
const hopeful = 0.25

// timedInstead is a timed arc instead of a steady one, if the joint allows it; otherwise the move that was found.
func (v *posterior) timedInstead(t *Try, found *move) *move {
	if t.Job.Joint == "overlay" || t.Job.Joint == "plug" {
		return found
	}
	j := unaimed(t.Job) // the timed arc's own values are suggested again
	j.Mode = "timed"
	return &move{job: j}
}

// search goes through the levers in the welder's order for the first whose smallest change has a chance of at
// least one half. Without one, it takes the change with the best chance, or the one that widens the limit most.
func (v *posterior) search(t *Try, before, heat float64, order ...int) *move {
	var bracketed *move
	for _, i := range order {
		sign := v.sense(t, &levers[i], heat)
		if _, known := v.opposite(t, &levers[i], sign); known && sign != 0 { // beads on both sides of it were seen
			m := v.pull(t, &levers[i], heat)
			if m != nil && (v.off || m.good >= before) {
				return m
			}
			if bracketed == nil {
				bracketed = m
			}
		}
	}
	var best *move
	for _, i := range order {
		if v.timed && i == leverTravel {
			continue // a timed arc's travel follows from its times
		}
		m := v.pull(t, &levers[i], heat)
		switch {
		case m == nil, !v.off && m.good < before-1e-9: // it would make it worse
		case m.good >= 0.5 || v.off:
			return m
		case best == nil || m.good > best.good+0.01 || best.good < 0.01 && m.gain > best.gain:
			best = m
		}
	}
	if best == nil {
		best = bracketed // two beads count more than the computation
	}
	return best
}
