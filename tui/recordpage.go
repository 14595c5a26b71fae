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

// readRecord asks for all there is of a record.
func (m *root) readRecord(e Entry) tea.Cmd {
	k, units := m.keeper, m.units.Lead()
	return func() tea.Msg {
		lines, err := k.Record(context.Background(), e.ID, units)
		return recordRead{e.Kind + " " + e.Name, lines, err}
	}
}

// showRecord opens it over the page that asked, if that is still there.
func (m *root) showRecord(msg recordRead) {
	if !m.onPart || m.part.name() != pageRecords {
		return
	}
	if msg.err != nil {
		m.notice = bookFault("", msg.err, "the list stays")
		return
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
}
