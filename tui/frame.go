package tui

import (
	"fmt"

	tea "charm.land/bubbletea/v2"
)

// draw lays the whole terminal out: the verdict on top, the keys at the bottom, the open screen between.
func (m *root) draw() tea.View {
	v := tea.View{AltScreen: true, WindowTitle: "brazebooth", MouseMode: tea.MouseModeCellMotion}
	if m.w < leastWidth || m.h < leastHeight {
		v.Content = m.tooSmall().String()
		return v
	}
	var foot block
	if _, fills := m.front().(filler); !fills {
		foot = m.foot()
	}
	b, cursor := m.body(m.h - len(foot))
	v.Content, v.Cursor = append(b, foot...).String(), cursor
	return v
}

// body is the open screen under its strip, without the keys, in so many lines.
func (m *root) body(h int) (b block, cursor *tea.Cursor) {
	if _, fills := m.front().(filler); fills {
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
func (m *root) tooSmall() block {
	var b block
	if m.w < 1 || m.h < 1 {
		return b
	}
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
		b.say(m.th.quiet, 0, fmt.Sprintf("on and off are rough until their heat is followed: %.0f %%",
			100*m.beat.share()), w)
	}
	return b
}
