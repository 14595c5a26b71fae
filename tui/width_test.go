package tui

import (
	"fmt"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/deep"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// Nothing is cut on any screen over a card: with the longest names, a timed arc, a stop, in every system of units.
func TestNothingCutOverACard(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("compared without -short: nothing here runs side by side")
	}
	jobs := map[string]calc.Job{"longest": longestJob(t), "stopped": {Metal: "brass", Hazard: "tank"},
		"asked": {Metal: "mild-steel", Gauge: 18, Feed: calc.Some(5.5), Travel: calc.Some(9),
			RatedAmps: calc.Some(200), RatedDuty: calc.Some(60), Load: calc.Some(1), Length: calc.Some(2000),
			WirePrice: calc.Some(25)}}
	for name, job := range jobs {
		o := Options{Opening: job}
		for _, sys := range systems() {
			o.Units = sys
			s := openAt(t, 80, 24, o)
			for _, keys := range deep.Of(t, cardStates(), 4) {
				s.press(strings.Fields(keys)...)
				for _, size := range narrow {
					s.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
					s.uncut(fmt.Sprintf("%s, %s, %s", name, sys, keys), size)
				}
				s.home()
			}
		}
	}
}

// On a narrow screen every figure of the card and of its pages is shown with its band, and every caution in full.
func TestNarrowScreensShowEverything(t *testing.T) {
	deep.Turn(t)
	job := calc.Job{Metal: "galvanized", Gauge: 18, Feed: calc.Some(5.5), Travel: calc.Some(9),
		RatedAmps: calc.Some(200), RatedDuty: calc.Some(60), Load: calc.Some(1), Length: calc.Some(2000)}
	for _, w := range []int{60, 40} {
		for _, sys := range systems() {
			s := openAt(t, w, 400, Options{Opening: job, Units: sys})
			m := s.root()
			there := func(where string, figures []calc.Figure, warnings []calc.Warning) {
				t.Helper()
				flat := strings.Join(strings.Fields(s.text()), " ")
				for i := range figures {
					if figures[i].Name == "gun_angle" { // the card has it as a sentence
						continue
					}
					r := report.RowOf(&m.session.card, &figures[i], report.OfCard, sys)
					value := r.Value.String()
					// in big digits
					if kindOf(r.Figure.Name) == noteRow || where == "card" && kindOf(r.Figure.Name) == dialRow {
						value = ""
					}
					for _, text := range []string{value, r.Value.Band(), r.Other.String()} {
						if kindOf(r.Figure.Name) == noteRow && where == "card" {
							continue // the strip and the edges show it
						}
						if !strings.Contains(flat, text) {
							t.Errorf("%s, %d columns, %s: no %q of %s:\n%s", where, w, sys, text, figures[i].Name,
								s.text())
						}
					}
				}
				for _, x := range warnings {
					text := quantity.Sentence(x.Text, sys)
					if !strings.Contains(flat, strings.Join(strings.Fields(text), " ")) {
						t.Errorf("%s, %d columns, %s: %s is not whole:\n%s", where, w, sys, x.Code, s.text())
					}
				}
			}
			there("card", m.session.card.Figures, nil)
			s.press("c")
			there("cautions", nil, m.session.card.Warnings)
			s.press("esc", "p")
			seen := 0
			for i := range pageNames {
				page, ok := advice.EntryByName(m.part.name())
				if ok && page.Of != nil {
					// otherwise the page says why
					if p, err := computedOnce.page(t.Context(), page, &m.session.card); err == nil {
						there(pageNames[i], p.Figures, p.Warnings)
						seen++
					}
				}
				s.press("right")
			}
			if seen < 6 {
				t.Errorf("%d pages were looked at", seen)
			}
		}
	}
}

// From 60 columns and 20 lines up, a stop is shown in full on the card. On smaller screens it is shown as whole clauses
// with the key that shows the rest. It never ends in the middle of a clause.
func TestStopsAreWholeOnTheCard(t *testing.T) {
	deep.Turn(t)
	cut := 0
	for _, size := range [][2]int{{40, 14}, {40, 16}, {40, 20}, {40, 24}, {60, 14}, {60, 20}, {80, 14}, {80, 24},
		{100, 20}, {100, 24}, {120, 20}, {120, 24}, {120, 40}} {
		for _, job := range boothJobs() {
			s := openAt(t, size[0], size[1], Options{Opening: job})
			s.uncut("card", size)
			x := s.root().session.card.Warnings[0]
			if whole := s.root().lampSays() == x.Code || strings.Contains(flat(s.text()),
				x.Text); x.Severity == calc.Stop && !whole {
				s.has(" …", " – c") // as uncut allows, but only on a small terminal
				cut++
			}
		}
	}
	if cut == 0 {
		t.Error("no terminal is too small for a stop")
	}
}

