package tui

import (
	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
)

// form is rows to type into, with an explanation of the row under the cursor below them.
type form struct {
	rows   []formRow
	at     int
	field  field // of the row under the cursor
	values [mostRows]string
	busy   bool   // it is being sent to the book: it cannot be sent twice or changed meanwhile
	scroll window // of the rows
	below  window // of the explanation of a row
}

// mostRows is the largest number of rows in a form.
const mostRows = 24

// formRow is the question of a row, and how its answer is read.
type formRow struct {
	name, ask, rule string // name is the command's name for it
	how             string // how it is measured in practice
	field           quantity.Field
	figure, unit    string // of the number; figure is "" if it is not set by hand
	timed           bool   // space starts and stops a watch
	over            string // a heading above the row
	skip            bool   // it is not asked now
}

// keeps is the text on the row that saves the form.
func (p *form) keeps(th *theme, here bool) (string, paint) {
	switch {
	case p.busy:
		return "being kept …", th.quiet
	case here:
		return "enter keeps it", th.bold
	}
	return "", th.plain
}

func (p *form) store() { p.values[p.at] = p.field.trimmed() }

// edit handles the keys that move and edit.
func (p *form) edit(msg tea.KeyPressMsg) {
	switch s := msg.String(); {
	case s == "esc":
		p.field.clear()
	case s == "up":
		p.move(-1)
	case s == "down":
		p.move(1)
	case p.field.empty() && s == "home":
		p.to(0)
	case p.field.empty() && s == "end":
		p.to(len(p.rows) - 1)
	case key.Matches(msg, bound.PageUp, bound.PageDown):
		p.below.moved(msg)
	default:
		p.field.edit(msg)
	}
	p.store()
}

// move goes to the next row that is asked, forward or back.
func (p *form) move(by int) {
	for to := p.at + by; to >= 0 && to < len(p.rows); to += by {
		if !p.rows[to].skip {
			p.to(to)
			return
		}
	}
}

// to goes to a row and puts its text into the field.
func (p *form) to(at int) {
	p.store()
	p.at, p.below = at, window{}
	p.field.clear()
	p.field.insert(p.values[at])
}

// draw draws the rows below a title, "" for none, and below them the explanation of the one under the cursor. says is
// how the text on a row was read, or another text after it.
func (p *form) draw(th *theme, says func(at int, here bool) (string, paint), title string, told block,
	w, h int) (b block, _ *tea.Cursor) {
	if title != "" {
		b.add(newRow(w).put(th.bold, title).line())
	}
	column := 0
	for _, row := range p.rows {
		column = max(column, min(width(row.ask)+2, w/2))
	}
	var list block
	x, y, first, last := 0, 0, 0, 0
	for at, row := range p.rows {
		here := at == p.at
		if here {
			first = len(list)
		}
		if row.skip {
			continue
		}
		if row.over != "" {
			list.add(newRow(w).put(th.quiet, row.over).line())
		}
		r := newRow(w).put(th.under(here, th.quiet), row.ask).to(column)
		text := p.values[at]
		if here {
			text, x = p.field.view(r.left())
			x, y = min(column+x, w-1), len(list)
		}
		said, paint := says(at, here)
		list.addAll(flow(r, []piece{{0, th.bold.exact(), text}, {0, paint, said}}, column, w))
		if here {
			last = len(list) - 1
		}
	}
	room := max(3, h-len(b)-len(told))
	if room < len(list) {
		room = max(3, min(room, h*2/3))
	}
	y += len(b)
	b.addAll(p.scroll.show(th, list, first, last, w, room))
	y -= p.scroll.view.YOffset()
	b.addAll(p.below.draw(th, told, w, max(1, h-len(b))))
	return b.fit(min(len(b), h)), tea.NewCursor(x, y)
}

// inputsPage asks for the choices that a page beside the card needs. A typed value goes onto the job at once.
type inputsPage struct {
	form
	page    string
	choices []*choice.Choice
}

// askFor asks for choices; page is the name of the page that needs them, or of the only choice.
func askFor(page string, choices ...*choice.Choice) *inputsPage {
	p := &inputsPage{page: page, choices: choices}
	for _, c := range choices {
		p.rows = append(p.rows, formRow{ask: c.Words()})
	}
	return p
}

func (p *inputsPage) about(*root) about {
	keys := "enter set  ↑↓ pick  backspace clear  esc back"
	if len(p.choices) == 1 {
		keys = "enter set  backspace clear  esc back"
	}
	return about{help: "everywhere", term: p.choices[p.at].Name, keys: keys}
}

func (p *inputsPage) view(m *root, w, h int) (block, *tea.Cursor) {
	c := p.choices[p.at]
	told := block{line{}}
	told.say(m.th.quiet, 0, p.field.reading(c.Kind, m.Units, c.Help()), w)
	if c.Ask != "" {
		told.say(m.th.quiet, 0, "enter with nothing typed opens the list", w)
	}
	title := "what " + p.page + " asks for"
	if len(p.choices) == 1 {
		title = "set " + p.page
	}
	return p.draw(&m.th, func(at int, here bool) (string, paint) {
		switch now := p.choices[at].Show(&m.session.job, m.Units.Lead()); {
		case here && !p.field.empty():
			return "", m.th.plain
		case now != "":
			return now, m.th.bold
		}
		return "not given", m.th.quiet
	}, title, told, w, h)
}

func (p *inputsPage) press(m *root, msg tea.KeyPressMsg) action {
	s := &m.session
	switch {
	case key.Matches(msg, bound.On):
		return p.set(s)
	case p.field.empty() && key.Matches(msg, bound.Back):
		return goBack
	case p.field.empty() && (msg.String() == "backspace" || msg.String() == "delete"):
		return p.open(s)
	}
	p.edit(msg)
	p.values = [mostRows]string{} // a row shows the value that was set, not the typed text
	return nil
}

// set sets the typed value. With nothing typed it opens the row's list, if it has one.
func (p *inputsPage) set(s *session) action {
	c := p.choices[p.at]
	if p.field.empty() {
		switch {
		case c.Name == "hazard":
			return opening(stopMarks(&s.card))
		case c.Ask != "":
			return openAsk(c)
		}
		return goBack
	}
	return s.set(c, &p.field, c.Words()+" is set", func() {
		p.field.clear()
		p.move(1)
	})
}

// open leaves the row's choice open again.
func (p *inputsPage) open(s *session) action {
	c, job := p.choices[p.at], s.job
	c.Clear(&job)
	if job == s.job {
		return nil
	}
	return change(job, c.Words()+": cleared")
}
