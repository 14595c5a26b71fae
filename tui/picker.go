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
	rows   []choice.Row
	found  []int // rows that the filter leaves
	at     int   // in found
	top    int   // first of found on the screen
	field  field
	typed  *choice.Row // size as typed, where it is none of the rows
	wrong  *fault      // why what stands in the field is no size
	before string      // id of what the card has
	about  string      // what holds for the whole list
}

func newPicker(c *choice.Choice, s *session) picker {
	p := picker{ask: c, rows: c.Rows(s.present()), before: c.Now(&s.card)}
	if c.About != nil {
		p.about = c.About(s.present())
	}
	p.filter(s)
	return p
}

// reload draws the rows anew, in other units; cursor and field stay.
func (p *picker) reload(s *session) {
	at := p.at
	p.rows = p.ask.Rows(s.present())
	p.filter(s)
	p.at = max(0, min(at, len(p.found)-1))
}

// update acts on a message. The choice under the cursor is tried out by the root as it moves.
func (p *picker) update(msg tea.Msg, k *keyMap, s *session) action {
	switch msg := msg.(type) {
	case tea.PasteMsg:
		p.field.insert(msg.Content)
		p.filter(s)
	case tea.KeyPressMsg:
		return p.press(msg, k, s)
	}
	return nil
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
		return explain{row: p.choice(), ask: p.ask}, true
	case key.Matches(msg, k.Back):
		return goBack{}, true
	case key.Matches(msg, k.Leave):
		return leave{}, true
	case key.Matches(msg, k.Help):
		return openHelp{}, true
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
		return goBack{}
	}
	p.field.clear()
	p.filter(s)
	return nil
}

// on takes what the cursor or the field stands on.
func (p *picker) on() action {
	if p.wrong != nil {
		return refuse{*p.wrong}
	}
	c := p.choice()
	if c == nil {
		return refuse{fault{"nothing here is called " + p.field.String(), "type less, or esc to see the whole list"}}
	}
	return chose{p.ask, c.ID}
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
