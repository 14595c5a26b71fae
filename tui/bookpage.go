package tui

import (
	"context"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
)

// bookPage finds saved cards while the user types, opens one, and saves the present card under the typed name. Or it
// finds records of every kind and shows one.
type bookPage struct {
	finder
	kind  string // of the records that it finds; "" for every kind, only to read
	looks bool   // the user may only read
	rows  []Entry
	run   int // number of the latest search: answers of earlier ones are dropped
	err   error
	busy  bool
	safe  calc.Job // as it was saved or opened last: opening another card loses nothing
	sure  string   // the card that is opened even if the present one is not saved

	doomed string // id of the record for which delete was pressed once
	gone   *Entry // the record that was deleted last, restored by ctrl+z
}

func (p *bookPage) find(m *root) tea.Cmd { return p.search(m, p.found) }

// findAgain is find after a failure: another booth may have changed what is listed. If that fails too, the list stays.
func (p *bookPage) findAgain(m *root) tea.Cmd {
	return p.search(m, func(run int, rows []Entry, err error) {
		if run == p.run && err != nil {
			p.busy = false
			return
		}
		p.found(run, rows, err)
	})
}

func (p *bookPage) search(m *root, found func(run int, rows []Entry, err error)) tea.Cmd {
	if m.Book == nil {
		return nil
	}
	p.run++
	p.busy = true
	run, text := p.run, p.field.String()
	return m.act(asking(func(ctx context.Context, k Keeper) ([]Entry, error) { return k.List(ctx, p.kind, text) },
		func(_ *root, rows []Entry, err error) tea.Cmd { found(run, rows, err); return nil }))
}

func (p *bookPage) found(run int, rows []Entry, err error) {
	if run != p.run {
		return
	}
	p.rows, p.err, p.busy = rows, err, false
	last := len(p.rows) // the offers below them are only reached with the arrows
	if last == 0 {
		last = p.lines()
	}
	at := p.list.at()
	p.list.set(p.lines())
	p.list.goTo(min(at, last-1))
}

// lines is how many rows there are: the found records, and a row to save under the typed name.
func (p *bookPage) lines() int {
	n := len(p.rows) + len(p.forms())
	if p.kind != "" && !p.looks && !p.field.empty() { // the text can be a name for the card
		n++
	}
	return n
}

// forms are the records that can be entered from this page.
func (p *bookPage) forms() []recordKind {
	if p.kind != "" || p.looks {
		return nil
	}
	return forms[:]
}

// looksOnly reports whether the book refuses to save anything for this user, if it can tell.
func looksOnly(k Keeper) bool {
	l, ok := k.(interface{ LooksOnly() bool })
	return ok && l.LooksOnly()
}

// lookOnly is shown to a user who may read the book but save nothing.
var lookOnly = fault{"this key may look, not keep", "ask who runs the server to put it among the writers"}

// entry is the saved card under the cursor; nil on the row that saves.
func (p *bookPage) entry() *Entry {
	if i := p.list.at(); i < len(p.rows) {
		return &p.rows[i]
	}
	return nil
}

func (p *bookPage) about(m *root) about {
	keys := p.field.pagesKey() + "  ↑↓ pick  esc back"
	switch {
	case p.kind == "":
		keys = "enter read" + keys
	case p.looks:
		keys = "enter open" + keys
	case m.w < narrowWidth: // the way back is among the first keys
		keys = "enter open  esc back" + p.field.pagesKey() + "  ↑↓ pick"
	default:
		keys = "enter open, or keep" + keys
	}
	return about{help: "in the book", keys: keys}
}

func (p *bookPage) press(_ *root, msg tea.KeyPressMsg) action {
	if a, ok := p.deletes(msg); ok {
		return a
	}
	switch {
	case key.Matches(msg, bound.On) && p.busy:
		return refuse("still looking", "enter once more when the list is complete")
	case key.Matches(msg, bound.On):
		if e := p.entry(); e != nil && p.kind == "" {
			return openRecord(*e)
		} else if e != nil {
			return loadCard(*e)
		}
		if i := p.list.at() - len(p.rows); i < len(p.forms()) {
			return withBook(opening(&recordForm{of: &forms[i], form: form{rows: forms[i].fields}}))
		}
		if p.looks {
			return lookOnly.said
		}
		if name := p.field.trimmed(); name != "" {
			return keepCard(name)
		}
		return refuse("a card without a name", "type one: tank lid")
	case p.field.empty() && turnBy(msg) != 0:
		return turnPage(turnBy(msg))
	case p.field.empty() && key.Matches(msg, bound.Back):
		return goBack
	case p.edit(msg): // a new search, from its first row
		p.list.set(p.lines())
		p.list.goTo(0)
		return withBook(p.find)
	}
	return nil
}

func (p *bookPage) view(m *root, w, h int) (b block, _ *tea.Cursor) {
	th := &m.th
	if m.Book == nil {
		b.say(th.plain, 0, "There is no book here: start the program with one, brazebooth --book FILE.", w)
		return b, nil
	}
	ask, hint := "find or name: ", "type to find, or a name to keep the card"
	if p.looks {
		ask, hint = "find: ", "type to find; "+lookOnly.what
	}
	if p.kind == "" && !p.looks {
		ask, hint = "find: ", "cards, test beads, readings, power sources, spools"
	}
	field, x := p.list.search(th, &p.field, ask, "", w)
	b.add(field)
	low := h < lowBody // the rows are more important than their explanation
	if p.field.empty() && !low && (p.kind == "" || p.lines() > 0 || p.busy || p.err != nil) {
		b.say(th.quiet, 0, hint, w)
	}
	if !low {
		b.skip()
	}
	if p.err != nil {
		b.say(th.watch, 0, "▲ "+p.err.Error(), w)
		return b, tea.NewCursor(x, 0)
	}
	if p.lines() == 0 && !p.busy {
		text := "nothing is kept yet: type a name and enter keeps the card as it is"
		if p.looks {
			text = "nothing is found; " + lookOnly.what
		}
		b.say(th.quiet, 0, text, w)
	}
	told := p.unshownLines(th, w, max(0, h-len(b)-1-min(3, p.lines())))
	var more block
	more.say(th.quiet, 0, p.elsewhere(), w)
	if h-len(b)-len(told)-len(more) >= 4 {
		told.addAll(more)
	}
	b.addAll(p.list.draw(max(1, h-len(b)-1-len(told)), func(i int, chosen bool) line {
		return p.rowLine(th, i, chosen, w)
	}))
	if len(told) > 0 && len(b)+1+len(told) <= h {
		b.skip()
		b.addAll(told)
	}
	return b, tea.NewCursor(x, 0)
}

// elsewhere names the command for tasks that the page has no key for.
func (p *bookPage) elsewhere() string {
	const deletes, all = "del or ctrl+d deletes; ", "; all of the book: brazebooth book export FILE, import FILE"
	switch {
	case p.looks:
		return ""
	case p.kind == "":
		return deletes + "an open record names its commands" + all
	}
	return deletes + "to print a card, open it on the next page, records: it names the command" + all
}
