package tui

import (
	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc/advice"
	"brazebooth/internal/choice"
)

// inputsPage takes what a page beside the card asks for, one by one: what is typed goes onto the job at once.
type inputsPage struct {
	form
	page    string
	choices []*choice.Choice
	now     []string // what the job has of each
}

func newInputs(page *advice.Entry, joint string) *inputsPage {
	return askFor(page.Name, choice.Named(page.Asks(joint)...))
}

// askFor asks for some choices, under a name.
func askFor(name string, list []*choice.Choice) *inputsPage {
	return &inputsPage{page: name, choices: list, now: make([]string, len(list))}
}

func (p *inputsPage) rows() []formRow {
	list := make([]formRow, len(p.choices))
	for i, c := range p.choices {
		list[i].ask = c.Words()
	}
	return list
}

func (p *inputsPage) asked(int) bool { return true }

func (p *inputsPage) says(th *theme, at int, here bool) (string, paint) {
	switch {
	case here && !p.field.empty():
		return "", th.plain
	case p.now[at] == "":
		return "not given", th.quiet
	}
	return p.now[at], th.bold
}

func (p *inputsPage) about(*root) about {
	return about{help: "everywhere", term: p.choices[p.at].Name,
		keys: "enter set  ↑↓ pick  backspace open again  esc back"}
}

func (p *inputsPage) view(m *root, w, h int) (block, *tea.Cursor) {
	for i, c := range p.choices {
		p.now[i] = c.Show(&m.session.job, m.units.Lead())
	}
	c := p.choices[p.at]
	told := block{line{}}
	told.say(m.th.quiet, 0, p.field.reading(c.Kind, m.units, c.Help()), w)
	if c.Ask != "" {
		told.say(m.th.quiet, 0, "enter with nothing typed opens the list", w)
	}
	return p.draw(&m.th, p, "what "+p.page+" asks for", told, w, h)
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
	p.edit(msg, p)
	p.values = [mostRows]string{} // a row keeps what was set, not what was typed
	return nil
}

// set sets what was typed; with nothing typed it opens the row's list, where it has one.
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
	job, wrong := s.typed(c, &p.field)
	if wrong != nil {
		return wrong.said
	}
	p.field.clear()
	p.move(p, 1)
	return change(job, c.Words()+" is set")
}

// open leaves the row's value open again.
func (p *inputsPage) open(s *session) action {
	c, job := p.choices[p.at], s.job
	c.Clear(&job)
	if job == s.job {
		return nil
	}
	return change(job, c.Words()+" is open again")
}
