package correct

import (
	"context"
	"math"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/tables"
)

// move is a change that was looked at.
type move struct {
	lever *lever
	job   calc.Job
	good  float64
	gain  float64 // of the limit that the change is to widen, logarithmic

	then     *move   // the other of a timed arc's two times, where one alone is not enough
	together float64 // the chance with both
}

// choose finds the change for the likeliest cause: a setting, or where none is at fault or helps, the cure in words.
func (v *posterior) choose(ctx context.Context, t *Try, c *advice.Correction) error {
	before, err := v.good(ctx, &t.Job)
	if err != nil {
		return err
	}
	top := &c.Causes[0]
	if !v.off {
		c.GoodBefore, c.GoodAfter = 100*before, 100*before
	}
	if v.mended {
		return v.repairZinc(ctx, t, c)
	}
	best, err := v.remedy(ctx, t, top.ID, before)
	if err != nil {
		return err
	}
	if best == nil {
		v.noChange(top, c)
		return nil
	}
	if !v.off {
		c.GoodAfter = 100 * best.good
	}
	put(c, t, best)
	c.Why = v.why(top, c, best)
	return nil
}

// put writes a move into the correction as its change.
func put(c *advice.Correction, t *Try, m *move) {
	if m.lever == nil {
		c.Change = &advice.Change{What: "mode", FromMode: t.Job.Mode, ToMode: m.job.Mode}
		return
	}
	was := t.Job
	c.Change = &advice.Change{What: m.lever.what, From: m.lever.opt(&was).V, To: m.lever.opt(&m.job).V, Unit: m.lever.unit}
}

// remedy is the move against a cause, nil where no setting helps.
func (v *posterior) remedy(ctx context.Context, t *Try, cause string, before float64) (*move, error) {
	switch cause {
	case tables.CauseCold:
		return v.hunt(ctx, t, before, 1, leverStickOut, leverVolts, leverFeed, leverTravel)
	case tables.CauseHot:
		if v.off {
			return v.hunt(ctx, t, before, -1, leverTravel, leverVolts, leverFeed)
		}
		return v.hunt(ctx, t, before, -1, leverStickOut, leverVolts, leverFeed, leverTravel)
	case tables.CauseMelts:
		m, err := v.hunt(ctx, t, before, -1, leverTravel, leverFeed) // after a hole first faster travel or less wire
		if err != nil || v.off || t.Job.Mode == "timed" {
			return m, err
		}
		if hope, err := v.hope(ctx, t); err != nil || hope {
			return m, err
		}
		return v.pauses(t, m), nil
	case tables.CauseOnLong:
		return v.timedArc(ctx, t, before, -1, leverOn, leverOff)
	case tables.CauseOnShort:
		return v.timedArc(ctx, t, before, 1, leverOn, leverOff)
	case tables.CauseOffLong:
		return v.timedArc(ctx, t, before, 1, leverOff, leverOn)
	case tables.CauseOffShort:
		return v.timedArc(ctx, t, before, -1, leverOff, leverOn)
	}
	return v.treat(ctx, t, cause, before)
}

// hope reports whether a steady arc may be good somewhere between this travel and the fastest that a hand holds, or
// this feed and the least that burns steadily, or where a card would put both.
func (v *posterior) hope(ctx context.Context, t *Try) (bool, error) {
	fast, low := t.Job, t.Job
	_, high := travelEnds(&t.Job)
	fast.Travel = calc.Some(max(high, t.Job.Travel.V))
	least, _ := calc.SteadyFeeds(&t.Job)
	low.Feed = calc.Some(min(least, t.Job.Feed.V))
	for _, end := range [...]calc.Job{fast, low} {
		half := end
		half.Travel, half.Feed = calc.Some(math.Sqrt(end.Travel.V*t.Job.Travel.V)), calc.Some(math.Sqrt(end.Feed.V*t.Job.Feed.V))
		for _, j := range [...]calc.Job{end, half} {
			if g, err := v.good(ctx, &j); err != nil || g > hopeful {
				return g > hopeful, err
			}
		}
	}
	open := t.Job
	open.Feed, open.Volts, open.Travel = calc.Opt{}, calc.Opt{}, calc.Opt{}
	c, err := calc.SolveContext(ctx, open)
	if err := ctx.Err(); err != nil {
		return false, err
	}
	if err != nil || c.Warned("no-good-setting") {
		return false, nil // an error of the open job is none of the answer
	}
	j := calc.Laid(&c)
	g, err := v.good(ctx, &j)
	return g > hopeful, err
}

// hopeful is the chance of a good bead above which a steady arc is not given up.
const hopeful = 0.25

// pauses is a timed arc instead of a steady one, where the joint takes one; else the move that was found.
func (v *posterior) pauses(t *Try, found *move) *move {
	if t.Job.Joint == "overlay" || t.Job.Joint == "plug" {
		return found
	}
	j := t.Job
	j.Mode = "timed"
	j.Feed, j.Volts, j.Travel, j.Aim = calc.Opt{}, calc.Opt{}, calc.Opt{}, calc.Opt{} // the timed arc's own are suggested again
	return &move{job: j}
}

// hunt goes through the levers in the welder's order for the first whose smallest change more likely than not makes a
// good bead. Without one, it takes the change that makes it likeliest or that widens the limit most.
func (v *posterior) hunt(ctx context.Context, t *Try, before, heat float64, order ...int) (*move, error) {
	var bracketed *move
	for _, i := range order {
		sign := v.sense(t, &levers[i], heat)
		if _, known := v.opposite(t, &levers[i], sign); known && sign != 0 { // both sides of this one were seen
			m, err := v.pull(ctx, t, &levers[i], heat)
			if m != nil && (v.off || m.good >= before) || err != nil {
				return m, err
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
		m, err := v.pull(ctx, t, &levers[i], heat)
		if err != nil {
			return nil, err
		}
		switch {
		case m == nil, !v.off && m.good < before-1e-9: // it would make it worse
		case m.good >= 0.5 || v.off:
			return m, nil
		case best == nil || m.good > best.good+0.01 || best.good < 0.01 && m.gain > best.gain:
			best = m
		}
	}
	if best == nil {
		best = bracketed // what two beads showed goes before what is computed
	}
	return best, nil
}
