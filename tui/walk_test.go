package tui

import (
	"errors"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/mistake"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// A welder in gloves has a keypad only: from the first screen to the card of another gauge.
func TestKeypadAlone(t *testing.T) {
	s := open80(t)
	keys := []string{"enter", "1", "8", "enter", "enter", "enter"}
	if len(keys) > 6 {
		t.Fatalf("%d keys", len(keys))
	}
	s.press(keys...)
	s.has("[card]", "18 ga")
	if got := s.root().job.Gauge; got != 18 {
		t.Fatalf("the job's gauge is %d", got)
	}
	s.press("2", "2", "+", "*")
	s.has("set it yourself", "travel")
	s.press("/", "/")
	s.has("[dip]")
}

// Digits reach every row of a list of names, those of two digits too.
func TestRowNumbers(t *testing.T) {
	s := open80(t)
	rows := s.pick().rows
	if len(rows) < 12 {
		t.Fatalf("%d metals", len(rows))
	}
	s.typed("12")
	if c := s.pick().choice(); c == nil || c.ID != rows[11].ID {
		t.Fatalf("row 12 is %v", c)
	}
	s.press("esc")
	s.typed("304")
	if c := s.pick().choice(); c == nil || c.ID != "stainless-304" {
		t.Fatalf("304 finds %v", c)
	}
}

// The first screen is the scenario's own job, already computed; nothing of it counts as chosen.
func TestExample(t *testing.T) {
	s := open80(t)
	s.has(ExampleTitle, "wire feed", "[galvanized]")
	s.hasNot("~16 ga", "~dip")
	s.press("enter")
	s.hasNot("example")
	s.has("[~16 ga]", "~dip")
}

// The example is the job that is assumed where nothing is chosen: the first choice changes no figure but
// its own.
func TestExampleIsAssumed(t *testing.T) {
	example, err1 := calc.Solve(ExampleJob())
	nothing, err2 := calc.Solve(calc.Job{})
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	for _, f := range example.Figures {
		g, ok := nothing.Figure(f.Name)
		if !ok || g.Value != f.Value {
			t.Errorf("%s is %g in the example and %g with nothing chosen", f.Name, f.Value, g.Value)
		}
	}
}

// The card beside the list follows the cursor, and goes back with it.
func TestLiveCard(t *testing.T) {
	s := open80(t)
	s.press("enter")
	first := figure(t, s, "wire_feed")
	s.typed("24")
	s.has("[24 ga]")
	if s.root().job.Gauge != 0 {
		t.Fatal("typing alone has chosen")
	}
	want, err := calc.Solve(calc.Job{Metal: "galvanized", Gauge: 24})
	if err != nil {
		t.Fatal(err)
	}
	feed, _ := want.Figure("wire_feed")
	c := report.ValueOf(&feed, quantity.Metric)
	s.has(c.String())
	s.press("esc")
	s.has("[~16 ga]")
	s.hasNot(c.String())
	if got := figure(t, s, "wire_feed"); got != first {
		t.Fatalf("trying 24 ga out has left a feed of %g, not %g", got, first)
	}
}

// Each size as a hand types it goes to the row or the thickness that it means.
func TestTypedSizes(t *testing.T) {
	for _, x := range []struct {
		typed string
		gauge int
		mm    float64
	}{{"18", 18, 0}, {"18ga", 18, 0}, {"1.5", 0, 1.5}, {"1.5mm", 0, 1.5}, {".060", 0, 1.524}, {"1/16", 0, 1.5875}} {
		s := open80(t)
		s.press("enter")
		s.typed(x.typed)
		s.press("enter")
		if j := s.root().job; j.Gauge != x.gauge || !near(j.Thickness.V, x.mm) || j.Thickness.Set != (x.gauge == 0) {
			t.Errorf("%s is %d gauge, %+v", x.typed, j.Gauge, j.Thickness)
		}
		if s.root().step() != 2 {
			t.Errorf("enter after %s leads to step %d", x.typed, s.root().step())
		}
	}
}

// What is no size is refused with what to type instead, and nothing is chosen.
func TestRefusedSizes(t *testing.T) {
	for _, typed := range []string{"banana", "-3mm", "400mm", "99ga", "7ga", "0"} {
		s := open80(t)
		s.press("enter")
		s.typed(typed)
		s.press("enter")
		s.has("▲", "type")
		if s.root().step() != 1 || s.root().job.Gauge != 0 || s.root().job.Thickness.Set {
			t.Errorf("%s was taken:\n%s", typed, s.text())
		}
	}
}

func TestPaste(t *testing.T) {
	s := open80(t)
	s.press("enter")
	s.send(tea.PasteMsg{Content: "1.5\x1b[31m mm\n\u202e"})
	if got := s.pick().field.String(); strings.ContainsAny(got, "\x1b\n\u202e") {
		t.Fatalf("the field took %q", got)
	}
	s.press("ctrl+u")
	s.send(tea.PasteMsg{Content: "1.5 mm\n"})
	s.press("enter")
	if got := s.root().job.Thickness; got != calc.Some(1.5) {
		t.Fatalf("thickness %v", got)
	}
}

// Filtering finds a row by its name, by a designation and through a slip of the finger.
func TestFilter(t *testing.T) {
	for _, x := range []struct{ typed, key string }{
		{"galvan", "galvanized"}, {"316", "stainless-316"}, {"Copper", "copper"}, {"stainles 304", "stainless-304"},
	} {
		s := open80(t)
		s.typed(x.typed)
		if c := s.pick().choice(); c == nil || c.ID != x.key {
			t.Errorf("%s finds %v, not %s", x.typed, c, x.key)
		}
	}
	s := open80(t)
	s.typed("unobtainium")
	s.press("enter")
	s.has("unobtainium", "type less")
	if s.root().step() != 0 {
		t.Error("nothing was chosen and yet the path went on")
	}
}

// toCard walks to the card with the assumed choices.
func toCard(t testing.TB, w, h int) *terminal {
	s := openAt(t, w, h, Options{})
	s.press("enter", "enter", "enter", "enter")
	return s
}

// A changed setting is marked, everything else follows, and r puts the suggestion back.
func TestChangeFollows(t *testing.T) {
	s := toCard(t, 80, 24)
	feed := figure(t, s, "wire_feed")
	amps := figure(t, s, "current")
	s.press("right")
	s.has("yours")
	if got := figure(t, s, "wire_feed"); got <= feed {
		t.Fatalf("feed went from %g to %g", feed, got)
	}
	if got := figure(t, s, "current"); got <= amps {
		t.Fatalf("current went from %g to %g", amps, got)
	}
	s.press("-", "4", "left")
	if got := figure(t, s, "wire_feed"); got >= feed {
		t.Fatalf("feed came back only to %g", got)
	}
	s.press("r")
	s.hasNot("yours")
	if got := figure(t, s, "wire_feed"); got != feed {
		t.Fatalf("the suggestion was %g and is %g", feed, got)
	}
}

func figure(t testing.TB, s *terminal, name string) float64 {
	t.Helper()
	f, ok := s.root().session.card.Figure(name)
	if !ok {
		t.Fatalf("no figure %s", name)
	}
	return f.Value
}

// A value of the hand's own is typed on the page that says why.
func TestSetByHand(t *testing.T) {
	s := toCard(t, 80, 24)
	s.press("enter")
	s.has("set it yourself", "The limits, nearest first")
	s.typed("250ipm")
	s.press("enter")
	if got, want := s.root().job.Feed, calc.Some(6.35); !near(got.V, want.V) || !got.Set {
		t.Fatalf("feed %v, want %v", got, want)
	}
	s.has("[card]", "yours")
	s.press("enter")
	s.typed("3A")
	s.press("enter")
	s.has("▲", "set it yourself")
}

func near(a, b float64) bool { d := a - b; return d < 1e-9 && d > -1e-9 }

// Every other choice is reached from the card, changed by a step or through its list, and kept.
func TestOtherChoices(t *testing.T) {
	for i, q := range otherChoices() {
		s := toCard(t, 80, 24)
		s.press("home")
		for range s.root().card.rows {
			if r := s.root().card.row(); r.ask == q {
				break
			}
			s.press("down")
		}
		if r := s.root().card.row(); r.ask != q {
			t.Fatalf("choice %d, %s, is not on the card", i, q.Name)
		}
		was := q.Now(&s.root().session.card)
		s.press("enter")
		s.has(q.Ask)
		s.press("down", "enter")
		s.has("[card]")
		if got := q.Now(&s.root().session.card); got == was {
			t.Errorf("%s is still %s", q.Name, was)
		}
		s.press("r")
		if got := q.Now(&s.root().session.card); got != was {
			t.Errorf("r left %s at %s, not %s", q.Name, got, was)
		}
	}
}

// A job without a card says why in one place; the last good card stays, marked.
func TestNoCard(t *testing.T) {
	fail := &mistake.Error{Field: "gauge", What: "no 30 ga", Hint: "type 8ga to 29ga"}
	o := Options{Solve: func(j calc.Job) (calc.Card, error) {
		if j.Gauge == 30 {
			return calc.Card{}, fail
		}
		return calc.Solve(j)
	}}
	for _, size := range [][2]int{{60, 20}, {80, 24}, {120, 40}} {
		s := openAt(t, size[0], size[1], o)
		s.press("enter")
		feed := figure(t, s, "wire_feed")
		s.typed("30")
		s.has(fail.Hint)
		s.press("enter")
		s.has("▲ card is of the last job", fail.Error(), fail.Hint)
		if got := figure(t, s, "wire_feed"); got != feed {
			t.Fatalf("the card has changed from %g to %g", feed, got)
		}
		s.press("shift+tab")
		s.typed("20")
		s.press("enter")
		s.hasNot("last job")
	}
}

// A step that cannot be computed is refused; the card stays and is not old.
func TestRefusedStep(t *testing.T) {
	s := openAt(t, 80, 24, Options{Solve: func(j calc.Job) (calc.Card, error) {
		if j.Feed.Set {
			return calc.Card{}, errors.New("the wire has run out")
		}
		return calc.Solve(j)
	}})
	s.press("enter", "enter", "enter", "enter", "+")
	s.has("the wire has run out")
	s.hasNot("last job", "yours")
}

func TestUnits(t *testing.T) {
	s := toCard(t, 80, 24)
	s.has("m/min", "13", "for 100 mm")
	s.press("u")
	s.has("in/min", "for 4 in")
	s.hasNot("m/min ")
	s.press("u")
	s.has("m/min", "in/min")
	s.press("u")
	s.hasNot("in/min")
}

// q asks once where a job would be lost; ctrl+c never asks; in a filter q is a letter.
func TestLeaving(t *testing.T) {
	if s := open80(t); !s.press("q") {
		t.Error("q does not leave the example")
	}
	s := toCard(t, 80, 24)
	if s.press("q") {
		t.Error("q left at once")
	}
	s.has("q again quits")
	if !s.press("q") {
		t.Error("the second q does not leave")
	}
	s = toCard(t, 80, 24)
	s.press("q", "down")
	if s.press("q") {
		t.Error("q left although another key came between")
	}
	if !s.press("ctrl+c") {
		t.Error("ctrl+c does not leave")
	}
	s = open80(t)
	s.press("a", "q")
	if got := s.pick().field.String(); got != "aq" {
		t.Errorf("the filter holds %q", got)
	}
}

// Every screen shows the path, and esc leads back from each to the first.
func TestPathAndBack(t *testing.T) {
	s := open80(t)
	for range 4 {
		s.has("›", "card")
		s.press("enter")
	}
	for _, keys := range [][]string{{"f1"}, {"?"}, {"c"}, {"*"}, {"end", "enter"}, {"end", "*"}} {
		s.press(keys...)
		s.has("›")
		s.press("esc")
		s.has("[card]", "↑↓ select")
	}
	s.press("tab")
	s.has("[card]")
	for _, want := range []string{"[dip]", "[.035", "[16 ga]", "[galvanized]", "[galvanized]"} {
		s.press("shift+tab")
		s.has(want)
	}
	s.press("esc")
	s.has("first step")
}

// The cautions: the test bead on every card, stops in full, all of them one key away.
func TestCautionsCannotBeMissed(t *testing.T) {
	for _, size := range [][2]int{{40, 20}, {60, 20}, {80, 24}, {120, 40}} {
		s := openAt(t, size[0], size[1], Options{})
		s.typed("brass")
		s.press("enter", "enter", "enter", "enter")
		flat := strings.Join(strings.Fields(strings.ReplaceAll(s.text(), "│", " ")), " ")
		for _, want := range []string{"STOP: Do not arc braze brass sheet", "Use silver brazing or soft solder."} {
			if size[0] < wideWidth && !strings.Contains(flat, want) {
				t.Errorf("%v does not show %q:\n%s", size, want, s.text())
			}
		}
		s.has("■ 1", "Strike a test bead")
		s.press("c")
		s.has("cautions", "■ stop")
	}
}

// Every warning stands whole on its page at every width.
func TestCautionPageWhole(t *testing.T) {
	s := toCard(t, 80, 24)
	c := &s.root().session.card
	for w := leastWidth; w <= 130; w += 7 {
		flat := strings.Join(strings.Fields(stripBlock(cautionPage(&s.root().th, c, w))), " ")
		for _, x := range c.Warnings {
			if !strings.Contains(flat, strings.Join(strings.Fields(x.Text), " ")) {
				t.Fatalf("at %d columns %s is cut:\n%s", w, x.Code, flat)
			}
		}
	}
}

// From 60 columns on no figure, band, remark or caution of the card is cut.
func TestNothingCut(t *testing.T) {
	for _, mode := range []string{"dip", "pulsed", "timed"} {
		for _, sys := range []quantity.System{quantity.Metric, quantity.Inch, quantity.Both} {
			for w := narrowWidth; w <= 130; w += 5 {
				s := openAt(t, w, 60, Options{Units: sys, Job: calc.Job{Metal: "galvanized", Mode: mode}})
				s.has("[card]")
				s.hasNot("…")
				s.fits(w, 60)
			}
		}
	}
}
