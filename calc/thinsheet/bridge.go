package thinsheet

import (
	"errors"
	"math"
	"slices"

	"brazebooth/internal/crew"
)

// firstSpot is the time that a cold spot takes to wet both root edges through, 0 if it never does, and the
// driver of that spot.
func firstSpot(r *Rhythm, cell float64, stop func() bool) (float64, *driver, error) {
	in := r.Input
	in.Cell = cell
	s, err := New(in)
	if err != nil {
		return 0, nil, err
	}
	d := newDriver(r, s, stop)
	on, reached, err := d.burn(d.wetThrough, r.LongestOn)
	if !reached {
		on = 0
	}
	return on, d, err
}

// onRange runs both ends of on in parallel: cycles whose on ends as soon as the joint is wet, and cycles whose
// on ends when the edge melts.
func (t *Times) onRange(r *Rhythm, hot *driver, stop func() bool) error {
	low := newDriver(r, hot.s.Clone(), stop)
	low.dt = hot.dt
	var least, most OnOff
	var errs [2]error
	var wg crew.Crew
	wg.Go(func() { least, errs[0] = low.periodic(low.wetThrough, low.centre(r.halfFrozen()), freezeCold) })
	most, errs[1] = hot.periodic(hot.melts, hot.centre(r.halfFrozen()), freezeCold)
	wg.Wait()
	if err := errors.Join(errs[:]...); err != nil {
		return err
	}
	t.OnMin, t.OnMax, t.OnMaxBy = least.On, most.On, EdgeMelts
	t.settled = least.DriftOn <= settledDrift && most.DriftOn <= settledDrift
	if !most.Reached {
		t.OnMaxBy = Patience
	}
	switch {
	case t.OnMax < r.Shortest:
		t.Reason = TooHot
	case !least.Reached && t.OnMaxBy == Patience:
		t.Reason = NeverWets
	case !least.Reached || t.OnMin > t.OnMax:
		t.Reason = MeltsFirst
	}
	t.shortenToStay(r, &least, &most)
	return nil
}

// shortenToStay shortens the longest on to the time at which the puddle begins to fall. If it falls even at the
// shortest, there is no rhythm.
func (t *Times) shortenToStay(r *Rhythm, least, most *OnOff) {
	t.Kept = 1
	if r.Stays == nil || t.Reason != "" {
		return
	}
	short, long := r.Stays(least), r.Stays(most)
	switch {
	case short <= 0:
		t.Reason, t.Kept = Falls, 0
	case long < 0:
		t.Kept = short / (short - long)
		t.OnMax = t.OnMin * math.Pow(t.OnMax/t.OnMin, t.Kept)
		t.OnMaxBy = Falls
		if t.OnMax < r.Shortest {
			t.Reason = TooHot
		}
	}
}

// pace is the macro step of the cycles, s: slow cycles allow a longer one.
func (t *Times) pace(dt float64) float64 { return max(dt, min(t.FirstOn/40, slowestStep)) }

const slowestStep = 0.02 // s

// settledDrift is the change between two cycles that is accepted when the limit of cycles ends a run: small
// compared with the intervals of its figures.
const settledDrift = 0.05

// afterFirst is the sheet that the second spot finds; nil if no spot will ever wet. In a metal that conducts
// heat quickly the whole sheet must warm up before the cycle repeats, so it starts as a steady arc of the mean
// power leaves it.
func (t *Times) afterFirst(r *Rhythm, first *driver, stop func() bool) (*Sheet, error) {
	if !r.quick() {
		if t.FirstOn == 0 {
			t.Reason = first.failed()
			return nil, nil
		}
		return first.warm(), nil
	}
	s, err := warmed(r, stop)
	if err != nil {
		return nil, err
	}
	d := newDriver(r, s.Clone(), stop)
	_, reached, err := d.burn(d.wetThrough, r.LongestOn)
	if !reached {
		t.Reason = d.failed()
		return nil, err
	}
	return s, err
}

// failed says why a spot was not wetted through: too cold, or molten before.
func (d *driver) failed() Reason {
	switch {
	case d.molten == 0:
		return NeverWets
	case d.molten < d.r.Shortest:
		return TooHot
	}
	return MeltsFirst
}

// offRange runs both ends of off in parallel.
func (t *Times) offRange(r *Rhythm, from *Sheet, on float64, stop func() bool) error {
	var least, most OnOff
	var errs [2]error
	same := *r
	same.FixedStep, same.FixedOff = t.OnOff.Step, 0 // the range of off must not depend on the off given
	var wg crew.Crew
	for i, end := range [...]struct {
		to   *OnOff
		cool float64
	}{{&least, r.Filler.Liquidus}, {&most, r.Filler.Solidus}} {
		s := from.Clone()
		wg.Go(func() {
			d := newDriver(&same, s, stop)
			d.dt = t.pace(d.dt)
			*end.to, errs[i] = d.periodic(d.timed(on), d.centre(end.cool), freezeWarm)
		})
	}
	wg.Wait()
	t.OffMin, t.OffMax, t.OffMaxBy = least.Off, most.Off, Frozen
	t.settled = t.settled && least.DriftOff <= settledDrift && most.DriftOff <= settledDrift
	switch {
	case most.Wet < 0 && r.FixedOn == 0:
		cycles := []OnOff{least, most}
		if r.FixedOff == 0 {
			cycles = []OnOff{least, t.OnOff, most}
		}
		t.OffMax, t.OffMaxBy = max(dryFrom(cycles), t.OffMin), NextCold
	case !most.Cooled:
		t.OffMaxBy = Patience
	}
	return errors.Join(errs[:]...)
}

// dryFrom is the off from which the next spot is not wetted through, read between cycles with ever longer offs, the
// last of which is dry.
func dryFrom(cycles []OnOff) float64 {
	dry := slices.IndexFunc(cycles, func(c OnOff) bool { return c.Wet < 0 })
	if dry == 0 {
		return cycles[0].Off
	}
	a, b := &cycles[dry-1], &cycles[dry]
	return a.Off + (b.Off-a.Off)*a.Wet/(a.Wet-b.Wet)
}

// halfFrozen is the middle of the filler's melting range, C.
func (r *Rhythm) halfFrozen() float64 { return (r.Filler.Solidus + r.Filler.Liquidus) / 2 }
