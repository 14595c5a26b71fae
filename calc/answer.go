package calc

import "context"

// Answer is the card of a job: by Solve, or by SolveTimed where the arc is timed. A timed arc takes up to seconds and
// tells progress, from 0 to 1, if that is not nil. Errors as theirs, and the context's once it is cancelled.
func Answer(ctx context.Context, job Job, progress func(done float64)) (Card, error) {
	if job.Mode != "timed" {
		return SolveContext(ctx, job)
	}
	s, err := SolveTimed(ctx, job, progress)
	return s.Card, err
}
