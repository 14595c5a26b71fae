package tui

import (
	"cmp"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc/advice"
	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
)

// inputsPage takes what a page beside the card asks for: a list under a field, typed one by one.
type inputsPage struct {
	page  string
	rows  []*choice.Choice
	list  listbox
	field field
}

func (p *inputsPage) about(*root) about {
	a := about{help: "everywhere", keys: "enter set  ↑↓ pick  backspace open again  esc back"}
	if len(p.rows) > 0 {
		a.term = p.rows[p.list.at()].Name
	}
	return a
}

func (p *inputsPage) view(m *root, w, h int) (block, *tea.Cursor) {
	b, x, y := p.draw(&m.th, &m.session, w, h)
	return b, tea.NewCursor(x, y)
}

func newInputs(page *advice.Entry) *inputsPage {
	return askFor(page.Name, choice.Named(page.Needs...))
}

// askFor asks for some choices, under a name.
func askFor(name string, rows []*choice.Choice) *inputsPage {
	p := &inputsPage{page: name, rows: rows}
	p.list.set(len(rows))
	return p
}

func (p *inputsPage) update(m *root, msg tea.Msg) action {
	return typeInto(&p.field, msg, func(key tea.KeyPressMsg) action { return p.press(key, &m.keys, &m.session) })
}

func (p *inputsPage) press(msg tea.KeyPressMsg, k *keyMap, s *session) action {
	switch {
	case (p.field.empty() || msg.String() != "home" && msg.String() != "end") && p.list.moved(msg, k):
		p.field.clear()
		return nil
	case key.Matches(msg, k.On):
		return p.take(s)
	case msg.String() == "esc" && !p.field.empty():
		p.field.clear()
		return nil
	case p.field.empty() && key.Matches(msg, k.Back):
		return goBack
	case p.field.empty() && (msg.String() == "backspace" || msg.String() == "delete"):
		return p.open(s)
	}
	p.field.edit(msg)
	return nil
}

// take sets what was typed; with nothing typed it opens the row's list, where it has one.
func (p *inputsPage) take(s *session) action {
	f := p.rows[p.list.at()]
	if p.field.empty() {
		switch {
		case f.Name == "hazard":
			return opening(stopMarks(&s.card))
		case f.Ask != "":
			return openAsk(f)
		}
		return goBack
	}
	job, wrong := s.typed(f, &p.field)
	if wrong != nil {
		return refuse(*wrong)
	}
	p.field.clear()
	p.list.goTo(p.list.at() + 1)
	return change(job, f.Words()+" is set")
}

// readingOr is what is said of a typed number that may be meant otherwise, else the rule.
func readingOr(kind quantity.Field, typed string, units quantity.System, rule string) string {
	return cmp.Or(quantity.Reading(kind, typed, units), rule)
}

// open leaves the row's value open again.
func (p *inputsPage) open(s *session) action {
	f, job := p.rows[p.list.at()], s.base()
	f.Clear(&job)
	if job == s.job {
		return nil
	}
	return change(job, f.Words()+" is open again")
}

// draw is the field, the rows, and under them what the chosen one means. x is the cursor's column, y its line.
func (p *inputsPage) draw(th *theme, s *session, w, h int) (b block, x, y int) {
	f := p.rows[p.list.at()]
	b.add(newRow(w).put(th.bold, "what "+p.page+" asks for").line())
	b.skip()
	ask := f.Words() + ": "
	typed, at := p.field.ask(th, ask, w)
	x, y = at, len(b)
	b.add(typed.line())
	b.say(th.quiet, 0, readingOr(f.Kind, p.field.String(), s.units, f.Help()), w)
	if f.Ask != "" {
		b.say(th.quiet, 0, "enter with nothing typed opens the list", w)
	}
	b.skip()
	b.addAll(p.list.draw(w, max(1, h-len(b)), func(i int, chosen bool) line {
		row := p.rows[i]
		r := newRow(w).put(th.under(chosen, th.plain), row.Words()).to(20)
		if v := row.Show(&s.job, s.units.Lead()); v != "" {
			r.put(th.bold, v)
		} else {
			r.put(th.quiet, "not given")
		}
		return r.line()
	}))
	return b, x, y
}
