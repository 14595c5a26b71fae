package tui

import (
	"fmt"
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"brazebooth/tui/canvas"
)

// draw lays the whole terminal out: the verdict at the top, the keys at the bottom, the open screen between.
func (m *root) draw() tea.View {
	v := tea.View{AltScreen: true, WindowTitle: "brazebooth", MouseMode: tea.MouseModeCellMotion}
	if m.w < leastWidth || m.h < leastHeight {
		var b block
		b.say(m.th.plain, 0, fmt.Sprintf("Too small: this needs %d columns and %d lines. ctrl+c quits.", leastWidth,
			leastHeight), m.w)
		v.Content = b.fit(min(len(b), m.h)).String()
		return v
	}
	var foot block
	if !m.front().about(m).fills {
		foot = m.foot()
	}
	b, cursor := m.body(m.h - len(foot))
	if len(foot) > 0 {
		foot = m.foot() // only now it is known whether something can be scrolled
	}
	v.Content, v.Cursor = append(b, foot...).String(), cursor
	return v
}

// body is the open screen below its strip, without the keys, on this many lines.
func (m *root) body(h int) (b block, cursor *tea.Cursor) {
	if m.front().about(m).fills {
		b, _ = m.front().view(m, m.w, h)
		return b.fit(h), nil
	}
	b = m.top()
	m.above = len(b)
	side := m.margin()
	if m.front() == screen(&m.booth) {
		side = 0 // its letters need the columns
	}
	body, cursor := m.front().view(m, m.w-2*side, h-m.above)
	if cursor != nil {
		cursor.X, cursor.Y = cursor.X+side, cursor.Y+m.above
	}
	b.addAll(body.fit(h - m.above).indent(side))
	return b, cursor
}

// margin is the columns left free at either side of a screen.
func (m *root) margin() int {
	if m.w < narrowWidth {
		return 0
	}
	return 1
}

// foot shows what went wrong or was done, and the keys. On a low terminal such a message replaces the keys.
func (m *root) foot() block {
	w := m.w - 2*m.margin()
	b := m.news(w)
	if m.h >= 20 || len(b) == 0 {
		b.addAll(block(m.foots.Draw(keysPart{&m.th, m.front().about(m).keys}, m.th.Theme, w, 1)))
	}
	return b.indent(m.margin())
}

// news is what went wrong, what was done, or what is being waited for; empty if there is nothing.
func (m *root) news(w int) (b block) {
	switch {
	case m.notice != nil:
		b.fault(&m.th, m.notice, w)
	case m.done != "":
		b.say(m.th.good, 0, "✓ "+m.done, w)
	case m.session.fault != nil:
		b.fault(&m.th, m.session.fault, w)
	case m.beat.stop != nil && !m.isOpen(&m.beat):
		b.say(m.th.quiet, 0, m.beat.rough(), w)
	case m.beat.cancelled && m.front() == screen(&m.card) && m.unsettled("arc_on"):
		b.say(m.th.quiet, 0, "the times are a rough estimate: t follows the heat", w)
	}
	return b
}

// top is the strip with the verdict: in full on the card and in the booth view, on one line over the other screens.
func (m *root) top() block {
	lines := 1
	if m.isOpen(&m.drill) { // practice has its own verdict, which is not the card's
		lines = stripLines(m.w, m.h)
		return append(block{}, m.lamp.Draw(m.drill.strip(m.Units), m.th.Theme, m.w, lines)...)
	}
	if m.front().about(m).full {
		lines = stripLines(m.w, m.h)
	}
	b := append(block{}, m.lamp.Draw(m.strip(), m.th.Theme, m.w, lines)...)
	if lines == 1 && m.h >= 20 {
		b.skip()
	}
	return b
}

// keysPart is the keys' line, drawn anew only when it changes, which is less often than the screen above it.
type keysPart struct {
	of   *theme
	keys string
}

func (p keysPart) Draw(_ *canvas.Theme, w, _ int) canvas.Block {
	return canvas.Block{footLine(p.of, p.keys, "f1 help", w)}
}

// footLine shows the keys of this screen, as many as there is room for; the last one is always shown. The library cuts
// a line with an ellipsis, or overruns if that has no room, so it is given only what fits.
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

// keyGap is between two keys.
const keyGap = "  "

// entry is a key for the library's help, which leaves out bindings without keys.
func entry(shown, does string, _ bool) key.Binding {
	return key.NewBinding(key.WithKeys(shown), key.WithHelp(shown, does))
}

// The smallest terminal, which has room for a choice and the figures.
const (
	leastWidth  = 32
	leastHeight = 10
)

// Least is the smallest terminal that the screens fit.
func Least() (width, height int) { return leastWidth, leastHeight }

// Widths from which the screen has another layout.
const (
	narrowWidth = 60 // below this: one thing at a time
	besideWidth = 78 // from here on the card is beside the list
	wideWidth   = 98 // from here on the reasons are beside the card
)

// textWidth is the largest width of text to read.
const textWidth = 88

// lowHeight is the height below which lists and figures are more important than their explanations.
const (
	lowHeight = 18 // of the terminal
	lowBody   = 13 // of the open screen in it
)
