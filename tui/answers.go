package tui

import (
	"context"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/calc/correct"
	"brazebooth/calc/practice"
	"brazebooth/internal/report"
)

// answers are the pages of the present card, each computed when it is first looked at.
type answers struct {
	parts map[string]pageAnswer
	whole []report.Block
}

type pageAnswer struct {
	part advice.Page
	err  error
}

func (s *session) part(name string) (advice.Page, error) {
	if a, ok := s.pages.parts[name]; ok {
		return a.part, a.err
	}
	page, ok := advice.EntryByName(name)
	if !ok || page.Of == nil {
		return advice.Page{}, nil
	}
	p, err := s.page(context.Background(), page, &s.card)
	if s.pages.parts == nil {
		s.pages.parts = map[string]pageAnswer{}
	}
	s.pages.parts[name] = pageAnswer{p, err}
	return p, err
}

// sheet is the present card with every page beside it.
func (s *session) sheet() ([]report.Block, error) {
	if s.pages.whole == nil {
		list, err := advice.Pages(context.Background(), &s.card, nil)
		if err != nil {
			return nil, err
		}
		s.pages.whole = report.Whole(&s.card, list)
	}
	return s.pages.whole, nil
}

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
