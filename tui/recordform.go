package tui

import (
	"cmp"
	"context"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"
)

// recordForm takes a new record of the shop, or changed fields of a known one, and saves it in the book. Typed text is
// read by the code of the command of the same name.
type recordForm struct {
	form
	of *recordKind
}

type recordKind struct {
	kind, title string
	fields      []formRow
}

// keepRow is the last row of a form that is saved in the book.
var keepRow = formRow{ask: "keep it", rule: "enter puts it into the book; ↑ goes back to what was typed"}

// forms are the records that can be typed in. Cards, test beads and readings have pages of their own.
var forms = [...]recordKind{
	{"source", "a power source", []formRow{
		{name: "name", ask: "name", rule: "as the shop calls it: booth 1; one that is known is changed"},
		{name: "rated-amps", ask: "rated amps", rule: "on its plate: 200A; enter alone leaves it"},
		{name: "rated-duty", ask: "duty cycle", rule: "on its plate, at the rated amps: 60%; enter alone leaves it"},
		{name: "least-amps", ask: "least amps", rule: "on its plate; enter alone leaves it"},
		{name: "most-amps", ask: "most amps", rule: "on its plate; enter alone leaves it"},
		{name: "nozzle-bore", ask: "nozzle bore", rule: "inside, measured: 13mm or 1/2in; enter alone leaves it"},
		{name: "note", ask: "note", rule: "anything worth knowing; enter alone leaves it"}, keepRow,
	}},
	{"spool", "a spool of wire", []formRow{
		{name: "lot", ask: "lot", rule: "what is on it: A17; one that is known is changed"},
		{name: "filler", ask: "filler", rule: "cusi3, cual8 ...; enter alone: as it was, or cusi3"},
		{name: "wire", ask: "wire", rule: ".035 or 0.9mm; enter alone: as it was, or .035"},
		{name: "full", ask: "full weight", rule: "grams of wire when new: 4540; enter alone leaves it"},
		{name: "used", ask: "used", rule: "grams taken off since: 120; enter alone: none"},
		{name: "note", ask: "note", rule: "anything worth knowing; enter alone leaves it"}, keepRow,
	}},
	{"person", "a person", []formRow{{name: "name", ask: "short name", rule: "a short name only"}, keepRow}},
}

func (p *recordForm) last(at int) bool { return at == len(p.rows)-1 }

func (p *recordForm) about(*root) about {
	return about{help: "everywhere", keys: "enter go on  ↑↓ rows  esc back"}
}

func (p *recordForm) view(m *root, w, h int) (block, *tea.Cursor) {
	told := block{line{}}
	told.say(m.th.quiet, 0, p.rows[p.at].rule, w)
	return p.draw(&m.th, func(at int, here bool) (string, paint) {
		if !p.last(at) {
			return "", m.th.plain
		}
		return p.keeps(&m.th, here)
	}, p.of.title, told, w, h)
}

func (p *recordForm) press(_ *root, msg tea.KeyPressMsg) action {
	switch {
	case p.busy:
		return nil
	case key.Matches(msg, bound.On):
		return p.next()
	case p.field.empty() && key.Matches(msg, bound.Back):
		return goBack
	case p.field.empty() && msg.String() == "backspace":
		p.move(-1)
		return nil
	}
	p.edit(msg)
	return nil
}

// next goes on to the next row. On the last one it sends everything to the book.
func (p *recordForm) next() action {
	if p.store(); p.values[0] == "" {
		p.to(0)
		return refuse("it has no "+p.rows[0].ask+" yet", p.rows[0].rule)
	}
	if !p.last(p.at) {
		p.move(1)
		return nil
	}
	p.busy = true
	given := map[string]string{}
	for i, f := range p.rows {
		if p.values[i] != "" {
			given[f.name] = p.values[i]
		}
	}
	return asking(func(ctx context.Context, k Keeper) (string, error) { return k.Enter(ctx, p.of.kind, given) },
		p.entered)
}

// entered closes the form if the book saved it. After a fault the form stays open with all typed text.
func (p *recordForm) entered(m *root, said string, err error) tea.Cmd {
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
	return m.records.find(m)
}
