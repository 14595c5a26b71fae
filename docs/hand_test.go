package docs

import (
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/ansi"

	"brazebooth/tui"
)

// hand presses keys on the screens as they are shown in a terminal of 80 by 24, and waits for what a key makes them
// compute.
type hand struct{ m tea.Model }

func newHand(o tui.Options) *hand {
	o.Profile = colorprofile.TrueColor
	h := &hand{tui.New(o)}
	h.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	return h
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

// press gives the screens a key by its name; a character stands for itself.
func (h *hand) press(t testing.TB, name string) {
	t.Helper()
	codes := map[string]rune{"enter": tea.KeyEnter, "esc": tea.KeyEscape, "down": tea.KeyDown, "left": tea.KeyLeft,
		"up": tea.KeyUp, "right": tea.KeyRight, "f1": tea.KeyF1}
	if c, ok := codes[name]; ok {
		h.send(tea.KeyPressMsg{Code: c})
		return
	}
	r := []rune(name)
	if len(r) != 1 {
		t.Fatalf("no key is called %s", name)
	}
	h.send(tea.KeyPressMsg{Code: r[0], Text: name})
}

// frame is what stands on the terminal, with its colours.
func (h *hand) frame() string { return h.m.View().Content }

func (h *hand) text() string { return ansi.Strip(h.frame()) }
