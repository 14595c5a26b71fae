package tui

import (
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
)

// clickOn clicks on the first place that shows a text.
func (s *terminal) clickOn(text string) {
	s.t.Helper()
	for y, l := range strings.Split(s.text(), "\n") {
		if before, _, ok := strings.Cut(l, text); ok {
			s.send(tea.MouseClickMsg{X: width(before), Y: y, Button: tea.MouseLeft})
			return
		}
	}
	s.t.Fatalf("there is no %q to click on:\n%s", text, s.text())
}

// A click goes to a chip, a dial or a row, and a second one opens it. The wheel scrolls, and changes no setting.
func TestMouse(t *testing.T) {
	for _, size := range [][2]int{{60, 20}, {80, 24}, {120, 40}} {
		s := toCard(t, size[0], size[1])
		job := s.root().job
		s.clickOn("dip")
		if r := s.root().card.row(); r.name != "mode" {
			t.Errorf("%v: a click on dip goes to %s", size, r.name)
		}
		s.clickOn("volts")
		if r := s.root().card.row(); r.name != "volts" {
			t.Errorf("%v: a click on volts goes to %s", size, r.name)
		}
		s.send(tea.MouseWheelMsg{Button: tea.MouseWheelDown})
		if s.root().job != job {
			t.Errorf("%v: the wheel turned a setting", size)
		}
		s.clickOn("dip")
		s.clickOn("dip")
		s.has("Which mode?")
		s.clickOn("2 pulsed")
		if c := s.pick().choice(); c.ID != "pulsed" {
			t.Errorf("%v: a click on pulsed goes to %s", size, c.ID)
		}
		s.send(tea.MouseWheelMsg{Button: tea.MouseWheelUp})
		if c := s.pick().choice(); c.ID != "dip" {
			t.Errorf("%v: the wheel goes to %s", size, c.ID)
		}
		s.clickOn("2 pulsed")
		s.clickOn("2 pulsed")
		s.onCard()
		if got := s.root().job.Mode; got != "pulsed" {
			t.Errorf("%v: two clicks chose %q", size, got)
		}
		s.fits(size[0], size[1])
	}
}
