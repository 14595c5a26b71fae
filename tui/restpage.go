package tui

import (
	"cmp"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/internal/choice"
)

// restPage lists what has no chip on the card: the other choices, and every screen that a letter leads to, for a user
// with only a keypad.
type restPage struct {
	rows []restRow
	list listbox
}

type restRow struct {
	label, value string
	short        string // the value for little room
	ask          *choice.Choice
	open         action
}

func openRest(m *root) tea.Cmd {
	p := &restPage{}
	p.refresh(m)
	m.push(p)
	return nil
}

func (p *restPage) refresh(m *root) {
	c := &m.session.card
	p.rows = p.rows[:0]
	for _, q := range otherChoices() {
		if !q.Applies(c) {
			continue
		}
		open := openAsk(q)
		if len(q.Rows(m.present())) == 0 {
			open = opening(askFor(q.Label(), q))
		}
		shown, short := cmp.Or(q.Shown(c, m.Units), "not given"), q.Show(&c.Used, m.Units)
		if short != "" && !q.Given(&c.Job) {
			shown, short = "~"+shown, "~"+short
		}
		p.rows = append(p.rows, restRow{q.Label(), shown, short, q, open})
	}
	p.rows = append(p.rows, []restRow{
		{"map", "of all settings", "", nil, openMap}, {"timed arc", "on and off", "", nil, openBeat},
		{"booth view", "figures for two metres", "", nil, openBooth}, {"cautions", "all of them", "", nil, openPoints},
		{"section", "the joint to scale", "", nil, openSection}, {"pages", "fit to book", "", nil, openPart},
		{"keep", "this card in the book", "", nil, openPage(pageBook)}, {"units", string(m.Units), "", nil, otherUnits},
		{"help", "", "", nil, openHelp},
	}...)
	p.list.set(len(p.rows))
}

func (p *restPage) about(*root) about {
	return about{help: "on the card", term: p.rows[p.list.at()].label,
		keys: "enter open  ↑↓ pick  r clear  esc back"}
}

func (p *restPage) press(m *root, press tea.KeyPressMsg) action {
	if p.list.moved(press) {
		return nil
	}
	r := &p.rows[p.list.at()]
	switch {
	case key.Matches(press, bound.On):
		return r.open
	case key.Matches(press, bound.Reset) && r.ask != nil:
		job := m.base()
		r.ask.Clear(&job)
		return change(job, r.label+": cleared")
	}
	return everywhere(press)
}

func (p *restPage) view(m *root, w, h int) (b block, _ *tea.Cursor) {
	b.add(newRow(w).put(m.th.bold, "the rest").put(m.th.quiet, "  "+p.list.where()).line())
	b.skip()
	b.addAll(p.list.draw(h-len(b), func(i int, chosen bool) line {
		x := &p.rows[i]
		r := newRow(w)
		value := x.value
		if r.put(m.th.under(chosen, m.th.plain), x.label).to(18); width(value) > r.left() && x.short != "" {
			value = x.short
		}
		return r.put(m.th.bold, value).line()
	}))
	return b, nil
}
