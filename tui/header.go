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
func (l *keysLine) draw(th *theme, keys []key.Binding, help key.Binding, w int) line {
	var of strings.Builder
	for _, k := range keys {
		of.WriteString(k.Help().Key + "\x00" + k.Help().Desc + "\x00")
	}
	if of.String() != l.of || w != l.w || th.look != l.look || l.line.Width == 0 {
		*l = keysLine{of.String(), w, th.look, footLine(th, keys, help, w)}
	}
	return l.line
}

// footLine shows the keys that count here, as many as there is room for; help is always among them. The library cuts a
// line with an ellipsis, or runs over it where that has no room: it gets what fits.
func footLine(th *theme, keys []key.Binding, help key.Binding, w int) line {
	used := keyWidth(help)
	var list []key.Binding
	for _, k := range keys {
		if used += keyWidth(k) + width(th.keys.ShortSeparator); used > w {
			break
		}
		list = append(list, entry(k.Help().Key, k.Help().Desc))
	}
	text := th.keys.ShortHelpView(append(list, help))
	return line{Text: text, Width: ansi.StringWidth(text)}
}

// entry is a key for the library's help, which leaves out those that answer to none: what typing does.
func entry(shown, does string) key.Binding {
	return key.NewBinding(key.WithKeys(shown), key.WithHelp(shown, does))
}

func keyWidth(k key.Binding) int { return width(k.Help().Key) + 1 + width(k.Help().Desc) }

// named gives a key other words where a screen has better ones.
func named(k key.Binding, shown, does string) key.Binding {
	k.SetHelp(shown, does)
	return k
}
