package tui

import (
	"errors"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/mistake"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// A welder in gloves has only a keypad: from the first screen to the card of another gauge.
func TestKeypadAlone(t *testing.T) {
	s := open80(t)
	keys := []string{"enter", "1", "8", "enter", "enter", "enter"}
	if len(keys) > 6 {
		t.Fatalf("%d keys", len(keys))
	}
	s.press(keys...)
	s.onCard()
	s.has("18 ga")
	if got := s.root().job.Gauge; got != 18 {
		t.Fatalf("the job's gauge is %d", got)
	}
	s.press("*") // why, and back
	s.has("set it yourself", "wire feed")
	s.press("/")
	s.press("4", ".", "5", "enter") // types a feed
	if got := s.root().job.Feed; got != calc.Some(4.5) {
		t.Errorf("4.5 typed on the card is a feed of %v", got)
	}
	s.press("right", "right", "5", "enter") // the travel
	if got := s.root().job.Travel; got != calc.Some(5) {
		t.Errorf("5 typed on the third dial is a travel of %v", got)
	}
	s.press(".", "enter", "1", "1", "enter") // goes to the next dial and types
	if got := s.root().job.StickOut; got.V != 11 && s.root().job.Flow.V != 11 {
		t.Errorf("11 typed behind a point and enter is nowhere: %+v", s.root().job)
	}
	s.press(".")
	s.has("enter type it", "0 rest")
	s.press("5", "+") // the chip of the joint
	if got := s.root().job.Joint; got == "" {
		t.Error("the joint did not change")
	}
	s.press(".", "0")
	s.has("the rest", "timed arc")
	s.press("end")
	s.has("keep", "help")
	s.press("/", "/")
	s.has("Which mode?")
}

// Digits reach every row of a list of names, also rows with two digits.
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

// The first screen is the example job, already computed. Nothing of it counts as chosen.
func TestExample(t *testing.T) {
	s := open80(t)
	s.has("example", "wire feed", " galvanized ")
	s.hasNot("~16 ga", "~dip")
	s.press("enter")
	s.hasNot("example")
	s.has("~16 ga", "~dip")
}

// The example is the job that is assumed if nothing is chosen: the first choice changes only its own figure.
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

// The card beside the list follows the cursor, and returns with it.
func TestLiveCard(t *testing.T) {
	s := open80(t)
	s.press("enter")
	first := figure(t, s, "wire_feed")
	s.typed("24")
	s.has(" 24 ga ")
	if s.root().job.Gauge != 0 {
		t.Fatal("typing alone has chosen")
	}
	want, err := calc.Solve(calc.Job{Metal: "galvanized", Gauge: 24})
	if err != nil {
		t.Fatal(err)
	}
	feed, _ := want.Figure("wire_feed")
	c := report.ValueOf(&feed, quantity.Metric)
	if shown, _ := s.root().shown().Figure("wire_feed"); shown.Value != feed.Value {
		t.Errorf("the card beside the list has a feed of %g, not %s", shown.Value, c)
	}
	s.press("esc")
	s.has("~16 ga")
	if got := figure(t, s, "wire_feed"); got != first {
		t.Fatalf("trying 24 ga out has left a feed of %g, not %g", got, first)
	}
}

// toCard walks to the card with the assumed choices.
func toCard(t testing.TB, w, h int) *terminal {
	s := openAt(t, w, h, Options{})
	s.press("enter", "enter", "enter", "enter")
	return s
}

// A changed setting is marked, everything else follows, and r restores the suggestion.
func TestChangeFollows(t *testing.T) {
	s := toCard(t, 80, 24)
	feed := figure(t, s, "wire_feed")
	amps := figure(t, s, "current")
	s.press("up")
	s.has("yours")
	if got := figure(t, s, "wire_feed"); got <= feed {
		t.Fatalf("feed went from %g to %g", feed, got)
	}
	if got := figure(t, s, "current"); got <= amps {
		t.Fatalf("current went from %g to %g", amps, got)
	}
	s.press("-", "down", "-")
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

// A value of the user's own can be typed on the page that explains a figure.
func TestSetByHand(t *testing.T) {
	s := toCard(t, 80, 24)
	s.press("enter")
	s.has("set it yourself", "edges, nearest first")
	s.typed("250ipm")
	s.press("enter")
	if got, want := s.root().job.Feed, calc.Some(6.35); !near(got.V, want.V) || !got.Set {
		t.Fatalf("feed %v, want %v", got, want)
	}
	s.onCard()
	s.has("yours")
	s.press("enter")
	s.typed("3A")
	s.press("enter")
	s.has("▲", "set it yourself")
}

func near(a, b float64) bool { d := a - b; return d < 1e-9 && d > -1e-9 }

// A job without a card says why in one place. The last good card stays and is marked.
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
		s.has("NOT JUDGED", fail.Error(), fail.Hint)
		if got := figure(t, s, "wire_feed"); got != feed {
			t.Fatalf("the card has changed from %g to %g", feed, got)
		}
		s.press("shift+tab")
		s.typed("20")
		s.press("enter")
		s.hasNot("NOT JUDGED")
	}
}

