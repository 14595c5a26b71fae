package thinsheet

import (
	"brazebooth/internal/crew"
	"errors"
	"math"
	"sync/atomic"
)

// Reason says what ends a range or why there is none.
type Reason string

// The reasons.
const (
	EdgeCold     Reason = "edge-cold"      // shorter leaves a root edge not wetted through
	JointCold    Reason = "joint-cold"     // shorter leaves the joint's line not wetted
	EdgeMelts    Reason = "edge-melts"     // longer melts the base metal at the root edge
	Patience     Reason = "patience"       // longer is no rhythm; nothing melts
	CentreLiquid Reason = "centre-liquid"  // shorter strikes into a puddle that is all liquid
	Frozen       Reason = "frozen"         // longer lets the puddle freeze
	NextCold     Reason = "next-cold"      // longer, and the next spot no longer wets both edges
	StepFill     Reason = "fill"           // further apart leaves the gap unfilled
	StepOverlap  Reason = "overlap"        // further apart does not overlap the puddle
	NeverWets    Reason = "never-wets"     // the edges never reach the filler's liquidus
	MeltsFirst   Reason = "melts-first"    // the edge melts before its back face is wet
	TooHot       Reason = "too-hot"        // under the shortest on time already
	TwoSettings  Reason = "two-settings"   // a first spot needs longer than a warm one bears
	WideGap      Reason = "wide-gap"       // the arc finds little sheet to land on
	TooThick     Reason = "too-thick"      // heat flows in three dimensions
	NoCycle      Reason = "does-not-cycle" // the cycle did not repeat within its limit
)

// Rhythm is what a timed arc needs: a joint, the metal a step must lay and the limits of a hand.
type Rhythm struct {
	Input
	Section   float64 // metal that a millimetre of seam takes, mm2; 0: nothing to fill
	Surface   bool    // wetting its face is enough (lap, tee, overlay); else the root edges must be wet through
	MeltDepth float64 // share of the base metal that may be molten at the root edge
	LongestOn float64 // s
	Longest   float64 // off, s
	Shortest  float64 // on, s
	Step      float64 // macro step while the arc burns, s; 0 means 8 ms, longer for slow cycles
	OnOnly    bool    // find only the range of on
	FixedOn   float64 // s; 0: found
	FixedOff  float64
	FixedStep float64 // mm
}

// OnOff is one repeating cycle.
type OnOff struct {
	On, Off, Step     float64 // s, s, mm
	StepBy            Reason
	Puddle            float64 // mm, at the end of on
	StepMost          float64 // mm, what fill and overlap allow
	Wet               float64 // K, how far over its limit the joint is wet at the end of on
	EdgePeak          float64 // C, of the cooler root edge at the end of on
	HotPeak           float64 // C, of the hotter one
	Cycles            int
	DriftOn, DriftOff float64 // relative changes from the cycle before
	Converged         bool
	Reached           bool // on was ended by its criterion, not by its limit
	Cooled            bool // the same of off
}

// Point is one moment of a trace.
type Point struct {
	Time   float64 // s
	On     bool
	Edge   float64 // C, cooler root edge, mean through the sheet
	Centre float64 // C, on the joint's line
	Back   float64 // C, back face at the root edge
}

// Times are the on and off times of a joint with what ends each of them.
type Times struct {
	Reason   Reason  // why there is no rhythm; empty where there is
	FirstOn  float64 // s, a cold first spot until both root edges are wetted through; 0: never
	OnMin    float64 // s, the same in the repeating cycle
	OnMax    float64
	OnMaxBy  Reason
	OffMin   float64
	OffMax   float64
	OffMaxBy Reason
	OnOff    OnOff // at the suggested setting
	Trace    []Point
	Residual float64 // of the energy balance in the suggested cycle's run, relative
	settled  bool    // every cycle repeated
	Work     int64   // cells times stages of all runs: what they took, the same on every machine
	Grid     float64 // relative difference of FirstOn on cells of half the side
}

// ErrStopped is returned when the caller asked to stop.
var ErrStopped = errors.New("stopped")

