package tui

import (
	"context"
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
)

// rowLine is one record: its name, its date and a short description; or an offer of the page.
func (p *bookPage) rowLine(th *theme, i int, chosen bool, w int) line {
	r, name := newRow(w), th.under(chosen, th.bold).exact()
	if n := i - len(p.rows); n >= 0 {
		text := "keep the card as “" + p.field.String() + "”"
		if p.kind == "" {
			text = "enter " + forms[n].title
		}
		return r.put(name, text).line()
	}
	e, text := &p.rows[i], ""
	named, col := p.columns(w)
	if p.kind == "" {
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
	if p.kind == "" {
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
		tall = max(tall, len(wrap(p.unshown(&p.rows[i], w), w)))
	}
	return b.fit(min(tall, most))
}

// deletes handles the keys that delete and restore a record. ok is false for any other key, which also cancels a first
// press of delete. While text is typed, the delete key belongs to the field unless there is nothing after the cursor.
func (p *bookPage) deletes(msg tea.KeyPressMsg) (a action, ok bool) {
	asked, at, text := p.doomed, p.entry(), []rune(p.field.String())
	p.doomed = ""
	switch {
	case key.Matches(msg, bound.Restore) && p.gone == nil:
		return refuse("nothing was deleted on this page", "brazebooth book list --deleted shows what was before"), true
	case key.Matches(msg, bound.Restore):
		return p.mark(p.gone, false), true
	case !key.Matches(msg, bound.Delete), msg.String() == "delete" && p.field.at() < len(text):
		return nil, false
	case at == nil:
		return refuse("no record under the cursor", "pick a row with ↑ ↓"), true
	case asked != at.ID:
		p.doomed = at.ID
		return refuse("delete "+at.Name+"?",
			"the same key once more marks it as deleted; it stays in the history"), true
	}
	return p.mark(at, true), true
}

// mark deletes or restores a record, and then lists the records again.
func (p *bookPage) mark(which *Entry, deleted bool) action {
	e := *which
	return asking(func(ctx context.Context, k Keeper) (Entry, error) { return e, k.Mark(ctx, e.Kind, e.ID, deleted) },
		func(m *root, e Entry, err error) tea.Cmd {
			if err != nil {
				bookFault("", err, "nothing was changed").said(m)
				return p.findAgain(m)
			}
			m.shelf.safe = calc.Job{} // it may be the card on the screen
			p.gone, m.done = nil, e.Name+": back in the book"
			if deleted {
				p.gone, m.done = &e, e.Name+": deleted; ctrl+z brings it back"
			}
			return p.find(m)
		})
}

// listed is the page of the book that is open.
func (m *root) listed() *bookPage {
	if m.part.name() == pageRecords {
		return &m.records
	}
	return &m.shelf
}
