package linear

import (
	"context"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

var knownCards deep.Known[calc.Job, calc.Card]

func TestMain(m *testing.M) {
	compute := answer
	answer = func(ctx context.Context, job calc.Job, progress func(float64)) (calc.Card, error) {
		if ctx.Err() != nil { // nobody waits for the answer any more
			return compute(ctx, job, progress)
		}
		return knownCards.Of(job, func() (calc.Card, error) { return compute(context.WithoutCancel(ctx), job, nil) })
	}
	deep.Main(m, 25)
}
