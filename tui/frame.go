package tui

import (
	"fmt"

	tea "charm.land/bubbletea/v2"
)

// draw lays the whole screen out: title and path on top, keys at the bottom, the open screen between.
func (m *root) draw() tea.View {
	v := tea.View{AltScreen: true, WindowTitle: "brazebooth"}
	if m.w < leastWidth || m.h < leastHeight {
		v.Content = m.tooSmall().String()
		return v
	}
	if _, fills := m.front().(filler); fills {
		b, _ := m.front().view(m, m.w, m.h)
		v.Content = b.String()
		return v
	}
	top := m.top()
	foot := m.foot()
	body, cursor := m.front().view(m, m.w, m.h-len(top)-len(foot))
	if cursor != nil {
		cursor.Y += len(top)
		v.Cursor = cursor
	}
	top.addAll(body.fit(m.h - len(top) - len(foot)))
	top.addAll(foot)
	v.Content = top.String()
	return v
}

// tooSmall is shown where not even the five figures fit.
func (m *root) tooSmall() block {
	var b block
	if m.w < 1 || m.h < 1 {
		return b
	}
	b.say(m.th.plain, 0, "Too small: this needs 40 columns and 14 lines. ctrl+c quits.", m.w)
	return b.fit(min(len(b), m.h))
}

// top is the title, the path and, where there is room, the rest of the job.
func (m *root) top() block {
	c := m.shown()
	if m.practising() {
		return block{practiceTitle(&m.th, m.units, m.w)}
	}
	b := append(block{titleLine(&m.th, &m.session, m.w)}, pathLines(&m.th, &m.session, c, m.step(), m.w)...)
	if m.w >= narrowWidth && m.h >= 20 {
		b.addAll(restLines(&m.th, &m.session, c, m.w))
	}
	if m.h >= 16 {
		b.skip()
	}
	return b
}

// foot is the one place for what went wrong or was done, and the keys.
func (m *root) foot() block {
	var b block
	switch {
	case m.notice != nil:
		m.say(&b, m.notice)
	case m.done != "":
		b.say(m.th.good, 0, "✓ "+m.done, m.w)
	case m.old && m.session.fault != nil:
		m.say(&b, m.session.fault)
	case m.beat.stop != nil && !m.isOpen(&m.beat):
		b.say(m.th.quiet, 0, fmt.Sprintf("on and off are rough until their heat is followed: %.0f %%", 100*m.beat.share()), m.w)
	default:
		b.skip()
	}
	b.add(footLine(&m.th, m.front().about(m).keys, named(m.keys.Help, "f1", "help"), m.w))
	return b
}

func (m *root) say(b *block, f *fault) {
	text := "▲ " + f.what
	if f.hint != "" {
		text += " – " + f.hint
	}
	b.say(m.th.watch, 0, text, m.w)
}
