package tui

import (
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/choice"
)

// cardStep is the path's last step; those before it are its questions.
const cardStep = 4

// step is where on the path the session is: how many of its screens lie on the stack's bottom, less one.
func (m *root) step() int {
	n := -1
	for _, s := range m.stack {
		if m.onPath(s) {
			n++
		}
	}
	return n
}

func (m *root) onPath(s screen) bool {
	if s == screen(&m.card) {
		return true
	}
	p, ok := s.(*picker)
	return ok && p.path
}

// uncover closes whatever lies over the path and the card.
func (m *root) uncover() {
	for len(m.stack) > 0 && !m.onPath(m.front()) {
		m.pop()
	}
}

func (m *root) along(step int) {
	m.uncover()
	for len(m.stack) > step+1 {
		m.pop()
	}
	for len(m.stack) <= step {
		if n := len(m.stack); n < cardStep {
			m.push(&picker{path: true, ask: pathChoices()[n]})
		} else {
			m.push(&m.card)
		}
	}
	m.enter()
}

// alongBy moves on the path without choosing; from one of the other choices it leads to the card.
func (m *root) alongBy(by int) tea.Cmd {
	if p, ok := topmost[*picker](m); ok && !p.path {
		by = 0
	}
	m.along(max(0, min(cardStep, m.step()+by)))
	return nil
}

// enter lets the screen on top begin with what the session is by now.
func (m *root) enter() {
	m.card.load(&m.session)
	if s, ok := m.front().(starter); ok {
		s.start(m)
	}
}

// chose puts a row's value on the job and goes on: to the next step, or back to the card.
func chose(ask *choice.Choice, id string) action {
	return func(m *root) tea.Cmd {
		m.choose(m.taken(ask, id))
		if p, ok := m.front().(*picker); ok && !p.path {
			m.pop()
			m.enter()
		} else {
			m.along(min(cardStep, m.step()+1))
		}
		m.askOn(ask.Name)
		return nil
	}
}

// askOn asks what a choice makes needful.
func (m *root) askOn(name string) {
	if m.step() != cardStep || name != "mode" && name != "joint" {
		return
	}
	for _, c := range choice.Path(&m.job)[len(pathChoices()):] {
		if !c.Given(&m.job) {
			m.push(newPicker(c, &m.session))
			m.done = "timed: times hang on joint and gap"
			return
		}
	}
}

// change is the action that puts a changed job in place, if it has a card; done is said then, "" for nothing.
func change(job calc.Job, done string) action {
	return func(m *root) tea.Cmd { m.changed(job, done); return nil }
}

// changed puts a changed job in place; one without a card is refused and the last one stays.
func (m *root) changed(job calc.Job, done string) {
	if err := m.change(job); err != nil {
		m.notice = faultOf(err)
		return
	}
	m.done = done
	if p, ok := m.front().(*whyPage); ok {
		m.close(p)
	}
	m.card.load(&m.session)
}

// shown is the card that stands on the screen: that of the row under a list's cursor, or the session's.
func (m *root) shown() *calc.Card {
	for i := len(m.stack) - 1; i >= 0; i-- {
		switch s := m.stack[i].(type) {
		case *picker:
			if s.tried {
				return &m.lookCard
			}
			return &m.session.card
		case *cardPage:
			return &m.session.card
		}
	}
	return &m.session.card
}
