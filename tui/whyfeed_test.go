package tui

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// The why of wire feed and travel says what they come to together and how near each limit is, by the card's own figures.
func TestWhyOfTheFeed(t *testing.T) {
	for _, name := range []string{"wire_feed", "travel"} {
		s := openAt(t, 80, 50, Options{Job: calc.Job{Metal: "galvanized", Gauge: 20}})
		s.root().card.at = slices.IndexFunc(s.root().card.rows, func(r cardRow) bool { return r.name == name })
		s.press("enter")
		c := &s.root().session.card
		amps, _ := c.Figure("current")
		shown := report.ValueOf(&amps, quantity.Metric)
		s.has("wire draws "+shown.String(), "into the sheet", "The limits, nearest first")
		last := -1.0
		for _, l := range strings.Split(s.text(), "\n") {
			_, after, ok := strings.Cut(l, "met, ")
			if !ok {
				continue
			}
			var margin float64
			if _, err := fmt.Sscanf(after, "%f %%", &margin); err != nil || margin < last {
				t.Errorf("%s: %q after %g", name, l, last)
			}
			last = margin
		}
		if last < 0 {
			t.Errorf("no limit stands there:\n%s", s.text())
		}
	}
	s := openAt(t, 80, 50, Options{Job: calc.Job{Metal: "galvanized", Gauge: 20}})
	s.press("right", "enter")
	s.hasNot("The limits")
}
