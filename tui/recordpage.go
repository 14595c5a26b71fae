package tui

import (
	"context"

	tea "charm.land/bubbletea/v2"
)

// openRecord asks for all there is of a record.
func openRecord(e Entry) action {
	return asking(func(m *root) func(context.Context, Keeper) action {
		units := m.units.Lead()
		return func(ctx context.Context, k Keeper) action {
			lines, err := k.Record(ctx, e.ID, units)
			return func(m *root) tea.Cmd { m.recordRead(e.Kind+" "+e.Name, lines, err); return nil }
		}
	})
}

// recordRead opens a record over the page that asked, if that is still there.
func (m *root) recordRead(name string, lines []string, err error) {
	if !m.isOpen(&m.part) || m.part.name() != pageRecords {
		return
	}
	if err != nil {
		m.notice = bookFault("", err, "the list stays")
		return
	}
	m.read(name, func(th *theme, w int) block {
		var b block
		for _, l := range lines {
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