// Bridge finds the times. Each end of a range is one run until its cycle repeats; nothing is searched. stop and
// progress may be nil; stop is asked from several goroutines at once, progress is called from one.
func Bridge(r *Rhythm, stop func() bool, progress func(float64)) (Times, error) {
	var t Times
	if err := r.check(); err != nil {
		return t, err
	}
	if r.Gap > 2*r.Sigma {
		return Times{Reason: WideGap}, nil
	}
	tell := func(done float64) {
		if progress != nil {
			progress(done)
		}
	}
	counted := *r
	counted.count = new(atomic.Int64)
	r = &counted
	var wg crew.Crew
	fine := 0.0
	if !r.OnOnly {
		wg.Go(func() { fine, _, _ = firstSpot(r, r.sized().Cell/2, stop) })
	}
	err := t.find(r, stop, tell)
	wg.Wait()
	if t.FirstOn > 0 && fine > 0 {
		t.Grid = fine/t.FirstOn - 1
	}
	t.Work = r.count.Load()
	return t, err
}

// firstSpot is the time that a cold spot takes until both root edges are wetted through, 0 where they never are, and
// the driver that stands there.
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

func (t *Times) find(r *Rhythm, stop func() bool, tell func(float64)) error {
	on, first, err := firstSpot(r, r.Cell, stop)
	if err != nil {
		return err
	}
	t.FirstOn = on
	tell(0.1)
	from, err := t.afterFirst(r, first, stop)
	if err != nil || from == nil {
		return err
	}
	hot := newDriver(r, from, stop)
	hot.dt = t.pace(hot.dt)
	if err := t.onRange(r, hot, stop); err != nil {
		return err
	}
	tell(0.35)
	set := math.Sqrt(t.OnMin * t.OnMax)
	if r.FixedOn > 0 {
		set = r.FixedOn
	} else if t.Reason == "" && set < r.Shortest {
		t.Reason = TooHot
	}
	if t.Reason != "" && r.FixedOn == 0 || r.OnOnly {
		return nil
	}
	if t.FirstOn == 0 || t.FirstOn > t.OnMax {
		t.Reason = TwoSettings
	}
	mid := newDriver(r, hot.s, stop)
	mid.record, mid.dt = true, hot.dt
	if t.OnOff, err = mid.periodic(mid.timed(set), mid.centre(r.halfFrozen()), freezeCold); err != nil {
		return err
	}
	t.settled = t.settled && max(t.OnOff.DriftOn, t.OnOff.DriftOff) <= settledDrift
	t.Trace = mid.trace
	tell(0.6)
	err = t.offRange(r, mid.s, set, stop)
	t.Residual = mid.s.Residual()
	if !t.settled && t.Reason == "" {
		t.Reason = NoCycle
	}
	tell(1)
	return err
}

// onRange runs the two ends of on side by side: cycles whose on ends as soon as the joint is wet, and cycles whose on
// ends when the edge melts.
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
	return nil
}

// pace is the macro step of the cycles, s: slow cycles bear a longer one.
func (t *Times) pace(dt float64) float64 { return max(dt, min(t.FirstOn/40, slowestStep)) }

const slowestStep = 0.02 // s

// settledDrift is how much a cycle may still change from the one before when its limit of cycles ends the run: little
// beside the intervals of its figures.
const settledDrift = 0.05

// afterFirst is the sheet that the second spot finds: nil where no spot will ever wet. In a quick metal the whole
// sheet must warm before the cycle repeats, so there it starts as a steady arc of the mean power leaves it.
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

// failed says why a spot was not wet through: too cold, or molten before it could be.
func (d *driver) failed() Reason {
	switch {
	case d.molten == 0:
		return NeverWets
	case d.molten < d.r.Shortest:
		return TooHot
	}
	return MeltsFirst
}

// offRange runs the two ends of off side by side.
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
		t.OffMax, t.OffMaxBy = max(t.OnOff.Off, t.OffMin), NextCold
	case !most.Cooled:
		t.OffMaxBy = Patience
	}
	return errors.Join(errs[:]...)
}

// halfFrozen is the middle of the filler's melting range, C.
func (r *Rhythm) halfFrozen() float64 { return (r.Filler.Solidus + r.Filler.Liquidus) / 2 }
