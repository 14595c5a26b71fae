package tui

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tui/canvas"
)

// The reasons for wire feed and travel say which heat they give together and how near each edge is, with the card's own
// figures.
func TestWhyOfTheFeed(t *testing.T) {
	for _, name := range []string{"wire_feed", "travel"} {
		s := openAt(t, 80, 50, Options{Opening: calc.Job{Metal: "galvanized", Gauge: 20}})
		s.root().card.at = slices.IndexFunc(s.root().card.rows, func(r cardRow) bool { return r.name == name })
		s.press("enter")
		c := &s.root().session.card
		amps, _ := c.Figure("current")
		shown := report.ValueOf(&amps, quantity.Metric)
		for _, want := range []string{"wire draws " + shown.String(), "into the sheet", "The edges, nearest first"} {
			if !strings.Contains(flat(s.text()), want) {
				t.Errorf("%s: no %q:\n%s", name, want, s.text())
			}
		}
		last := -1.0
		for _, l := range strings.Split(s.text(), "\n") {
			words := strings.Fields(l)
			if len(words) < 3 || words[0] != canvas.Good.Sign() || words[1] == canvas.Good.Word() {
				continue
			}
			var margin float64
			if _, err := fmt.Sscanf(words[len(words)-2], "%f", &margin); err != nil || margin < last {
				t.Errorf("%s: %q after %g", name, l, last)
			}
			last = margin
		}
		if last < 0 {
			t.Errorf("no limit stands there:\n%s", s.text())
		}
	}
	s := openAt(t, 80, 50, Options{Opening: calc.Job{Metal: "galvanized", Gauge: 20}})
	s.press("right", "enter")
	s.hasNot("The limits")
}
