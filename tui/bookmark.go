package tui

import (
	"context"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"
)

// doomed is what a page of the book is asked to delete, and what it deleted last.
type doomed struct {
	id   string // of the record whose deletion was asked for once
	last *Entry // what ctrl+z brings back
}

// press acts on the keys that delete and bring back; not ok for any other key, which also forgets what was asked for.
// Where something is typed the delete key is the field's, unless nothing stands behind the cursor.
func (d *doomed) press(msg tea.KeyPressMsg, f *field, at *Entry) (a action, ok bool) {
	asked := d.id
	d.id = ""
	switch {
	case key.Matches(msg, bound.Restore):
		if d.last == nil {
			return refuse("nothing was deleted on this page",
				"brazebooth book list --deleted shows what was before"), true
		}
		return markRecord(*d.last, false), true
	case !key.Matches(msg, bound.Delete), msg.String() == "delete" && f.at() < len([]rune(f.String())):
		return nil, false
	case at == nil:
		return refuse("no record under the cursor", "pick a row with ↑ ↓"), true
	case asked != at.ID:
		d.id = at.ID
		return refuse("delete "+at.Name+"?",
			"the same key once more marks it as deleted; it stays in the history"), true
	}
	return markRecord(*at, true), true
}

// markRecord marks a record as deleted, or takes that back.
func markRecord(e Entry, deleted bool) action {
	return asking(func(ctx context.Context, k Keeper) action {
		if err := k.Mark(ctx, e.Kind, e.ID, deleted); err != nil {
			return bookFault("", err, "nothing was changed").said
		}
		return func(m *root) tea.Cmd { return m.marked(e, deleted) }
	})
}

// marked lists anew what stands on the page that asked.
func (m *root) marked(e Entry, deleted bool) tea.Cmd {
	page := &m.shelf
	if m.part.name() == pageRecords {
		page = &m.records
	}
	page.doomed.last = nil
	m.done = e.Name + ": back in the book"
	if deleted {
		page.doomed.last = &e
		m.done = e.Name + ": deleted; ctrl+z brings it back"
	}
	return page.find(m)
}