// Nothing is cut on the way to a card, for any row of the lists.
func TestNothingCutOnTheWay(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("compared without -short: nothing here runs side by side")
	}
	o := Options{Solve: besideLists(t)}
	for _, size := range deep.Of(t, narrow, 2) {
		for _, sys := range systems() {
			o.Units = sys
			s := openAt(t, size[0], size[1], o)
			for step := range 4 {
				for range s.pick().rows {
					s.uncut(fmt.Sprintf("%s, step %d", sys, step), size)
					s.press("*")
					s.uncut(fmt.Sprintf("%s, meaning at step %d", sys, step), size)
					s.press("esc", "down")
				}
				for _, typed := range []string{"zz", "99ga", "1.51mm", longName} {
					s.typed(typed)
					s.uncut(fmt.Sprintf("%s, step %d, %s typed", sys, step, typed), size)
					s.press("enter")
					s.uncut(fmt.Sprintf("%s, step %d, %s entered", sys, step, typed), size)
					for s.root().step() > step {
						s.press("shift+tab")
					}
					s.press("ctrl+u")
				}
				s.press("enter")
			}
		}
	}
}

// A row of a list that shows a part of its sentence has the full sentence on the same screen when the cursor is on it,
// in every list and every layout.
func TestNoRowIsCutUnseen(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("compared without -short: nothing here runs side by side")
	}
	o := Options{Opening: calc.Job{Metal: "galvanized", Gauge: 18}, Solve: besideLists(t)}
	lists := append(pathChoices(), otherChoices()...)
	parts, looked := 0, 0
	for _, size := range deep.Of(t, append([][2]int{{60, 14}, {60, 24}, {80, 14}, {80, 24}, {100, 14}, {100, 24},
		{100, 40}, {120, 24}, {120, 40}, {200, 50}}, narrow...), 2) {
		s := openAt(t, size[0], size[1], o)
		for _, q := range lists {
			m := s.root()
			m.act(openAsk(q))
			looked++
			for range pickOf(m).rows {
				s.press("up") // the first rows show the most
			}
			for i := range pickOf(m).rows {
				s.uncut(fmt.Sprintf("%s, row %d", q.Name, i), size)
				parts += strings.Count(s.text(), "…")
				s.press("down")
			}
			s.press("esc")
		}
	}
	if parts == 0 || looked < 30 {
		t.Errorf("%d parts of sentences in %d lists", parts, looked)
	}
}

// Nothing is cut on the pages of the book, however long a shop's names are.
func TestNothingCutInTheBook(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("every state at every size")
	}
	for _, size := range narrow {
		for _, sys := range systems() {
			s := openLongBook(t, &drawer{}, sys, size)
			walk := func(name, keys string) {
				s.press(strings.Fields(keys)...)
				s.uncut(fmt.Sprintf("%s, %s", sys, name), size)
			}
			toPage := func(page string) {
				for range pageNames {
					if s.root().part.name() != page {
						s.press("right")
					}
				}
				walk(page, "")
			}
			toPage(pageBook)
			s.typed(longName)
			walk("a name typed", "")
			walk("kept", "enter")
			toPage(pageRecords)
			walk("a record", "enter")
			walk("back", "esc")
			for i := range forms {
				walk("on a form", strings.Repeat("up ", 9)+strings.Repeat("down ", 1+i)+"enter")
				for range forms[i].fields {
					s.typed(longName)
					walk("typed", "")
					walk("next", "enter")
				}
				walk("entered", "enter")
				for place(s.root()) == "form" {
					s.press("ctrl+u", "esc")
				}
			}
			toPage(pageMeasure)
			s.typed(longName)
			walk("a power source", "enter")
			walk("a new one", "enter")
			for _, text := range []string{"635mm", "635mm", "12mm", "120A", "16V", "4", "5", "16s/100mm", "rolled-edge",
				"bad", "6mm", "3mm", "1mm", "4mm"} {
				s.typed("nonsense")
				walk("refused", "enter ctrl+u")
				s.typed(text)
				walk("typed", "")
				walk("measured", "enter")
			}
			walk("kept", "enter")
		}
	}
}

// Nothing is cut in a series of test beads: what is seen, the answer, the next bead, another job.
func TestNothingCutOfTestBeads(t *testing.T) {
	if testing.Short() {
		t.Skip("every state at every size")
	}
	o := Options{Opening: calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(5.5),
		Travel: calc.Some(10)}}
	for _, size := range narrow {
		for _, sys := range systems() {
			o.Units, o.Book = sys, &drawer{}
			s := openAt(t, size[0], size[1], o)
			s.press("p")
			for s.root().part.name() != "correct" {
				s.press("right")
			}
			for _, keys := range []string{"enter", "down down down down", "space", "enter", "*", "k", "a", "enter",
				"enter", "space enter", "enter"} {
				s.press(strings.Fields(keys)...)
				s.uncut(fmt.Sprintf("%s, beads, %s", sys, keys), size)
			}
		}
	}
}
