package tui

import (
	"fmt"
	"io"
	"slices"

	"charm.land/bubbles/v2/key"
	"charm.land/bubbles/v2/list"
	tea "charm.land/bubbletea/v2"
)

// listbox is Bubbles' list with rows of one line, in pages, so that a step down sends only two rows. Rows are numbers;
// their text is asked for when they are drawn. The zero listbox is empty.
type listbox struct {
	list  list.Model
	draws *rowDrawer
}

type rowDrawer struct{ row func(i int, chosen bool) line }

func (d *rowDrawer) Height() int                         { return 1 }
func (d *rowDrawer) Spacing() int                        { return 0 }
func (d *rowDrawer) Update(tea.Msg, *list.Model) tea.Cmd { return nil }
func (d *rowDrawer) Render(w io.Writer, m list.Model, i int, _ list.Item) {
	_, _ = io.WriteString(w, d.row(i, i == m.Index()).Text)
}

type numberedItem struct{}

func (numberedItem) FilterValue() string { return "" }

// set makes it a list of n rows. The cursor stays where it was, if there is still a row.
func (l *listbox) set(n int) {
	if l.draws == nil {
		l.draws = &rowDrawer{}
		l.list = list.New(nil, l.draws, 1, 1)
		l.list.SetShowTitle(false)
		l.list.SetShowFilter(false)
		l.list.SetShowStatusBar(false)
		l.list.SetShowPagination(false)
		l.list.SetShowHelp(false)
		l.list.SetFilteringEnabled(false)
	}
	at := l.at()
	l.list.SetItems(slices.Repeat([]list.Item{numberedItem{}}, n))
	l.goTo(at)
}

func (l *listbox) len() int { return len(l.list.Items()) }

// at is the row under the cursor; 0 if there is none.
func (l *listbox) at() int { return l.list.Index() }

func (l *listbox) goTo(i int) {
	if i = min(i, l.len()-1); i > 0 {
		l.list.Select(i)
	} else {
		l.list.GoToStart()
	}
}

// search is the field above a list: a question, the typed text or a hint, the number of the row and of all rows; and
// the cursor's column.
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
	if l.len() == 0 {
		return "none"
	}
	return fmt.Sprintf("%d of %d", l.at()+1, l.len())
}

// moved handles the keys that move the cursor and print nothing.
func (l *listbox) moved(press tea.KeyPressMsg) bool {
	switch {
	case press.Text != "":
		return false
	case key.Matches(press, bound.Up):
		l.list.CursorUp()
	case key.Matches(press, bound.Down):
		l.list.CursorDown()
	case key.Matches(press, bound.Top), l.list.Paginator.OnFirstPage() && key.Matches(press, bound.PageUp):
		l.list.GoToStart()
	case key.Matches(press, bound.Bottom), l.list.Paginator.OnLastPage() && key.Matches(press, bound.PageDown):
		l.list.GoToEnd()
	case key.Matches(press, bound.PageUp):
		l.list.PrevPage()
	case key.Matches(press, bound.PageDown):
		l.list.NextPage()
	default:
		return false
	}
	return true
}

// finder is a field above the list of what it finds.
type finder struct {
	field field
	list  listbox
}

// edit handles the keys of the list and of the field, and reports whether the typed text changed.
func (p *finder) edit(press tea.KeyPressMsg) bool {
	before := p.field.String()
	switch { // home and end belong to the field while it has text
	case (before == "" || !key.Matches(press, bound.Top, bound.Bottom)) && p.list.moved(press):
	case press.String() == "esc":
		p.field.clear()
	default:
		p.field.edit(press)
	}
	return p.field.String() != before
}

// draw draws the page with the cursor in at most h lines.
func (l *listbox) draw(h int, row func(i int, chosen bool) line) block {
	if h = min(h, l.len()); h < 1 {
		return nil
	}
	l.draws.row = row
	l.list.SetHeight(h)
	return linesOf(l.list.View()).fit(h)
}

// clicked puts the cursor on the clicked line, and reports whether it was there already.
func (l *listbox) clicked(y int) bool {
	from, to := l.list.Paginator.GetSliceBounds(l.len())
	if y < 0 || from+y >= to {
		return false
	}
	was := l.at()
	l.goTo(from + y)
	return l.at() == was
}

// settingKey says what a key does to a setting: it picks another one, or turns it by a step. A keypad has a point
// instead of an arrow.
func settingKey(press tea.KeyPressMsg) (pick, turn int) {
	by := map[string][2]int{"left": {-1, 0}, "right": {1, 0}, ".": {1, 0}, ",": {1, 0}, "up": {0, 1}, "+": {0, 1},
		"=": {0, 1}, "down": {0, -1}, "-": {0, -1}}[press.String()]
	return by[0], by[1]
}
