package advice

import (
	"brazebooth/calc"
	"testing"
)

func pageOf(t *testing.T, of func(*calc.Card) (Page, error), j calc.Job) *Page {
	t.Helper()
	p, err := of(card(t, j))
	if err != nil {
		t.Fatalf("%+v: %v", j, err)
	}
	return &p
}

func value(t *testing.T, p *Page, name string) calc.Figure {
	t.Helper()
	f, ok := p.Figure(name)
	if !ok {
		t.Fatalf("%s has no %s", p.Name, name)
	}
	return f
}

func card(t *testing.T, j calc.Job) *calc.Card {
	t.Helper()
	c, err := calc.Solve(j)
	if err != nil {
		t.Fatalf("%+v: %v", j, err)
	}
	return &c
}

// waited is a page that takes long as one of a card alone.
func waited(t *testing.T, of PageOf) func(*calc.Card) (Page, error) {
	return func(c *calc.Card) (Page, error) { return of(t.Context(), c) }
}
