package tui

import (
	"context"

	tea "charm.land/bubbletea/v2"
)

// recordRead is the book's answer to a record that is to be read.
type recordRead struct {
	name  string
	lines []string
	err   error
}

// openRecord asks for all there is of a record.
func openRecord(e Entry) action {
	return withBook(func(m *root) tea.Cmd {
		k, units := m.keeper, m.units.Lead()
		return func() tea.Msg {
			lines, err := k.Record(context.Background(), e.ID, units)
			return recordRead{e.Kind + " " + e.Name, lines, err}
		}
	})
}

// tell opens it over the page that asked, if that is still there.
func (msg recordRead) tell(m *root) (tea.Cmd, bool) {
	if !m.isOpen(&m.part) || m.part.name() != pageRecords {
		return nil, true
	}
	if msg.err != nil {
		m.notice = bookFault("", msg.err, "the list stays")
		return nil, true
	}
	m.read(msg.name, func(th *theme, w int) block {
		var b block
		for _, l := range msg.lines {
			switch {
			case l == "":
				b.skip()
			case width(l) <= w: // its columns stay
				b.add(newRow(w).put(th.plain, l).line())
			default:
				b.say(th.plain, 0, l, w)
			}
		}
		return b
	})
	return nil, true
}
