package tui

import (
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
)

// Each size, as a user types it, goes to the row or the thickness that it means.
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

// Text that is no size is refused with what to type instead, and nothing is chosen.
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

// A pasted text goes into the field of every screen that has one, and is never taken for a key of its name.
func TestPasteIsNoKey(t *testing.T) {
	const card = "tab tab tab tab "
	for _, way := range []string{"", "enter", "f3", "f5", card, card + "enter", card + "p left", card + "p s",
		card + "p left left end enter", card + "p m m"} {
		for _, text := range []string{"enter", "esc", "up", "f1", "q", "*", "5", "space", "ctrl+c", "zebra"} {
			s := openAt(t, 120, 40, Options{Book: &drawer{}})
			s.press(strings.Fields(way)...)
			front, job := s.root().front(), s.root().job
			if s.send(tea.PasteMsg{Content: text}) || s.root().front() != front || s.root().job != job {
				t.Errorf("after %q, %s is a key", way, text)
			}
		}
	}
	for _, way := range []string{"", "enter", "f3", "f5", card, card + "enter", card + "p m m"} {
		s := openAt(t, 120, 40, Options{Book: &drawer{}})
		s.press(strings.Fields(way)...)
		s.send(tea.PasteMsg{Content: "zebra"})
		s.has("zebra")
	}
}

// Filtering finds a row by its name, by a designation and despite a typing error.
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
