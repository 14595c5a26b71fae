package tui

import (
	"cmp"
	"context"
	"fmt"
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"
)

// formPage takes a new record of the shop, or what changed of one: one thing at a time, then it goes into the book.
// What is typed is read where the command of the same name reads it.
type formPage struct {
	form   *form
	values []string
	at     int
	field  field
	busy   bool
}

// form is what a kind of record is asked for.
type form struct {
	kind, title string
	fields      []formField
}

// formField is one question: the command's own name of it, the question, what to type.
type formField struct{ name, ask, hint string }

// forms are the records that are entered by hand; cards, test beads and readings have pages of their own.
var forms = [...]form{
	{"source", "a power source", []formField{
		{"name", "name", "as the shop calls it: booth 1; one that is known is changed"},
		{"rated-amps", "rated amps", "on its plate: 200A; enter alone leaves it"},
		{"rated-duty", "duty cycle", "on its plate, at the rated amps: 60%; enter alone leaves it"},
		{"least-amps", "least amps", "on its plate; enter alone leaves it"},
		{"most-amps", "most amps", "on its plate; enter alone leaves it"},
		{"nozzle-bore", "nozzle bore", "inside, measured: 13mm or 1/2in; enter alone leaves it"},
		{"note", "note", "anything worth knowing; enter alone leaves it"},
	}},
	{"spool", "a spool of wire", []formField{
		{"lot", "lot", "what is on it: A17; one that is known is changed"},
		{"filler", "filler", "cusi3, cual8 ...; enter alone: as it was, or cusi3"},
		{"wire", "wire", ".035 or 0.9mm; enter alone: as it was, or .035"},
		{"full", "full weight", "grams of wire when new: 4540; enter alone leaves it"},
		{"used", "used", "grams taken off since: 120; enter alone: none"},
		{"note", "note", "anything worth knowing; enter alone leaves it"},
	}},
	{"person", "a person", []formField{{"name", "short name", "a short name only"}}},
}

// openForm asks for a new record.
func openForm(f *form) action { return withBook(opening(newForm(f))) }

func (p *formPage) about(*root) about {
	return about{help: "everywhere", keys: "enter go on  ↑ step back  esc back"}
}

func (p *formPage) view(m *root, w, h int) (block, *tea.Cursor) {
	b, x, y := p.draw(&m.th, w, h)
	return b, tea.NewCursor(min(x, w-1), y)
}

func newForm(f *form) *formPage { return &formPage{form: f, values: make([]string, len(f.fields))} }

func (p *formPage) update(m *root, msg tea.Msg) action {
	if p.busy && pasted(msg) {
		return nil // it is on its way as it stands
	}
	return typeInto(&p.field, msg, func(key tea.KeyPressMsg) action { return p.press(key, &m.keys) })
}

func (p *formPage) press(msg tea.KeyPressMsg, k *keyMap) action {
	switch {
	case p.busy:
		return nil
	case key.Matches(msg, k.On):
		return p.next()
	case msg.String() == "esc" && !p.field.empty():
		p.field.clear()
		return nil
	case (msg.String() == "up" || msg.String() == "backspace" && p.field.empty()) && p.at > 0:
		p.at--
		p.show()
		return nil
	case p.field.empty() && key.Matches(msg, k.Back):
		return goBack
	}
	p.field.edit(msg)
	return nil
}

// show puts what was typed before back into the field.
func (p *formPage) show() {
	p.field.clear()
	if p.at < len(p.values) {
		p.field.insert(p.values[p.at])
	}
}

func (p *formPage) next() action {
	if p.at == len(p.values) {
		p.busy = true
		return p.enterRecord
	}
	p.values[p.at] = strings.TrimSpace(p.field.String())
	if p.at == 0 && p.values[0] == "" {
		return refuse(fault{"it has no " + p.form.fields[0].ask + " yet", p.form.fields[0].hint})
	}
	p.at++
	p.show()
	return nil
}

// draw is the question at hand over what was answered; x and y are where typing goes.
func (p *formPage) draw(th *theme, w, h int) (b block, x, y int) {
	steps := len(p.values) + 1
	if p.at == len(p.values) {
		b.add(newRow(w).put(th.bold, fmt.Sprintf("%s, step %d of %d", p.form.title, steps, steps)).line())
		text := "enter puts it into the book"
		if p.busy {
			text = "being kept …"
		}
		b.say(th.bold, 0, text, w)
		b.say(th.quiet, 0, "up goes back to what was typed", w)
	} else {
		f := &p.form.fields[p.at]
		b.add(newRow(w).put(th.bold, fmt.Sprintf("%s, step %d of %d", p.form.title, p.at+1, steps)).line())
		ask := f.ask + ": "
		r, at := p.field.ask(th, ask, w)
		x, y = at, len(b)
		b.add(r.line())
		b.say(th.quiet, 0, f.hint, w)
	}
	for i, v := range p.values[:p.at] {
		if v != "" {
			b.addAll(flow(newRow(w).put(th.quiet, p.form.fields[i].ask), []piece{{16, th.bold, v}}, 16, w))
		}
	}
	return b.fit(min(len(b), h)), x, y
}

// enterRecord sends what was typed to the book.
func (p *formPage) enterRecord(m *root) tea.Cmd {
	k := m.keeper
	given := map[string]string{}
	for i, v := range p.values {
		if v != "" {
			given[p.form.fields[i].name] = v
		}
	}
	kind := p.form.kind
	return func() tea.Msg {
		said, err := k.Enter(context.Background(), kind, given)
		return answered{func(m *root) tea.Cmd { return p.entered(m, said, err) }}
	}
}

// entered closes the form where the book has it; a fault leaves it open with all that was typed.
func (p *formPage) entered(m *root, said string, err error) tea.Cmd {
	p.busy = false
	switch {
	case !m.isOpen(p):
		return nil
	case err != nil:
		m.notice = faultOf(err)
		m.notice.hint = cmp.Or(m.notice.hint, "up goes back to what was typed")
		return nil
	}
	m.close(p)
	m.done = said
	m.meter.sources = nil // there may be another one now
	return m.records.find(m.keeper)
}
