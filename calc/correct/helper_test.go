package correct

import (
	"testing"

	"brazebooth/calc"
	"brazebooth/tables"
)

func card(t *testing.T, j calc.Job) *calc.Card {
	t.Helper()
	c, err := calc.Solve(j)
	if err != nil {
		t.Fatalf("%+v: %v", j, err)
	}
	return &c
}

func figure(t *testing.T, s *calc.Timed, name string) calc.Figure {
	t.Helper()
	f, ok := calc.FigureNamed(s.Figures, name)
	if !ok {
		t.Fatalf("no figure %s", name)
	}
	return f
}

// causeByID returns the cause with exactly this id.
func causeByID(id string) (tables.Cause, bool) {
	for _, c := range tables.Causes {
		if c.ID == id {
			return c, true
		}
	}
	return tables.Cause{}, false
}
