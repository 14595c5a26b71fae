package tui

import (
	"context"
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"
)

// rowLine is one record: its name, its date and a short description; or an offer of the page.
func (p *bookPage) rowLine(th *theme, i int, chosen bool, w int) line {
	r, name := newRow(w), th.under(chosen, th.bold).exact()
	if n := i - len(p.rows); n >= 0 {
		text := "keep the card as “" + p.field.String() + "”"
		if p.all {
			text = "enter " + forms[n].title
		}
		return r.put(name, text).line()
	}
	e, text := &p.rows[i], ""
	named, col := p.columns(w)
	if p.all {
		r.put(th.quiet, e.Kind).to(kindColumns)
	}
	switch room := w - col; { // the sentence below shows the rest
	case room >= len(e.At)+8:
		text = e.At + "  " + e.Line
	case room >= len(e.At):
		text = e.At
	}
	return r.put(name, cut(e.Name, named)).to(col).put(th.quiet, text).line()
}

// kindColumns is the width of the kind of a record before its name.
const kindColumns = 10

// columns is the width of a record's name, and the column where its description begins.
func (p *bookPage) columns(w int) (named, line int) {
	line = min(26, w/2)
	if p.all {
		return line - 1, line + kindColumns
	}
	return line - 1, line
}

// unshown is the text of a record for which its row has no room, "" if the row shows all of it.
func (p *bookPage) unshown(e *Entry, w int) string {
	var parts []string
	named, col := p.columns(w)
	if width(e.Name) > named {
		parts = append(parts, e.Name)
	}
	if line := e.At + "  " + e.Line; col+width(line) > w {
		parts = append(parts, line)
	}
	return strings.Join(parts, "  ")
}

// unshownLines is the text that the row under the cursor does not show. It has the same number of lines for every row,
// at most most, so that the list above does not move.
func (p *bookPage) unshownLines(th *theme, w, most int) (b block) {
	if e := p.entry(); e != nil {
		b.say(th.plain.exact(), 0, p.unshown(e, w), w)
	}
	tall := 0
	for i := range p.rows {
		if text := p.unshown(&p.rows[i], w); text != "" {
			tall = max(tall, len(wrap(text, w)))
		}
	}
	return b.fit(min(tall, most))
}

// deletion holds which record a page is asked to delete, and which one it deleted last.
type deletion struct {
	id   string // of the record for which delete was pressed once
	last *Entry // restored by ctrl+z
}

// press handles the keys that delete and restore. ok is false for any other key, which also cancels a first press of
// delete. While text is typed, the delete key belongs to the field unless there is nothing after the cursor.
func (d *deletion) press(msg tea.KeyPressMsg, f *field, at *Entry) (a action, ok bool) {
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

func markRecord(e Entry, deleted bool) action {
	return func(m *root) tea.Cmd {
		return asking(m, func(ctx context.Context, k Keeper) (Entry, error) {
			return e, k.Mark(ctx, e.Kind, e.ID, deleted)
		}, func(e Entry, err error) tea.Cmd {
			if err != nil {
				return bookFault("", err, "nothing was changed").said(m)
			}
			return m.marked(e, deleted)
		})
	}
}

// marked lists the page's records again after one was deleted or restored.
func (m *root) marked(e Entry, deleted bool) tea.Cmd {
	page := &m.shelf
	if m.part.name() == pageRecords {
		page = &m.records
	}
	page.deletion.last = nil
	m.done = e.Name + ": back in the book"
	if deleted {
		page.deletion.last = &e
		m.done = e.Name + ": deleted; ctrl+z brings it back"
	}
	return page.find(m)
}
