package effort

import (
	"context"
	"sync/atomic"

	"brazebooth/calc/thinsheet"
)

// Most is what one answer may take, in units: columns of the cross-section that are solved.
const Most = 30e6

// Account counts the work of one answer, and has the context of the caller who waits for it. Of a nil Account only Over
// and AddSection may be called: it is never cancelled and counts nothing.
type Account struct {
	ctx            context.Context
	work, sections atomic.Int64
}

// New is the account of an answer for a caller with this context.
func New(ctx context.Context) *Account { return &Account{ctx: ctx} }

// Context is the caller's.
func (e *Account) Context() context.Context { return e.ctx }

// Over is the context's error once the caller has left.
func (e *Account) Over() error {
	if e == nil {
		return nil
	}
	return e.ctx.Err()
}

// Work is the number of units so far.
func (e *Account) Work() int64 { return e.work.Load() }

// Take adds units that were counted elsewhere.
func (e *Account) Take(units int64) { e.work.Add(units) }

// AddSection counts a cross-section by its section.Result.Work.
func (e *Account) AddSection(work int) {
	if e != nil {
		e.work.Add(int64(work))
		e.sections.Add(1)
	}
}

// PerSection is the work of one section so far, on average.
func (e *Account) PerSection() int64 { return e.work.Load() / max(1, e.Sections()) }

// Sections is the number of cross-sections so far.
func (e *Account) Sections() int64 { return e.sections.Load() }

// Branch is a second account that begins with the work so far, for a computation that runs in parallel: its work does
// not end the other one. When it is done, Take its additional work.
func (e *Account) Branch() *Account {
	own := New(e.ctx)
	own.work.Store(e.Work())
	return own
}

// planeWork is how many cells of the sheet's plane take as long as one column of the section.
const planeWork = 8

// OfPlane converts a thinsheet.Times.Work to units.
func OfPlane(work int64) int64 { return work / planeWork }

// Plane runs a step of a timed arc in the sheet's plane, in one of the limiter's places, and counts it.
func (e *Account) Plane(n *thinsheet.Run, step func(*thinsheet.Run) error) error {
	if err := Acquire(e.ctx); err != nil {
		return err
	}
	defer Release()
	before := n.Times.Work
	err := step(n)
	e.Take(OfPlane(n.Times.Work - before))
	if over := e.Over(); over != nil {
		return over
	}
	return err
}
