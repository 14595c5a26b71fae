package calc

import "context"

// What tests from outside look into.

// AllRemedies tries everything, however long it takes.
func AllRemedies(ctx context.Context, job Job, card *Card) ([]Remedy, error) {
	e := &effort{ctx: ctx}
	e.work.Store(-1e12)
	return remedies(e, 0, job, card)
}

// Leaving is a context whose caller leaves at the look At.
type Leaving = leaving

// TimedAnew and WindowAnew compute what SolveTimed and WindowOf may have kept.
func TimedAnew(ctx context.Context, job Job) (Timed, error) { return solveTimed(ctx, job, nil) }

func WindowAnew(ctx context.Context, job Job) (Window, error) {
	return window(ctx, job, FullWindow, nil)
}

// ForgetSections makes every section be computed again.
func ForgetSections() { keptSections.forget() }
