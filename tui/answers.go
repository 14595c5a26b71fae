package tui

import (
	"context"

	"brazebooth/calc"
)

// answers are the pages of the present card, each computed when it is first looked at.
type answers struct {
	parts map[string]pageAnswer
	whole []calc.Part
	check []calc.Check
}

type pageAnswer struct {
	part calc.Part
	err  error
}

// part is a page of the present card.
func (s *session) part(name string) (calc.Part, error) {
	if a, ok := s.pages.parts[name]; ok {
		return a.part, a.err
	}
	page, ok := calc.PageByName(name)
	if !ok || page.Of == nil {
		return calc.Part{}, nil
	}
	p, err := page.Answer(context.Background(), &s.card)
	if s.pages.parts == nil {
		s.pages.parts = map[string]pageAnswer{}
	}
	s.pages.parts[name] = pageAnswer{p, err}
	return p, err
}

// sheet is every page of the present card.
func (s *session) sheet() ([]calc.Part, error) {
	if s.pages.whole == nil {
		list, err := calc.Sheet(context.Background(), &s.card, nil)
		if err != nil {
			return nil, err
		}
		s.pages.whole = list
	}
	return s.pages.whole, nil
}

// checks is what the present card assumes, most telling first.
func (s *session) checks() []calc.Check {
	if s.pages.check == nil {
		s.pages.check = calc.CheckFirst(&s.card)
	}
	return s.pages.check
}
