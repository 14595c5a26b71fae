package tui

import (
	"fmt"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"
)

// listbox is a cursor in rows a line high, shown in pages, so that a step down costs the bytes of two rows. Rows are
// numbers: what they show is asked for as they are drawn. The zero listbox is empty.
type listbox struct {
	rows, cursor int
	high         int // lines of the page that was drawn last
}

// set makes it a list of n rows; the cursor stays where it was, if there is a row.
func (l *listbox) set(n int) {
	l.rows = n
	l.goTo(l.cursor)
}

// at is the row under the cursor; 0 where there is none.
func (l *listbox) at() int { return l.cursor }

func (l *listbox) goTo(i int) { l.cursor = max(0, min(i, l.rows-1)) }

// search is the field over a list: a question, what is typed, a hint where nothing is, and on which row one is of how
// many; and the cursor's column.
func (l *listbox) search(th *theme, f *field, question, hint string, w int) (line, int) {
	r, x := f.ask(th, question, w)
	if f.empty() && r.left() > width(hint)+1 {
		r.blank(1).put(th.quiet, hint)
	}
	if where := l.where(); r.left() > width(where)+1 {
		r.to(w-width(where)).put(th.quiet, where)
	}
	return r.line(), x
}

func (l *listbox) where() string {
	if l.rows == 0 {
		return "none"
	}
	return fmt.Sprintf("%d of %d", l.cursor+1, l.rows)
}

// moved acts on the keys that move the cursor, where they print nothing.
func (l *listbox) moved(press tea.KeyPressMsg) bool {
	switch {
	case press.Text != "":
		return false
	case key.Matches(press, bound.Up):
		l.goTo(l.cursor - 1)
	case key.Matches(press, bound.Down):
		l.goTo(l.cursor + 1)
	case key.Matches(press, bound.PageUp):
		l.goTo(l.cursor - max(1, l.high))
	case key.Matches(press, bound.PageDown):
		l.goTo(l.cursor + max(1, l.high))
	case key.Matches(press, bound.Top):
		l.goTo(0)
	case key.Matches(press, bound.Bottom):
		l.goTo(l.rows)
	default:
		return false
	}
	return true
}

// found is moved beside a field: the first and the last row are the field's keys while something stands in it.
func (l *listbox) found(press tea.KeyPressMsg, f *field) bool {
	return (f.empty() || !key.Matches(press, bound.Top, bound.Bottom)) && l.moved(press)
}

// finder is a field over the list of what it finds.
type finder struct {
	field field
	list  listbox
}

// edit acts on the keys that move in the list and those of the field, and reports whether something else is typed now.
func (p *finder) edit(press tea.KeyPressMsg) bool {
	before := p.field.String()
	switch {
	case p.list.found(press, &p.field):
	case press.String() == "esc":
		p.field.clear()
	default:
		p.field.edit(press)
	}
	return p.field.String() != before
}

// draw draws the page with the cursor in at most h lines.
func (l *listbox) draw(h int, row func(i int, chosen bool) line) (b block) {
	if l.high = min(h, l.rows); l.high < 1 {
		return nil
	}
	from := l.cursor / l.high * l.high
	for i := from; i < min(from+l.high, l.rows); i++ {
		b.add(row(i, i == l.cursor))
	}
	return b.fit(l.high)
}

// clicked puts the cursor on a line of what is drawn, or chooses the row that it is on already.
func (l *listbox) clicked(y int, moves, chooses func() action) action {
	at := l.cursor
	if l.high > 0 {
		at = l.cursor/l.high*l.high + y
	}
	switch {
	case y < 0 || y >= l.high || at >= l.rows:
		return nil
	case at == l.cursor:
		return chooses()
	}
	l.goTo(at)
	return moves()
}

// handed is what a key does to what a hand sets: it picks another one, or turns it by a step; a keypad has a point in
// place of an arrow.
func handed(press tea.KeyPressMsg) (pick, turn int) {
	switch press.String() {
	case "left":
		return -1, 0
	case "right", ".", ",":
		return 1, 0
	case "up", "+", "=":
		return 0, 1
	case "down", "-":
		return 0, -1
	}
	return 0, 0
}
