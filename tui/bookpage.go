package tui

import (
	"context"
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
)

// bookPage finds kept cards as one types, opens one, and keeps the present card under what is typed; or it finds
// every kind of record and shows one.
type bookPage struct {
	all   bool // every kind, to read
	field field
	rows  []Entry
	at    int
	top   window
	run   int // which search is the wanted one
	err   error
	busy  bool
	safe  calc.Job // as it was kept or opened last: opening another loses nothing
	sure  string   // the card that is opened all the same

	doomed doomed
}

type (
	bookFound struct {
		all  bool
		run  int
		rows []Entry
		err  error
	}
	bookLoaded struct {
		job  calc.Job
		name string
		err  error
	}
	bookKept struct {
		name string
		job  calc.Job
		said string
		err  error
	}
)

// find asks for what is typed.
func (p *bookPage) find(k Keeper) tea.Cmd {
	if k == nil {
		return nil
	}
	p.run++
	run, text := p.run, p.field.String()
	p.busy = true
	all, find := p.all, k.Find
	if all {
		find = k.Records
	}
	return func() tea.Msg {
		rows, err := find(context.Background(), text)
		return bookFound{all, run, rows, err}
	}
}

func (f bookFound) tell(m *root) (tea.Cmd, bool) {
	if f.all {
		m.records.found(f)
	} else {
		m.shelf.found(f)
	}
	return nil, true
}

func (p *bookPage) found(f bookFound) {
	if f.run != p.run {
		return
	}
	p.rows, p.err, p.busy = f.rows, f.err, false
	last := len(p.rows) // what is offered below them is gone to by hand only
	if last == 0 {
		last = p.lines()
	}
	p.at = max(0, min(p.at, last-1))
}

// lines is how many rows there are: what was found, and what is typed can be kept.
func (p *bookPage) lines() int {
	n := len(p.rows)
	if p.all {
		n += len(forms)
	}
	if p.keeps() {
		n++
	}
	return n
}

// keeps reports whether what is typed can be a name to keep the card by.
func (p *bookPage) keeps() bool { return !p.all && !p.field.empty() }

// entry is the kept card under the cursor; nil on the row that keeps.
func (p *bookPage) entry() *Entry {
	i := p.at
	if i < 0 || i >= len(p.rows) {
		return nil
	}
	return &p.rows[i]
}

func (p *bookPage) update(msg tea.Msg, k *keyMap) action {
	switch msg := msg.(type) {
	case tea.PasteMsg:
		p.field.insert(msg.Content)
		p.at = 0
		return findCards
	case tea.KeyPressMsg:
		return p.press(msg, k)
	}
	return nil
}

func (p *bookPage) press(msg tea.KeyPressMsg, k *keyMap) action {
	if a, ok := p.doomed.press(msg, k, &p.field, p.entry()); ok {
		return a
	}
	switch {
	case msg.Text == "" && key.Matches(msg, k.Up):
		p.at = max(0, p.at-1)
		return nil
	case msg.Text == "" && key.Matches(msg, k.Down):
		p.at = max(0, min(p.lines()-1, p.at+1))
		return nil
	case key.Matches(msg, k.On) && p.busy:
		return refuse(fault{"still looking", "enter once more when the list stands"})
	case key.Matches(msg, k.On):
		if e := p.entry(); e != nil && p.all {
			return openRecord(*e)
		} else if e != nil {
			return loadCard(*e)
		}
		if i := p.at - len(p.rows); p.all && i < len(forms) {
			return openForm(&forms[i])
		}
		if p.field.empty() {
			return refuse(fault{"nothing is kept yet", "type a name and enter keeps the card"})
		}
		if strings.TrimSpace(p.field.String()) == "" {
			return refuse(fault{"a card without a name", "type one: tank lid"})
		}
		return keepCard(strings.TrimSpace(p.field.String()))
	case msg.String() == "esc" && !p.field.empty():
		p.field.clear()
		return findCards
	case p.field.empty() && turnBy(msg) != 0:
		return turnPage(turnBy(msg))
	case p.field.empty() && key.Matches(msg, k.Back):
		return goBack
	}
	before := p.field.String()
	p.field.edit(msg)
	if p.field.String() != before {
		p.at = 0
		return findCards
	}
	return nil
}

// draw is the field and what it finds; x is the cursor's column.
func (p *bookPage) draw(th *theme, keeps bool, w, h int) (b block, x int) {
	if !keeps {
		b.say(th.plain, 0, "There is no book here: start the program with one, brazebooth --book FILE.", w)
		return b, 0
	}
	ask, hint := "find or name: ", "type to find, or a name to keep the card"
	if p.all {
		ask, hint = "find: ", "cards, test beads, readings, power sources, spools"
	}
	r, x := p.field.ask(th, ask, w)
	if p.field.empty() {
		b.addAll(flow(r, []piece{{0, th.quiet, hint}}, 2, w))
	} else {
		b.add(r.line())
	}
	b.skip()
	if p.err != nil {
		b.say(th.watch, 0, "▲ "+p.err.Error(), w)
		return b, x
	}
	var list block
	first, last := 0, 0
	add := func(i int, row block) {
		if i == p.at {
			first, last = len(list), len(list)+len(row)-1
		}
		list.addAll(row)
	}
	for i := range p.rows {
		add(i, p.entryRow(th, i, w))
	}
	if p.keeps() {
		add(len(p.rows), p.offer(th, len(p.rows), "keep the card as “"+p.field.String()+"”", w))
	}
	for i := range forms {
		if p.all {
			add(len(p.rows)+i, p.offer(th, len(p.rows)+i, "enter "+forms[i].title, w))
		}
	}
	if len(list) == 0 && !p.busy {
		b.say(th.quiet, 0, "nothing is kept yet: type a name and enter keeps the card as it is", w)
	}
	b.addAll(p.top.show(list, first, last, max(1, h-len(b))))
	var told block
	told.say(th.quiet, 0, p.elsewhere(), w)
	if len(b)+1+len(told) <= h {
		b.skip()
		b.addAll(told)
	}
	return b, x
}

// elsewhere says what no key of the page does.
func (p *bookPage) elsewhere() string {
	if p.all {
		return "del or ctrl+d deletes; a record that is read names its commands; all of the book: brazebooth book export FILE, import FILE"
	}
	return "del or ctrl+d deletes; to print a card: records, the next page, reads it and names the command; all of the book: brazebooth book export FILE, import FILE"
}

// entryRow is one record: its name, its date, and what it is in short.
func (p *bookPage) entryRow(th *theme, i, w int) block {
	e := &p.rows[i]
	head, name := p.cursor(th, i, w), 26
	if p.all {
		head.put(th.quiet, e.Kind).to(10)
		name = 34
	}
	return flow(head, []piece{{head.used, th.bold.exact(), e.Name}, {name, th.quiet, e.At + "  " + e.Line}}, head.used, w)
}

// offer is a row that does something.
func (p *bookPage) offer(th *theme, i int, text string, w int) block {
	return flow(p.cursor(th, i, w), []piece{{2, th.good.exact(), text}}, 2, w)
}

func (p *bookPage) cursor(th *theme, i, w int) *row {
	if i == p.at {
		return newRow(w).put(th.accent, "› ")
	}
	return newRow(w).blank(2)
}
