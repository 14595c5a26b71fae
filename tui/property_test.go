package tui

import (
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/deep"
)

func stripBlock(b block) string { return ansi.Strip(b.String()) }

var anyKeys = []string{"enter", "enter", "esc", "tab", "shift+tab", "up", "down", "left", "right", "pgup", "pgdown",
	"home", "end", "backspace", "delete", "f1", "f2", "f5", "ctrl+u", "ctrl+d", "ctrl+z", "space", "0", "1", "2", "4",
	"6", "8", "9", ".", "/", "*",
	"-", "+", "=", "a", "b", "c", "g", "m", "q", "r", "R", "s", "u", "w", "x", "3", "7", "?", "é", "鉄"}

// Whatever keys are pressed at whatever size: no panic, no frame larger than the terminal, and esc always leads back to
// the first step.
func TestAnyKeys(t *testing.T) {
	deep.Turn(t)
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.IntRange(1, 140).Draw(t, "width")
		h := rapid.IntRange(1, 50).Draw(t, "height")
		s := &terminal{t, New(Options{Window: coarse, Solve: solved})}
		s.send(tea.WindowSizeMsg{Width: w, Height: h})
		for range rapid.IntRange(0, 25).Draw(t, "keys") {
			switch rapid.IntRange(0, 19).Draw(t, "kind") {
			case 0:
				w, h = rapid.IntRange(1, 140).Draw(t, "width"), rapid.IntRange(1, 50).Draw(t, "height")
				s.send(tea.WindowSizeMsg{Width: w, Height: h})
			case 1:
				s.send(tea.PasteMsg{Content: rapid.String().Draw(t, "paste")})
			default:
				s.press(rapid.SampledFrom(anyKeys).Draw(t, "key"))
			}
			s.fits(w, h)
		}
		for range 12 {
			s.press("esc")
		}
		m := s.root()
		if m.step() != 0 || m.overCard() {
			t.Fatalf("esc does not lead back: step %d", m.step())
		}
	})
}

// A solver that never finds a card leaves every screen usable.
func TestAnyKeysWithoutACard(t *testing.T) {
	fail := func(calc.Job) (calc.Card, error) { return calc.Card{}, formula.ErrRange }
	rapid.Check(t, func(t *rapid.T) {
		s := &terminal{t, New(Options{Solve: fail})}
		w := rapid.IntRange(30, 130).Draw(t, "width")
		s.send(tea.WindowSizeMsg{Width: w, Height: 24})
		for range 20 {
			s.press(rapid.SampledFrom(anyKeys).Draw(t, "key"))
			s.fits(w, 24)
		}
	})
}

// Wrapping loses only blanks, and keeps to the room.
func TestWrapKeepsAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOf(rapid.RuneFrom([]rune("ab cdé ²°– ›"))).Draw(t, "text")
		room := rapid.IntRange(1, 30).Draw(t, "room")
		lines := wrap(text, room)
		for _, l := range lines {
			if ansi.StringWidth(l) > room {
				t.Fatalf("%q is wider than %d", l, room)
			}
		}
		squeeze := func(s string) string { return strings.Join(strings.Fields(s), "") }
		if got := squeeze(strings.Join(lines, "")); got != squeeze(text) {
			t.Fatalf("%q became %q", text, got)
		}
	})
}

// A field always holds one line of printable text, with its cursor in it.
func TestFieldHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var f field
		for range rapid.IntRange(0, 20).Draw(t, "edits") {
			if rapid.Bool().Draw(t, "paste") {
				f.insert(rapid.String().Draw(t, "text"))
			} else {
				f.edit(keyPress(rapid.SampledFrom([]string{"left", "right", "home", "end", "backspace", "delete",
					"ctrl+u", "x", "space"}).Draw(t, "key")))
			}
			if f.at() < 0 || f.at() > len([]rune(f.String())) || len([]rune(f.String())) > fieldMax {
				t.Fatalf("cursor %d in %d", f.at(), len(f.String()))
			}
			for _, r := range f.String() {
				if r < ' ' || r == 0x7f {
					t.Fatalf("control character %U", r)
				}
			}
		}
	})
}
