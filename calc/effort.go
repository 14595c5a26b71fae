package calc

import (
	"context"
	"runtime"
	"sync"
	"sync/atomic"

	"brazebooth/calc/thinsheet"
)

// mostWork is what one answer may take, in units of effort: a count, not a time, so that a job has the same answer on
// every machine and under any load. An idle core takes 54 ns a unit with steel, so this is 1.6 s. Windows of usual
// jobs take one to eight million; those of a thin sheet on a plate up to thirty.
const mostWork = 30e6

// effort is what one answer takes: who waits for it, and how much was computed for it so far, counted and not timed.
// A nil effort is never given up and not counted.
type effort struct {
	ctx            context.Context
	work, sections atomic.Int64 // see section.Result.Work
	trial          atomic.Bool  // only whether a changed job is good is asked, not what else a card says
}

// over is the context's error once nobody waits any more.
func (e *effort) over() error {
	if e == nil {
		return nil
	}
	return e.ctx.Err()
}

// brief reports whether only the verdict of a changed job is asked.
func (e *effort) brief() bool { return e != nil && e.trial.Load() }

func (e *effort) add(work int) {
	if e != nil {
		e.work.Add(int64(work))
		e.sections.Add(1)
	}
}

// planeWork is how many cells of the sheet's plane take as long as one column of the section.
const planeWork = 8

// plane takes a step of a timed arc's run in the sheet's plane, in one of the limiter's places.
func (e *effort) plane(n *thinsheet.Run, step func(*thinsheet.Run) error) error {
	if err := acquire(e.ctx); err != nil {
		return err
	}
	defer release()
	before := n.Times.Work
	err := step(n)
	e.work.Add((n.Times.Work - before) / planeWork)
	if over := e.over(); over != nil {
		return over
	}
	return err
}

// each is the work of one section so far, on average.
func (e *effort) each() int64 { return e.work.Load() / max(1, e.sections.Load()) }

// limiter lets as many rows of windows be computed at once as there are processors: all viewers share what one has.
var limiter = make(chan struct{}, runtime.GOMAXPROCS(0))

var spared sync.Once

// Spare keeps windows and timed arcs off one processor for good, where there are several: a server has keys to answer
// meanwhile, a single terminal has not.
func Spare() {
	spared.Do(func() {
		if cap(limiter) > 1 {
			limiter <- struct{}{}
		}
	})
}

// acquire waits for one of the limiter's places, or for the caller to give up.
func acquire(ctx context.Context) error {
	select {
	case limiter <- struct{}{}:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

// limited does work in one of the limiter's places and reports whether it got one.
func limited(ctx context.Context, work func()) bool {
	if acquire(ctx) != nil {
		return false
	}
	defer release()
	work()
	return true
}

func release() { <-limiter }
