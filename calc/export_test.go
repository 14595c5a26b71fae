package calc

import (
	"context"

	"brazebooth/calc/effort"
)

// For tests of package calc_test.

// AllRemedies tries every remedy, however much work it takes.
func AllRemedies(ctx context.Context, job Job, card *Card) ([]Remedy, error) {
	e := effort.New(ctx)
	e.Take(-1e12)
	return remedies(e, 0, job, card)
}

// Leaving is a context whose caller leaves at the look At.
type Leaving = leaving

// TimedAnew and WindowAnew are SolveTimed and WindowOf without the kept answers.
func TimedAnew(ctx context.Context, job Job) (Timed, error) { return solveTimed(ctx, job, untold) }

func WindowAnew(ctx context.Context, job Job) (Window, error) {
	return window(ctx, job, FullWindow, untold)
}

// ForgetSections makes every section be computed again.
func ForgetSections() { cachedSections.forget() }

// untold is the progress of a caller who does not want to know.
func untold(float64) {}
