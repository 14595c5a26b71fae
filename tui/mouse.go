package tui

import (
	tea "charm.land/bubbletea/v2"
)

// clicker is a screen on which something can be clicked: x and y are cells of its own drawing.
type clicker interface {
	click(m *root, x, y int) action
}

// mouse acts on a click, and on the wheel as on the arrows up and down; on the card a wheel would turn settings, so
// there it does nothing. A mouse is never needed.
func (m *root) mouse(msg tea.MouseMsg) tea.Cmd {
	at := msg.Mouse()
	switch msg.(type) {
	case tea.MouseClickMsg:
		if c, ok := m.front().(clicker); ok && at.Button == tea.MouseLeft {
			m.notice, m.done = nil, ""
			return m.act(c.click(m, at.X-m.margin(), at.Y-m.above))
		}
	case tea.MouseWheelMsg:
		if m.front().about(m).fills || m.front() == screen(&m.card) {
			return nil
		}
		switch at.Button {
		case tea.MouseWheelUp:
			return m.press(tea.KeyPressMsg{Code: tea.KeyUp})
		case tea.MouseWheelDown:
			return m.press(tea.KeyPressMsg{Code: tea.KeyDown})
		}
	}
	return nil
}

// click goes to a chip or a dial; on the one under the cursor it does what enter does.
func (p *cardPage) click(m *root, x, y int) action {
	l := m.cardLayout()
	at := -1
	switch {
	case y < l.chips:
		at = p.chips(m, false).At(x, m.w-2*m.margin(), l.chips)
	case y < l.chips+l.dials:
		from, _ := p.span(dialGroup)
		n := len(p.dials(m))
		if n == 0 || x >= l.left {
			return nil
		}
		at = from + min(n-1, max(0, x)*n/l.left)
	}
	if at < 0 || at >= len(p.rows) || p.typing {
		return nil
	}
	if at == p.at {
		return p.press(m, tea.KeyPressMsg{Code: tea.KeyEnter})
	}
	p.goTo(at)
	return nil
}

// click goes to a row of the list; on the one under the cursor it chooses.
func (p *picker) click(m *root, _, y int) action {
	return p.list.clicked(y-p.first, func() action { p.tryOut(&m.session); return nil }, p.on)
}

// click goes to a row of the list; on the one under the cursor it opens.
func (p *restPage) click(m *root, _, y int) action {
	return p.list.clicked(y-2, func() action { return nil }, func() action {
		return p.press(m, tea.KeyPressMsg{Code: tea.KeyEnter})
	})
}
