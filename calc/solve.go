package calc

// Solve computes the card for a job. It is pure and never panics: what is missing is assumed and
// marked so; a job that cannot be computed gives a *FieldError.
func Solve(job Job) (Card, error) {
	panic("being written")
}
