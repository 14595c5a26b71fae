package tui

import (
	"strings"

	"charm.land/bubbles/v2/key"
	"github.com/charmbracelet/x/ansi"
)

// top is the strip with the verdict: in full on card and booth view, on one line over the other screens.
func (m *root) top() block {
	lines := 1
	if m.practising() { // its own verdict: nothing of it is the card's
		lines = stripLines(m.w, m.h)
		return append(block{}, m.lamp.Draw(m.drill.strip(m.units), m.th.Theme, m.w, lines)...)
	}
	if _, full := m.front().(interface{ full() }); full {
		lines = stripLines(m.w, m.h)
	}
	b := append(block{}, m.lamp.Draw(m.strip(), m.th.Theme, m.w, lines)...)
	if lines == 1 && m.h >= 20 {
		b.skip()
	}
	return b
}

// keysLine is the last line of keys that was drawn: it changes less often than the screen over it.
type keysLine struct {
	of   string
	w    int
	look look
	line line
}

// draw is footLine, kept until keys, width or theme change.
func (l *keysLine) draw(th *theme, keys string, w int) line {
	if keys != l.of || w != l.w || th.look != l.look || l.line.Width == 0 {
		*l = keysLine{keys, w, th.look, footLine(th, keys, "f1 help", w)}
	}
	return l.line
}

// footLine shows the keys that count here, as many as there is room for; the last one is always among them. The library
// cuts a line with an ellipsis, or runs over it where that has no room: it gets what fits.
func footLine(th *theme, keys, last string, w int) line {
	used := width(last)
	var list []key.Binding
	for k := range strings.SplitSeq(keys, keyGap) {
		if used += width(k) + width(keyGap); used > w {
			break
		}
		list = append(list, entry(strings.Cut(k, " ")))
	}
	text := th.keys.ShortHelpView(append(list, entry(strings.Cut(last, " "))))
	return line{Text: text, Width: ansi.StringWidth(text)}
}

// keyGap stands between two keys.
const keyGap = "  "

// entry is a key for the library's help, which leaves out those that answer to none.
func entry(shown, does string, _ bool) key.Binding {
	return key.NewBinding(key.WithKeys(shown), key.WithHelp(shown, does))
}
