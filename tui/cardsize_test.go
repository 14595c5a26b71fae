package tui

import (
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/quantity"
)

// From 32 by 10 up, the card shows the verdict, all dials, a choice and a danger, at every size, for every verdict, in
// every system of units, and for every position of the cursor.
func TestCardAtEverySize(t *testing.T) {
	deep.Turn(t)
	jobs := []calc.Job{
		{Metal: "galvanized", Gauge: 18}, {Metal: "mild-steel", Gauge: 16, Feed: calc.Some(3.3), Travel: calc.Some(9)},
		{Metal: "mild-steel", Gauge: 20, Feed: calc.Some(9), Travel: calc.Some(9)}, {Metal: "brass", Gauge: 18}, gapped,
		{Metal: "silicon-bronze", Gauge: 18, Joint: "plug"},
	}
	shift := deep.Rand(t).IntN(3)
	for i, job := range jobs {
		s := openAt(t, 80, 24, Options{Opening: job, Units: []quantity.System{quantity.Metric, quantity.Inch,
			quantity.Both}[i%3]})
		m := s.root()
		for w := leastWidth; w <= 200; w += 7 {
			for h := leastHeight; h <= 60; h += 4 {
				if !deep.Run() && w > leastWidth && h > leastHeight && (w/7+h/4+shift)%3 != 0 {
					continue
				}
				s.send(tea.WindowSizeMsg{Width: w, Height: h})
				if (w+h)%3 == 0 {
					s.press([]string{"tab", "right", "shift+tab"}[w%3])
				}
				s.fits(w, h)
				text, state := s.text(), stateOf(&m.session.card)
				first, _, _ := strings.Cut(text, "\n")
				if stripLines(w, h) == 1 && !strings.Contains(first, state.Word()) && !strings.Contains(first,
					state.Short()) {
					t.Fatalf("%dx%d: no verdict %s:\n%s", w, h, state.Word(), text)
				}
				l := m.cardLayout()
				if b := m.card.dials(m).Draw(m.th.Theme, w-2*m.margin(), l.dials); len(b) == 0 {
					t.Fatalf("%dx%d: no dials:\n%s", w, h, text)
				}
				if !strings.Contains(text, "▲") && !strings.Contains(text, "■") {
					t.Fatalf("%dx%d: no danger:\n%s", w, h, text)
				}
			}
		}
	}
}
