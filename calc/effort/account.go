package effort

import (
	"context"
	"sync/atomic"

	"brazebooth/calc/thinsheet"
)

// Most is what one answer may take, in units: columns of the cross-section that are solved.
const Most = 30e6

// Account is what one answer takes: who waits for it, and how much was computed for it so far. A nil Account is never
// given up and not counted.
type Account struct {
	ctx            context.Context
	work, sections atomic.Int64
}

// New is the account of an answer that a caller waits for.
func New(ctx context.Context) *Account { return &Account{ctx: ctx} }

// Context is the caller's.
func (e *Account) Context() context.Context { return e.ctx }

// Over is the context's error once nobody waits any more.
func (e *Account) Over() error {
	if e == nil {
		return nil
	}
	return e.ctx.Err()
}

// Work is how many units were taken so far.
func (e *Account) Work() int64 { return e.work.Load() }

// Take counts units that were taken elsewhere.
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

// Sections is how many cross-sections were solved.
func (e *Account) Sections() int64 { return e.sections.Load() }

// Branch is an account that begins with the work so far, for a computation whose work must not end another one that
// runs beside it. Take its Work beyond that when it is done.
func (e *Account) Branch() *Account {
	own := New(e.ctx)
	own.work.Store(e.Work())
	return own
}

// planeWork is how many cells of the sheet's plane take as long as one column of the section.
const planeWork = 8

// OfPlane is the units of a thinsheet.Times.Work.
func OfPlane(work int64) int64 { return work / planeWork }

// Plane takes a step of a timed arc's run in the sheet's plane, in one of the limiter's places.
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
