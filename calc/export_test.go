package calc

import (
	"context"

	"brazebooth/calc/effort"
)

// What tests from outside look into.

// AllRemedies tries everything, however long it takes.
func AllRemedies(ctx context.Context, job Job, card *Card) ([]Remedy, error) {
	e := effort.New(ctx)
	e.Take(-1e12)
	return remedies(e, 0, job, card)
}

// Leaving is a context whose caller leaves at the look At.
type Leaving = leaving

// TimedAnew and WindowAnew compute what SolveTimed and WindowOf may have kept.
func TimedAnew(ctx context.Context, job Job) (Timed, error) { return solveTimed(ctx, job, nil) }

func WindowAnew(ctx context.Context, job Job) (Window, error) {
	return window(ctx, job, FullWindow, nil)
}
