package thinsheet

import (
	"math"
	"sync/atomic"

	"brazebooth/internal/crew"
)

// Run is a rhythm that is computed in parts: Begin finds the range of on, Settle the cycle at the suggested
// setting, Off the range of off, Check the influence of the cells, and Rest all of these. To compare settings
// only Begin is needed, and Settle for one of them.
type Run struct {
	Times Times // Times.Work counts the parts so far

	r     *Rhythm
	stop  func() bool
	hot   *driver // the driver that found the longest on; nil if there is no rhythm
	from  *Sheet  // the sheet in the settled cycle
	count atomic.Int64
}

// Begin finds the first spot and the range of on. It must be called first, and once.
func (n *Run) Begin(r *Rhythm, stop func() bool) error {
	if err := r.check(); err != nil {
		return err
	}
	if r.Gap > 2*r.Sigma {
		n.Times.Reason = WideGap
		return nil
	}
	counted := *r
	counted.count = &n.count
	n.r, n.stop = &counted, stop
	defer n.counted()
	return n.begin()
}

// Found reports whether there is a cycle to settle on.
func (n *Run) Found() bool { return n.hot != nil }

func (n *Run) counted() { n.Times.Work = n.count.Load() }

// Rest computes the remaining parts.
func (n *Run) Rest() error {
	var wg crew.Crew
	wg.Go(n.Check)
	err := n.Settle()
	if err == nil {
		err = n.Off()
	}
	wg.Wait()
	n.counted()
	return err
}

// Check finds the relative error of the first spot, from cells of half the side.
func (n *Run) Check() {
	if n.r == nil || n.Times.FirstOn == 0 {
		return
	}
	if fine, _, _ := firstSpot(n.r, n.r.sized().Cell/2, n.stop); fine > 0 {
		n.Times.Grid = fine/n.Times.FirstOn - 1
	}
}

func (n *Run) begin() error {
	t, r := &n.Times, n.r
	on, first, err := firstSpot(r, r.Cell, n.stop)
	if err != nil {
		return err
	}
	t.FirstOn = on
	from, err := t.afterFirst(r, first, n.stop)
	if err != nil || from == nil {
		return err
	}
	hot := newDriver(r, from, n.stop)
	hot.dt = t.pace(hot.dt)
	if err := t.onRange(r, hot, n.stop); err != nil {
		return err
	}
	if r.FixedOn == 0 && t.Reason == "" && math.Sqrt(t.OnMin*t.OnMax) < r.Shortest {
		t.Reason = TooHot
	}
	if t.Reason != "" && r.FixedOn == 0 {
		return nil
	}
	if t.FirstOn == 0 || t.FirstOn > t.OnMax {
		t.Reason = TwoSettings
	}
	n.hot = hot
	return nil
}

// set is the suggested on or the given one, s.
func (n *Run) set() float64 {
	if n.r.FixedOn > 0 {
		return n.r.FixedOn
	}
	return math.Sqrt(n.Times.OnMin * n.Times.OnMax)
}

// Settle finds the cycle at the suggested setting, if there is one.
func (n *Run) Settle() (err error) {
	if n.hot == nil {
		return nil
	}
	defer n.counted()
	t, r := &n.Times, n.r
	mid := newDriver(r, n.hot.s, n.stop)
	mid.record, mid.dt = true, n.hot.dt
	n.hot, n.from = nil, mid.s
	if t.OnOff, err = mid.periodic(mid.timed(n.set()), mid.centre(r.halfFrozen()), freezeCold); err != nil {
		return err
	}
	t.settled = t.settled && max(t.OnOff.DriftOn, t.OnOff.DriftOff) <= settledDrift
	t.Trace = mid.trace
	t.Residual = mid.s.Residual()
	return nil
}

// Off finds the range of off at the settled cycle.
func (n *Run) Off() error {
	if n.from == nil {
		return nil
	}
	defer n.counted()
	t := &n.Times
	err := t.offRange(n.r, n.from, n.set(), n.stop)
	n.from = nil
	switch {
	case n.r.FixedOff == 0 && t.OnOff.Off < n.r.LeastOff:
		t.Reason, t.OnOff = NoPause, OnOff{}
	case !t.settled && (t.Reason == "" || t.Reason == TwoSettings):
		t.Reason = NoCycle
	}
	return err
}
