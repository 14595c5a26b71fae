package tui

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
	"time"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// The narrow terminals: a small window, a phone held upright.
var narrow = [][2]int{{60, 20}, {60, 120}, {40, 14}, {40, 120}}

// systems are all systems of units; in a sample only the one with the longest texts.
func systems() []quantity.System {
	if !deep.Run() {
		return []quantity.System{quantity.Both}
	}
	return []quantity.System{quantity.Metric, quantity.Inch, quantity.Both}
}

// longestJob has the longest names that a card can have at once, and a timed arc.
func longestJob(t *testing.T) calc.Job {
	t.Helper()
	j := calc.Job{Metal: longest(tables.Metals, func(m tables.Metal) string { return metalThatArcs(m.ID) }),
		Gauge:  16,
		Filler: longest(tables.Fillers, func(f tables.Filler) string { return f.ID }),
		Joint:  "butt", Gap: calc.Some(2), Mode: "timed"}
	j.Metal2 = j.Metal
	if _, err := calc.Solve(j); err != nil {
		t.Fatal(err)
	}
	return j
}

// metalThatArcs is the id of a metal that has a card, "" for another.
func metalThatArcs(id string) string {
	if _, err := calc.Solve(calc.Job{Metal: id, Gauge: 16, Joint: "butt", Gap: calc.Some(2),
		Mode: "timed"}); err != nil {
		return ""
	}
	return id
}

func longest[T any](list []T, name func(T) string) string {
	best := ""
	for _, x := range list {
		if n := name(x); len(n) > len(best) {
			best = n
		}
	}
	return best
}

// longName is as long as a field allows.
var longName = strings.Repeat("rainwater tank lid 12 ", 4)[:fieldMax]

// waits are ellipses that cut nothing off.
var waits = regexp.MustCompile(`being kept …|looking at it …|fit … correct`)

// clauseEnd is the end of a sentence of which only whole clauses are shown.
var clauseEnd = regexp.MustCompile(`[,;:.]\s+…`)

// uncut fails if a line of the screen ends in an ellipsis, or is wider than the terminal. Two places may show only
// whole clauses: a row of a list, if its sentence is shown in full beside it while the cursor is there; and, under 60
// columns or 20 lines, a caution in the booth view or a stop on the card, which then name the key that shows the rest.
func (s *terminal) uncut(state string, size [2]int) {
	s.t.Helper()
	s.fits(size[0], size[1])
	text := s.text()
	if len(s.root().top()) < 4 { // a strip of one line only repeats what the screen, or a key below, shows in full
		_, text, _ = strings.Cut(text, "\n")
	}
	rest := waits.ReplaceAllString(text, "")
	m := s.root()
	if p := s.walk(); p != nil {
		m = p.screens
	}
	switch {
	case !strings.Contains(rest, "…"):
		return
	case m.isOpen(&m.booth) && (size[0] < narrowWidth || size[1] < 20):
		s.has(" – c")
	case m.onCard() && (size[0] < narrowWidth || size[1] <= 20):
		s.has("■ STOP: ", " – c")
	case place(m) == "path":
		p := pickOf(m)
		if p.wrong != nil { // enter takes no row, and what is wrong with the text is whole
			return
		}
		if c := p.choice(); !strings.Contains(flat(rest), flat(rowSentence(c))) {
			s.t.Fatalf("%s, %dx%d: rows are cut and the one under the cursor is not whole:\n%s", state, size[0],
				size[1], s.text())
		}
	case place(m) == "page "+pageBook || place(m) == "page "+pageRecords:
		p := &m.shelf
		if m.part.name() == pageRecords {
			p = &m.records
		}
		e, shown := p.entry(), flat(rest)
		if e != nil && !(strings.Contains(shown, flat(e.Name)) && strings.Contains(shown, e.At)) && size[1] >= 20 {
			s.t.Fatalf("%s, %dx%d: rows are cut and the one under the cursor is not whole:\n%s", state, size[0],
				size[1], s.text())
		}
		return
	default:
		s.t.Fatalf("%s, %dx%d: something is cut:\n%s", state, size[0], size[1], s.text())
	}
	if strings.Contains(clauseEnd.ReplaceAllString(rest, ""), "…") {
		s.t.Fatalf("%s, %dx%d: something is cut inside a clause:\n%s", state, size[0], size[1], s.text())
	}
}

// onCard reports whether no screen is open over the card.
func (m *root) onCard() bool {
	return m.front() == screen(&m.card)
}

// flat is a screen's text as one line: first the text to the left of its rule, then the text to the right.
func flat(text string) string {
	var left, right []string
	for _, l := range strings.Split(text, "\n") {
		l, r, _ := strings.Cut(l, "│")
		left, right = append(left, l), append(right, r)
	}
	return strings.Join(strings.Fields(strings.Join(append(left, right...), " ")), " ")
}

// cardStates are keys that lead from a card to every screen that can be open over it, without a book.
func cardStates() []string {
	list := []string{"", "tab", "c", "x", "m", "t", "t space", "b", "f1", "r", "tab up", "g", "g z i n c", "g z z"}
	for i := range 9 {
		pick := strings.Repeat("right ", i)
		list = append(list, pick+"*", pick+"* 9 9 9 9 z enter", pick+"9 9 9 9 z enter", "tab "+pick+"*")
	}
	for i := range pageNames {
		right := "p " + strings.Repeat("right ", i)
		list = append(list, right, right+"*", right+"enter")
	}
	for i := range chipChoices() {
		chip := fmt.Sprintf(". %d ", i+1)
		list = append(list, chip, chip+"enter", chip+"enter *")
	}
	down := ". 0 "
	for range otherChoices() {
		list = append(list, down, down+"enter", down+"enter *")
		down += "down "
	}
	return append(list, "up q")
}

// home goes back to the card from every screen over it.
func (s *terminal) home() {
	s.press("ctrl+u", "esc")
	for range 9 {
		if m := s.root(); m.onCard() {
			break
		}
		s.press("ctrl+u", "esc")
	}
	for s.root().step() < cardStep {
		s.press("tab")
	}
	s.root().part.at = 0
}

func openLongBook(t *testing.T, d *drawer, sys quantity.System, size [2]int) *terminal {
	t.Helper()
	now := time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	clock := func() time.Time { now = now.Add(6 * time.Second); return now }
	s := openAt(t, size[0], size[1], Options{Book: d, Now: clock, Units: sys, Opening: calc.Job{Metal: "mild-steel",
		Gauge: 18, Joint: "lap", Feed: calc.Some(6.35), Travel: calc.Some(10), StickOut: calc.Some(12)}})
	s.press("p")
	return s
}
