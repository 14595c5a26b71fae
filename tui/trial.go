package tui

import (
	"context"

	tea "charm.land/bubbletea/v2"
)

// trialKept is the book's answer to a test bead.
type trialKept struct {
	row  int // of beads
	bead int
	said string
	err  error
}

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
		return trialKept{row, n, said, err}
	}
}

func (msg trialKept) tell(m *root) (tea.Cmd, bool) {
	if msg.row == m.fix.row {
		m.fix.keeping = false
		if msg.err != nil {
			m.fix.kept = msg.bead - 1
		}
	}
	if msg.err != nil {
		m.notice = bookFault("not kept: ", msg.err, "k tries again")
		return nil, true
	}
	m.done = msg.said
	return nil, true
}
