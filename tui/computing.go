package tui

import (
	"context"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/calc/correct"
	"brazebooth/calc/practice"
)

// computing finds what stands beside a card and takes long. The tests, which ask for the same answers many times, put a
// memory in front of each.
type computing struct {
	page   func(context.Context, *advice.Entry, *calc.Card) (advice.Page, error)
	next   func(context.Context, []correct.Try) (advice.Page, error)
	drills func(context.Context, *practice.Booth, practiceAsk) (practiceAnswer, error)
	spans  func(context.Context, *calc.Card) spans
}

// whenAsked computes each answer whenever it is asked for.
func whenAsked() computing {
	return computing{
		page: func(ctx context.Context, e *advice.Entry, c *calc.Card) (advice.Page, error) { return e.Answer(ctx, c) },
		next: correct.Next, drills: drill, spans: spansOf,
	}
}