// A step that cannot be computed is refused. The card stays and is not old.
func TestRefusedStep(t *testing.T) {
	s := openAt(t, 80, 24, Options{Solve: func(j calc.Job) (calc.Card, error) {
		if j.Feed.Set {
			return calc.Card{}, errors.New("the wire has run out")
		}
		return calc.Solve(j)
	}})
	s.press("enter", "enter", "enter", "enter", "+")
	s.has("the wire has run out")
	s.hasNot("NOT JUDGED", "yours")
}

func TestUnits(t *testing.T) {
	s := toCard(t, 80, 24)
	s.has("m/min", "metric")
	s.press("u")
	s.has("in/min", "inch")
	s.hasNot("m/min ")
	s.press("u")
	s.has("m/min", "in/min", "both units")
	s.press("u")
	s.hasNot("in/min")
}

// q asks once if a job would be lost, ctrl+c never asks, and in a filter q is a letter.
func TestLeaving(t *testing.T) {
	if s := open80(t); !s.press("q") {
		t.Error("q does not leave the example")
	}
	s := toCard(t, 80, 24)
	if s.press("q") {
		t.Error("q left at once")
	}
	s.has("q again quits", "is not kept")
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
	for _, ask := range []string{"Which metal?", "Which gauge", "Which wire", "Which mode?"} {
		s.has(ask)
		s.press("enter")
	}
	for _, keys := range [][]string{{"f1"}, {"?"}, {"c"}, {"*"}, {"tab", "enter"}, {"tab", "*"}} {
		s.press(keys...)
		s.press("esc")
		s.onCard()
	}
	s.press("tab")
	s.onCard()
	for _, want := range []string{"Which mode?", "Which wire", "Which gauge", "Which metal?", "Which metal?"} {
		s.press("esc")
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
			if s.root().lampSays() != "brass" && !strings.Contains(flat, want) {
				t.Errorf("%v does not show %q:\n%s", size, want, s.text())
			}
		}
		s.has("■ 1")
		s.press("c")
		s.has("cautions", "■ stop")
	}
}

// Every warning is shown in full on its page at every width.
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

// From 60 columns on, no figure, band, remark or caution of the card is cut.
func TestNothingCut(t *testing.T) {
	for _, mode := range []string{"dip", "pulsed", "timed"} {
		for _, sys := range []quantity.System{quantity.Metric, quantity.Inch, quantity.Both} {
			for w := narrowWidth; w <= 130; w += 5 {
				s := openAt(t, w, 60, Options{Units: sys, Opening: calc.Job{Metal: "galvanized", Mode: mode}})
				s.onCard()
				s.hasNot("…")
				s.fits(w, 60)
			}
		}
	}
}
