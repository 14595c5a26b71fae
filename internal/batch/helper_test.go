package batch

import (
	"context"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/mistake"
)

func testOptions(f Format) Options {
	return Options{Format: f, Workers: 3, Version: "test",
		Solve: func(_ context.Context, job calc.Job, _ string) (calc.Card, error) { return calc.Solve(job) },
		Explain: func(err error) (string, string) {
			if m := mistake.Of(err); m != nil {
				return m.Error(), m.Hint
			}
			return err.Error(), "ask another"
		}}
}

// answers runs a batch and returns its output.
func answers(t *testing.T, text string, o Options) (string, Tally, error) {
	t.Helper()
	var out strings.Builder
	tally, err := Run(context.Background(), strings.NewReader(text), &out, o)
	return out.String(), tally, err
}
