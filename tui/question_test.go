package tui

import (
	"slices"
	"testing"

	"brazebooth/internal/choice"
)

// Every choice with a question is asked once, on the path or on the card; what stops a job is a list of marks. A choice
// without a question is a setting of the card, or is typed where a page asks for it.
func TestEveryChoiceIsAsked(t *testing.T) {
	asked := append(chipChoices(), otherChoices()...)
	for _, c := range choice.All() {
		n := 0
		for _, a := range asked {
			if a == c {
				n++
			}
		}
		if want := c.Ask != "" && c.Name != "hazard"; want && n != 1 || n > 1 {
			t.Errorf("%s is asked %d times", c.Name, n)
		}
	}
	s := toCard(t, 80, 24)
	for _, c := range choice.Settings() {
		onCard := slices.ContainsFunc(s.root().card.rows, func(r cardRow) bool { return r.name == c.Figure })
		timed := c.Name == "arc-on" || c.Name == "arc-off" || c.Name == "spot-step"
		if onCard == timed {
			t.Errorf("%s is on the card of a steady arc: %v", c.Name, onCard)
		}
	}
}
