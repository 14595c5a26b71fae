package tui

import (
	"fmt"
	"io"
	"strings"

	"charm.land/bubbles/v2/key"
	"charm.land/bubbles/v2/list"
	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
)

// listbox is a list of rows a line high, in pages, so that a step down costs the bytes of two rows. Rows are numbers:
// what they show is asked for as they are drawn. The zero listbox is empty.
type listbox struct {
	list  list.Model
	draws *rowDrawer
}

// rowDrawer is the list's own row renderer.
type rowDrawer struct{ row func(i int, chosen bool) line }

func (d *rowDrawer) Height() int                         { return 1 }
func (d *rowDrawer) Spacing() int                        { return 0 }
func (d *rowDrawer) Update(tea.Msg, *list.Model) tea.Cmd { return nil }
func (d *rowDrawer) Render(w io.Writer, m list.Model, i int, _ list.Item) {
	_, _ = io.WriteString(w, d.row(i, i == m.Index()).Text)
}

// numberedItem is a row of the list.
type numberedItem struct{}

func (numberedItem) FilterValue() string { return "" }

// set makes it a list of n rows; the cursor stays where it was, if there is a row.
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
	at := l.list.Index()
	items := make([]list.Item, n)
	for i := range items {
		items[i] = numberedItem{}
	}
	l.list.SetItems(items)
	l.goTo(at)
}

func (l *listbox) len() int { return len(l.list.Items()) }

// at is the row under the cursor; 0 where there is none.
func (l *listbox) at() int { return max(0, min(l.list.Index(), l.len()-1)) }

func (l *listbox) goTo(i int) { l.list.Select(max(0, min(i, l.len()-1))) }

// where says how many rows there are and on which one is.
func (l *listbox) where() string {
	if l.len() == 0 {
		return "none"
	}
	return fmt.Sprintf("%d of %d", l.at()+1, l.len())
}

// putWhere puts that at the end of a row of w columns, where there is room.
func (l *listbox) putWhere(th *theme, r *row, w int) {
	if where := l.where(); r.left() > width(where)+1 {
		r.to(w-width(where)).put(th.quiet, where)
	}
}

// moved acts on the keys that move the cursor, where they print nothing.
func (l *listbox) moved(press tea.KeyPressMsg, k *keyMap) bool {
	switch {
	case press.Text != "":
		return false
	case key.Matches(press, k.Up):
		l.goTo(l.at() - 1)
	case key.Matches(press, k.Down):
		l.goTo(l.at() + 1)
	case key.Matches(press, k.PageUp):
		l.goTo(l.at() - max(1, l.list.Height()))
	case key.Matches(press, k.PageDown):
		l.goTo(l.at() + max(1, l.list.Height()))
	case key.Matches(press, k.Top):
		l.goTo(0)
	case key.Matches(press, k.Bottom):
		l.goTo(l.len())
	default:
		return false
	}
	return true
}

// draw draws the page with the cursor in at most h lines.
func (l *listbox) draw(w, h int, row func(i int, chosen bool) line) block {
	if l.len() == 0 || h < 1 {
		return nil
	}
	at := l.list.Index()
	l.draws.row = row
	l.list.SetSize(w, min(h, l.len()))
	l.list.Select(at)
	var b block
	for text := range strings.SplitSeq(l.list.View(), "\n") {
		text = strings.TrimRight(text, " ")
		b.add(line{Text: text, Width: ansi.StringWidth(text)})
	}
	return b.fit(min(h, l.len()))
}
