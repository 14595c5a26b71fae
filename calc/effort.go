package calc

import (
	"context"
	"sync/atomic"

	"brazebooth/calc/thinsheet"
)

// mostWork is what one answer may take, in the effort's units: a count and not a clock, so that a job has the same answer on
// every machine and under any load. A core that has nothing else to do takes 38 ns for each of steel, so that this is 1.6 s;
// the maps of usual jobs take two to fifteen million, those of a thin sheet on a plate forty.
const mostWork = 42e6

// effort is what one answer takes: who waits for it, and how much was computed for it so far. Counted and not timed, so that
// it is the same on every machine. nil is an answer that nobody gives up and nobody counts.
type effort struct {
	ctx            context.Context
	work, sections atomic.Int64 // see section.Result.Work
}

// over is the context's error once nobody waits any more.
func (e *effort) over() error {
	if e == nil {
		return nil
	}
	return e.ctx.Err()
}

func (e *effort) add(work int) {
	if e != nil {
		e.work.Add(int64(work))
		e.sections.Add(1)
	}
}

// planeWork is how many cells of the sheet's plane are moved on while the section moves one of its columns.
const planeWork = 6

// bridge follows a beat in the sheet's plane.
func (e *effort) bridge(in *thinsheet.Rhythm, progress func(float64)) (thinsheet.Times, error) {
	t, err := thinsheet.Bridge(in, func() bool { return e.over() != nil }, progress)
	e.work.Add(t.Work / planeWork)
	return t, err
}

// each is the work of one section so far, on average.
func (e *effort) each() int64 { return e.work.Load() / max(1, e.sections.Load()) }
