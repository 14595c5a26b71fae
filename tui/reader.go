package tui

import (
	"strings"

	"charm.land/bubbles/v2/key"
	"charm.land/bubbles/v2/viewport"
	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"brazebooth/internal/quantity"
)

// reader is a text to scroll through. The zero reader stands at its beginning.
type reader struct {
	view viewport.Model
	top  int // line that is first on the screen
}

// moved acts on the keys that move through a text; draw keeps it on it.
func (r *reader) moved(press tea.KeyPressMsg, k *keyMap) bool {
	page := max(1, r.view.Height()-1)
	switch {
	case key.Matches(press, k.Up):
		r.top--
	case key.Matches(press, k.Down):
		r.top++
	case key.Matches(press, k.PageUp):
		r.top -= page
	case key.Matches(press, k.PageDown), press.String() == "space":
		r.top += page
	case key.Matches(press, k.Top):
		r.top = 0
	case key.Matches(press, k.Bottom):
		r.top = r.view.TotalLineCount()
	default:
		return false
	}
	return true
}

// draw returns the part of the text that is on the screen, with the lines that are not said so.
func (r *reader) draw(th *theme, b block, w, h int) block {
	if len(b) <= h {
		r.top = 0
		return b
	}
	h = max(1, h-1)
	r.view.SetWidth(w)
	r.view.SetHeight(h)
	r.view.SetContent(b.String())
	r.view.SetYOffset(r.top)
	r.top = r.view.YOffset()
	out := make(block, 0, h+1)
	for text := range strings.SplitSeq(r.view.View(), "\n") {
		text = strings.TrimRight(text, " ")
		out.add(line{Text: text, Width: ansi.StringWidth(text)})
	}
	return append(out.fit(h), more(th, r.top, len(b)-h-r.top, w))
}

// more says how many lines lie above and below.
func more(th *theme, above, below, w int) line {
	r := newRow(w)
	if above > 0 {
		r.put(th.quiet, "↑ "+quantity.Count(above, "line"))
	}
	if below > 0 {
		if r.used > 0 {
			r.blank(2)
		}
		r.put(th.quiet, "↓ "+quantity.Count(below, "line"))
	}
	return r.line()
}
