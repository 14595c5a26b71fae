package calc

import "context"

// Answer is the card of a job: by Solve, or by Gap where the arc is timed, which takes up to seconds and tells progress,
// from 0 to 1, if that is not nil. Errors as theirs, and the context's once that is cancelled.
func Answer(ctx context.Context, job Job, progress func(done float64)) (Card, error) {
	if job.Mode != "timed" {
		return SolveContext(ctx, job)
	}
	s, err := SolveTimed(ctx, job, progress)
	return s.Card, err
}
