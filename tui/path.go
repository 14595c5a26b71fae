package tui

import (
	"fmt"
	"slices"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/choice"
)

// cardStep is the path's last step, the card. The steps before it are its questions.
const cardStep = 4

// step is the session's position on the path.
func (m *root) step() int {
	if m.isOpen(&m.card) {
		return cardStep
	}
	return slices.Index(pathChoices(), m.path.ask)
}

// along goes to a step of the path and closes every screen above it. Below the card lies the last question.
func (m *root) along(step int) {
	for len(m.stack) > 1 {
		m.pop()
	}
	m.path = picker{ask: pathChoices()[min(step, cardStep-1)]}
	if step == cardStep {
		m.push(&m.card)
	}
	m.enter()
}

// alongBy moves on the path without choosing. From one of the other choices it leads to the card.
func (m *root) alongBy(by int) tea.Cmd {
	if p, ok := topmost[*picker](m); ok && p != &m.path {
		by = 0
	}
	m.along(max(0, min(cardStep, m.step()+by)))
	return nil
}

// enter prepares the screen on top for the present session.
func (m *root) enter() {
	m.card.refresh(m)
	if p, ok := m.front().(*picker); ok {
		*p = *newPicker(p.ask, &m.session)
	}
}

// chose puts a row's value on the job and goes on: to the next step, or back to the card.
func chose(ask *choice.Choice, id string) action {
	return func(m *root) tea.Cmd {
		m.choose(m.taken(ask, id))
		if m.front() == screen(&m.path) {
			m.along(m.step() + 1)
		} else {
			m.pop()
			m.enter()
			m.refresh() // below it may be a list of the choices
		}
		m.askOn(ask.Name)
		return nil
	}
}

// askOn asks for further choices that a choice requires.
func (m *root) askOn(name string) {
	if m.step() != cardStep || name != "mode" && name != "joint" {
		return
	}
	for _, c := range choice.Path(&m.job)[len(pathChoices()):] {
		if !c.Given(&m.job) {
			m.push(newPicker(c, &m.session))
			m.done = "timed: times depend on joint and gap"
			return
		}
	}
}

// change is the action that replaces the job, if the new one has a card, and then shows done, "" for nothing.
func change(job calc.Job, done string) action {
	return func(m *root) tea.Cmd { m.changed(job, done); return nil }
}

// changed replaces the job by a changed one.
func (m *root) changed(job calc.Job, done string) { m.replace(m.keepingFeed(job), done) }

// replace replaces the job, and every open screen shows the new one. A job without a card is refused, and the last one
// stays.
func (m *root) replace(job calc.Job, done string) {
	if _, err := m.try(job); err != nil {
		m.notice = faultOf(err)
		return
	}
	m.choose(job)
	m.done = done
	if p, ok := m.front().(*whyPage); ok {
		m.close(p)
	}
	m.refresh()
}

// keepingFeed is a job with another time of its timed arc, at the feed for which the times on the screen were found: if
// it were left open, one step of a time would suggest a feed that is far away.
func (m *root) keepingFeed(job calc.Job) calc.Job {
	same, was := job, timedJob(m.job)
	same.ArcOn, same.ArcOff, same.SpotStep = was.ArcOn, was.ArcOff, was.SpotStep
	set := job.ArcOn.Set || job.ArcOff.Set || job.SpotStep.Set
	if job != was && same == was && set && !job.Feed.Set && !job.Amps.Set && m.beat.ready(was) {
		job.Feed = m.beat.have.Card.Used.Feed
	}
	return job
}

// shown is the card on the screen: that of the row under a list's cursor, or the session's.
func (m *root) shown() *calc.Card {
	if p, ok := topmost[*picker](m); ok && p.tried {
		return m.look
	}
	return &m.session.card
}

// pathChoices are the choices that lead to every card, in their order. A timed arc needs more.
func pathChoices() []*choice.Choice { return choice.Path(&calc.Job{}) }

// chipChoices are the choices with a chip on the card, in the order of their numbers.
func chipChoices() []*choice.Choice {
	return choice.Named("metal", "gauge", "wire", "mode", "joint", "gap", "metal2", "position", "gauge2")
}

// otherChoices are the choices without a chip.
func otherChoices() []*choice.Choice {
	return choice.Named("backing", "coating", "coating2", "filler", "gas", "use", "length", "preheat", "part-width",
		"part-mass", "aim", "throat", "shaft-dia", "layer", "hole", "run-in")
}

// present is what the rows of a list depend on.
func (s *session) present() *choice.Present {
	return &choice.Present{Card: &s.card, Job: s.base(), Units: s.Units, Solve: s.Solve}
}

// neighbour returns the job with the value before or after the present one, and whether there is one.
func (s *session) neighbour(c *choice.Choice, by int) (calc.Job, bool) {
	rows, now := c.Rows(s.present()), c.Now(&s.card)
	at := slices.IndexFunc(rows, func(r choice.Row) bool { return r.ID == now })
	if at < 0 || at+by < 0 || at+by >= len(rows) {
		return s.job, false
	}
	return s.taken(c, rows[at+by].ID), true
}

// taken is the job with a row's value on it.
func (s *session) taken(c *choice.Choice, id string) calc.Job {
	job := s.base()
	if c.Given(&job) && c.Now(&s.card) == id && s.fault == nil {
		return job // choosing the same value again changes nothing, not even the coating that belongs to a metal
	}
	_ = c.Take(&job, id) // a row's own id is always understood
	return job
}

func explain(ask *choice.Choice, row *choice.Row) action {
	if row == nil {
		return nil
	}
	c := *row
	return func(m *root) tea.Cmd {
		return m.read(c.Name, func(th *theme, w int) block {
			return reasonPage(th, &c, ask.Reasons(m.present(), c.ID), w)
		})
	}
}

// explain looks up what the list of a choice says about the present value.
func (p *whyPage) explain(m *root) {
	if ask := p.row.ask; ask != nil {
		if p.chosen = newPicker(ask, &m.session).choice(); p.chosen != nil {
			p.reasons = ask.Reasons(m.present(), p.chosen.ID)
		}
	}
}

// reasonPage explains a row: its sentence, then each figure with its source.
func reasonPage(th *theme, c *choice.Row, lines []choice.Reason, w int) (b block) {
	b.say(th.plain, 0, th.inUnits(rowSentence(c)), w)
	col := 0
	for _, l := range lines {
		col = max(col, min(width(l.Label), w/2))
	}
	for i, l := range lines {
		if i == 0 || l.Source != "" {
			b.skip()
		}
		style := th.plain
		if l.Value == "" {
			style = th.bold
		}
		b.addAll(flow(newRow(w).put(style, l.Label), []piece{{col + 2, th.bold, l.Value}}, 2, w))
		if l.Source != "" {
			text := l.Source
			if words := calc.KnownWords(l.Known); words != text {
				text = fmt.Sprintf("%s; %s", text, words)
			}
			b.say(th.quiet, 2, text, w)
		}
	}
	return b
}
