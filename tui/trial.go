package tui

import (
	"context"

	tea "charm.land/bubbletea/v2"
)

// keepTrial sends the last bead to the book, once.
func keepTrial(acceptable bool) action {
	return withBook(func(m *root) tea.Cmd { return m.keepTrial(acceptable) })
}

func (m *root) keepTrial(acceptable bool) tea.Cmd {
	n := len(m.fix.tries)
	switch {
	case n == 0:
		m.notice = &fault{"no test bead was told of yet", "enter: say what the bead shows"}
		return nil
	case m.fix.kept == n:
		m.notice = &fault{"this bead is kept already", "lay the next one"}
		return nil
	}
	t := m.fix.tries[n-1]
	verdict := "" // as the bead looks
	if acceptable {
		verdict = "acceptable"
	}
	m.fix.kept, m.fix.keeping = n, true
	k, source, row := m.keeper, m.meter.kept, m.fix.row
	return func() tea.Msg {
		said, err := k.Trial(context.Background(), t.Job, t.Seen, verdict, source)
		return answered{func(m *root) tea.Cmd {
			if row == m.fix.row {
				m.fix.keeping = false
			}
			if err == nil {
				m.done = said
				return nil
			}
			if row == m.fix.row {
				m.fix.kept = n - 1
			}
			m.notice = bookFault("not kept: ", err, "k tries again")
			return nil
		}}
	}
}
