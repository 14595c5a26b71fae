package tui

import (
	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/choice"
)

// picker asks one question: a list under a field. On a list of names typing filters or gives a row's
// number; on a list of sizes it is the size.
type picker struct {
	ask    *choice.Choice
	path   bool // a step of the path, not a choice opened from the card
	rows   []choice.Row
	found  []int // rows that the filter leaves
	at     int   // in found
	top    int   // first of found on the screen
	field  field
	typed  *choice.Row // size as typed, where it is none of the rows
	wrong  *fault      // why what stands in the field is no size
	before string      // id of what the card has
	said   string      // what holds for the whole list
	tried  bool        // the card beside the list is that of the row under the cursor
	unfit  *fault      // why that row has no card
}

// openAsk opens the list of a choice over the card.
func openAsk(c *choice.Choice) action {
	return func(m *root) tea.Cmd { m.push(newPicker(c, &m.session)); return nil }
}

// start lists anew what the session goes by.
func (p *picker) start(m *root) {
	path := p.path
	*p = *newPicker(p.ask, &m.session)
	p.path = path
}

func (p *picker) about(m *root) about {
	k := &m.keys
	list := []key.Binding{named(k.On, "enter", "choose"), named(k.Down, "↑↓", "pick")}
	if m.keeper != nil && m.step() == 0 { // who comes for a kept card needs no path
		list = append(list, named(k.Shelf, "f5", "kept"))
	}
	list = append(list, named(k.Why, "*", "why"), named(k.Back, "esc", "back"), named(k.Next, "tab", "next"), k.Leave)
	return about{help: "in a list", term: p.ask.Label(), keys: list}
}

func newPicker(c *choice.Choice, s *session) *picker {
	p := &picker{ask: c, rows: c.Rows(s.present()), before: c.Now(&s.card)}
	if c.About != nil {
		p.said = c.About(s.present())
	}
	p.filter(s)
	return p
}

// refresh draws the rows anew, in other units; cursor and field stay.
func (p *picker) refresh(m *root) {
	if p.path && m.front() != screen(p) {
		return // it starts anew when it is come back to
	}
	s, at := &m.session, p.at
	p.rows = p.ask.Rows(s.present())
	p.filter(s)
	p.at = max(0, min(at, len(p.found)-1))
}

// update acts on a message. The choice under the cursor is tried out as it moves.
func (p *picker) update(m *root, msg tea.Msg) (a action) {
	switch msg := msg.(type) {
	case tea.PasteMsg:
		p.field.insert(msg.Content)
		p.filter(&m.session)
	case tea.KeyPressMsg:
		a = p.press(msg, &m.keys, &m.session)
	}
	p.tryOut(&m.session)
	return a
}

// tryOut computes the card of the row under the cursor, to stand beside the list.
func (p *picker) tryOut(s *session) {
	p.tried, p.unfit = false, nil
	job, differs := p.trial(s)
	if !differs {
		return
	}
	if _, err := s.try(job); err != nil {
		p.unfit = faultOf(err)
		return
	}
	p.tried = true
}

func (p *picker) press(msg tea.KeyPressMsg, k *keyMap, s *session) action {
	if msg.Text == "" {
		if a, ok := p.command(msg, k, s); ok {
			return a
		}
	} else if p.field.empty() {
		if a, ok := p.shortcut(msg, k); ok {
			return a
		}
	}
	if p.field.edit(msg) {
		p.filter(s)
	}
	return nil
}

// shortcut acts on the characters that are keys where nothing is typed.
func (p *picker) shortcut(msg tea.KeyPressMsg, k *keyMap) (action, bool) {
	switch {
	case msg.String() == "*":
		return explain(p.ask, p.choice()), true
	case key.Matches(msg, k.Back):
		return goBack, true
	case key.Matches(msg, k.Leave):
		return leave, true
	case key.Matches(msg, k.Help):
		return openHelp, true
	}
	return nil, false
}

// command acts on the keys that print nothing.
func (p *picker) command(msg tea.KeyPressMsg, k *keyMap, s *session) (action, bool) {
	switch {
	case key.Matches(msg, k.Back):
		return p.back(s), true
	case key.Matches(msg, k.On):
		return p.on(), true
	case key.Matches(msg, k.Up):
		p.move(-1)
	case key.Matches(msg, k.Down):
		p.move(1)
	case key.Matches(msg, k.PageUp):
		p.move(-8)
	case key.Matches(msg, k.PageDown):
		p.move(8)
	default:
		return nil, false
	}
	return nil, true
}

// back clears what was typed first; only then does it leave the screen.
func (p *picker) back(s *session) action {
	if p.field.empty() {
		return goBack
	}
	p.field.clear()
	p.filter(s)
	return nil
}

// on takes what the cursor or the field stands on.
func (p *picker) on() action {
	if p.wrong != nil {
		return refuse(*p.wrong)
	}
	c := p.choice()
	if c == nil {
		return refuse(fault{"nothing here is called " + p.field.String(), "type less, or esc to see the whole list"})
	}
	return chose(p.ask, c.ID)
}

// choice is the row under the cursor, or the size that was typed; nil where there is neither.
func (p *picker) choice() *choice.Row {
	switch {
	case p.typed != nil:
		return p.typed
	case p.at < len(p.found):
		return &p.rows[p.found[p.at]]
	}
	return nil
}

// trial is the job with the present choice, for the card beside the list. Until the cursor has moved
// it is the job itself.
func (p *picker) trial(s *session) (calc.Job, bool) {
	c := p.choice()
	if c == nil || p.wrong != nil || (p.typed == nil && c.ID == p.before) {
		return s.job, false
	}
	return s.taken(p.ask, c.ID), true
}

// move shifts the cursor, stopping at the ends. What was typed as a size gives way to the row.
func (p *picker) move(by int) {
	if p.ask.Sized() && !p.field.empty() {
		p.field.clear()
		p.typed, p.wrong = nil, nil
	}
	if p.wrong != nil { // of a name: the rows under it begin with the first
		p.wrong = nil
		if by > 0 {
			p.at, by = 0, 0
		}
	}
	p.at = max(0, min(len(p.found)-1, p.at+by))
}
