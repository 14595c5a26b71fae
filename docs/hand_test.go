package docs

import (
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/ansi"

	"brazebooth/tui"
)

// hand presses keys on the screens in a terminal, and waits for what a key starts to compute.
type hand struct{ m tea.Model }

// newHand shows the screens in a terminal of 80 by 24, in all colours.
func newHand(o tui.Options) *hand {
	o.Profile = colorprofile.TrueColor
	return handAt(o, 80, 24)
}

func handAt(o tui.Options, w, h int) *hand {
	hand := &hand{tui.New(o)}
	hand.send(tea.WindowSizeMsg{Width: w, Height: h})
	return hand
}

func (h *hand) send(msg tea.Msg) {
	m, cmd := h.m.Update(msg)
	h.m = m
	for cmd != nil {
		switch msg := cmd().(type) {
		case nil:
			return
		case tea.BatchMsg: // the work first, its clock second
			cmd = msg[0]
		default:
			h.send(msg)
			return
		}
	}
}

// press sends a key to the screens, by its name; a single character is its own name.
func (h *hand) press(t testing.TB, name string) {
	t.Helper()
	codes := map[string]rune{"enter": tea.KeyEnter, "esc": tea.KeyEscape, "down": tea.KeyDown, "left": tea.KeyLeft,
		"up": tea.KeyUp, "right": tea.KeyRight, "tab": tea.KeyTab, "f1": tea.KeyF1, "f5": tea.KeyF5}
	if c, ok := codes[name]; ok {
		h.send(tea.KeyPressMsg{Code: c})
		return
	}
	switch name {
	case "ctrl+z":
		h.send(tea.KeyPressMsg{Code: 'z', Mod: tea.ModCtrl})
		return
	case "space":
		h.send(tea.KeyPressMsg{Code: tea.KeySpace, Text: " "})
		return
	}
	r := []rune(name)
	if len(r) != 1 {
		t.Fatalf("no key is called %s", name)
	}
	h.send(tea.KeyPressMsg{Code: r[0], Text: name})
}

// frame is the terminal's content, with its colours.
func (h *hand) frame() string { return h.m.View().Content }

func (h *hand) text() string { return ansi.Strip(h.frame()) }
