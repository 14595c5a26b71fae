package thinsheet

import (
	"errors"
	"math"
	"sync"
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
	Surface   bool    // wetting its face will do (lap, tee, overlay); else the root edges must be wet through
	MeltDepth float64 // share of the base metal that may be molten at the root edge
	LongestOn float64 // s
	Longest   float64 // off, s
	Shortest  float64 // on, s
	Step      float64 // macro step while the arc burns, s; 0 means 8 ms, longer for a slow beat
	OnOnly    bool    // find the range of on alone
	FixedOn   float64 // s; 0: found
	FixedOff  float64
	FixedStep float64 // mm
}

// Beat is one repeating cycle.
type Beat struct {
	On, Off, Step float64 // s, s, mm
	StepBy        Reason
	Puddle        float64 // mm, at the end of on
	EdgePeak      float64 // C, of the cooler root edge at the end of on
	HotPeak       float64 // C, of the hotter one
	Cycles        int
	Converged     bool
	Reached       bool // on was ended by its criterion, not by its limit
	Cooled        bool // off was
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
	FirstOn  float64 // s, a cold first spot until both root edges are wetted through
	OnMin    float64
	OnMax    float64
	OnMaxBy  Reason
	OffMin   float64
	OffMax   float64
	OffMaxBy Reason
	Beat     Beat // at the suggested setting
	Trace    []Point
	Residual float64 // of the energy balance, relative, the worst run's
	Grid     float64 // relative difference of FirstOn on cells of half the side
}

// ErrStopped is returned when the caller asked to stop.
var ErrStopped = errors.New("stopped")

// Bridge finds the times. Each end of a range is one run until its cycle repeats; nothing is searched. stop
// and progress may be nil; progress hears from one goroutine.
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
	var wg sync.WaitGroup
	fine := 0.0
	if !r.OnOnly {
		wg.Go(func() { fine, _, _ = firstSpot(r, r.sized().Cell/2, stop) })
	}
	err := t.find(r, stop, tell)
	wg.Wait()
	if t.FirstOn > 0 && fine > 0 {
		t.Grid = fine/t.FirstOn - 1
	}
	return t, err
}

// firstSpot is the time that a cold spot takes until both root edges are wetted through, 0 where they never
// are, and the driver that stands there.
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
	t.FirstOn, t.OnMin = on, on
	tell(0.1)
	from, err := t.afterFirst(r, first, stop)
	if err != nil || from == nil {
		return err
	}
	hot := newDriver(r, from, stop)
	hot.dt = t.pace(hot.dt)
	most, err := hot.periodic(hot.melts, hot.centre(r.halfFrozen()), freezeCold)
	if err != nil {
		return err
	}
	t.OnMax, t.OnMaxBy = most.On, EdgeMelts
	if !most.Reached {
		t.OnMaxBy = Patience
	}
	tell(0.35)
	if t.OnMax < r.Shortest {
		if t.Reason = TooHot; r.FixedOn == 0 {
			return nil
		}
	}
	if t.FirstOn == 0 || t.FirstOn > t.OnMax {
		low := newDriver(r, hot.s.Clone(), stop)
		low.dt = hot.dt
		least, err := low.periodic(low.wetThrough, low.centre(r.halfFrozen()), freezeCold)
		if err != nil {
			return err
		}
		t.OnMin = least.On
		switch {
		case !least.Reached:
			t.Reason = NeverWets
			return nil
		case least.On > t.OnMax:
			t.Reason = MeltsFirst
			return nil
		}
		if t.Reason == "" {
			t.Reason = TwoSettings
		}
	}
	if r.OnOnly {
		return nil
	}
	set := math.Sqrt(t.OnMin * t.OnMax)
	if r.FixedOn > 0 {
		set = r.FixedOn
	}
	mid := newDriver(r, hot.s, stop)
	mid.record, mid.dt = true, hot.dt
	if t.Beat, err = mid.periodic(mid.timed(set), mid.centre(r.halfFrozen()), freezeCold); err != nil {
		return err
	}
	t.Trace = mid.trace
	tell(0.6)
	err = t.offRange(r, mid.s, set, stop)
	t.Residual = mid.s.Residual()
	tell(1)
	return err
}

// pace is the macro step of the cycles: a slow beat bears a longer one.
func (t *Times) pace(dt float64) float64 { return max(dt, min(t.FirstOn/40, slowestStep)) }

const slowestStep = 0.02 // s

// afterFirst is the sheet that the second spot finds: nil where no spot will ever wet. In a quick metal the
// whole sheet must warm before the cycle repeats, so that it starts as a steady arc of the mean power
// leaves it.
func (t *Times) afterFirst(r *Rhythm, first *driver, stop func() bool) (*Sheet, error) {
	if !r.quick() {
		if t.FirstOn == 0 {
			t.Reason = NeverWets
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
		t.Reason = NeverWets
		return nil, err
	}
	return s, err
}

// offRange runs the two ends of off side by side.
func (t *Times) offRange(r *Rhythm, from *Sheet, on float64, stop func() bool) error {
	var least, most Beat
	var errs [2]error
	same := *r
	same.FixedStep = t.Beat.Step // the hand keeps its step
	var wg sync.WaitGroup
	for i, end := range [...]struct {
		to   *Beat
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
	if most.EdgePeak < r.Filler.Liquidus {
		t.OffMax, t.OffMaxBy = t.Beat.Off, NextCold
	}
	if !t.Beat.Converged && t.Reason == "" {
		t.Reason = NoCycle
	}
	return errors.Join(errs[:]...)
}

// halfFrozen is where half of the filler's range is behind.
func (r *Rhythm) halfFrozen() float64 { return (r.Filler.Solidus + r.Filler.Liquidus) / 2 }
