package tui

import (
	"fmt"
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
)

// draw lays the whole terminal out: the verdict on top, the keys at the bottom, the open screen between.
func (m *root) draw() tea.View {
	v := tea.View{AltScreen: true, WindowTitle: "brazebooth", MouseMode: tea.MouseModeCellMotion}
	if m.w < leastWidth || m.h < leastHeight {
		v.Content = m.tooSmall().String()
		return v
	}
	var foot block
	if !m.front().about(m).fills {
		foot = m.foot()
	}
	b, cursor := m.body(m.h - len(foot))
	if len(foot) > 0 {
		foot = m.foot() // only now is known what can be scrolled
	}
	v.Content, v.Cursor = append(b, foot...).String(), cursor
	return v
}

// body is the open screen under its strip, without the keys, in so many lines.
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

// margin is the columns left at either side of a screen.
func (m *root) margin() int {
	if m.w < narrowWidth {
		return 0
	}
	return 1
}

// tooSmall is shown where not even three figures fit.
func (m *root) tooSmall() (b block) {
	b.say(m.th.plain, 0, fmt.Sprintf("Too small: this needs %d columns and %d lines. ctrl+c quits.", leastWidth,
		leastHeight), m.w)
	return b.fit(min(len(b), m.h))
}

// foot is the one place for what went wrong or was done, and the keys. On a low terminal what is said stands in the
// place of the keys.
func (m *root) foot() block {
	w := m.w - 2*m.margin()
	b := m.news(w)
	if m.h >= 20 || len(b) == 0 {
		b.add(m.foots.draw(&m.th, m.front().about(m).keys, w))
	}
	return b.indent(m.margin())
}

// news is what went wrong, what was done, what is being waited for; nothing where all is still.
func (m *root) news(w int) (b block) {
	switch {
	case m.notice != nil:
		b.fault(&m.th, m.notice, w)
	case m.done != "":
		b.say(m.th.good, 0, "✓ "+m.done, w)
	case m.old && m.session.fault != nil:
		b.fault(&m.th, m.session.fault, w)
	case m.beat.stop != nil && !m.isOpen(&m.beat):
		b.say(m.th.quiet, 0, m.beat.rough(), w)
	case m.beat.gave && m.front() == screen(&m.card) && m.unsettled("arc_on"):
		b.say(m.th.quiet, 0, "the times are a rough estimate: t follows the heat", w)
	}
	return b
}

// top is the strip with the verdict: in full on card and booth view, on one line over the other screens.
func (m *root) top() block {
	lines := 1
	if m.practising() { // its own verdict: nothing of it is the card's
		lines = stripLines(m.w, m.h)
		return append(block{}, m.lamp.Draw(m.drill.strip(m.units), m.th.Theme, m.w, lines)...)
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

// The smallest terminal that holds a choice and the figures.
const (
	leastWidth  = 32
	leastHeight = 10
)

// Least is the smallest terminal that the screens fit.
func Least() (width, height int) { return leastWidth, leastHeight }

// Widths at which the screen is laid out differently.
const (
	narrowWidth = 60 // below: one thing at a time
	besideWidth = 78 // from here the card stands beside the list
	wideWidth   = 98 // from here the reasons stand beside the card
)

// textWidth is how wide a text to read is at most.
const textWidth = 88

// lowHeight is the height below which lists and figures go before what explains them.
const (
	lowHeight = 18 // of the terminal
	lowBody   = 13 // of the open screen in it
)
