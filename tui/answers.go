package tui

import (
	"context"

	"brazebooth/calc"
	"brazebooth/calc/advice"
)

// answers are the pages of the present card, each computed when it is first looked at.
type answers struct {
	parts map[string]pageAnswer
	whole []advice.Page
	check []calc.Check
}

type pageAnswer struct {
	part advice.Page
	err  error
}

// part is a page of the present card.
func (s *session) part(name string) (advice.Page, error) {
	if a, ok := s.pages.parts[name]; ok {
		return a.part, a.err
	}
	page, ok := advice.EntryByName(name)
	if !ok || page.Of == nil {
		return advice.Page{}, nil
	}
	p, err := page.Answer(context.Background(), &s.card)
	if s.pages.parts == nil {
		s.pages.parts = map[string]pageAnswer{}
	}
	s.pages.parts[name] = pageAnswer{p, err}
	return p, err
}

// sheet is every page of the present card.
func (s *session) sheet() ([]advice.Page, error) {
	if s.pages.whole == nil {
		list, err := advice.Pages(context.Background(), &s.card, nil)
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
