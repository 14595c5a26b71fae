package tui

import (
	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/internal/choice"
)

// picker asks one question: a list below a field. In a list of names, typing filters the rows or gives a row's number;
// in a list of sizes, the typed text is the size.
type picker struct {
	ask   *choice.Choice
	rows  []choice.Row
	found []int // rows that pass the filter
	finder
	first  int         // line of the list's first row, for the mouse
	none   bool        // the cursor is on no row: a name without a row was typed
	typed  *choice.Row // the typed size, if it is none of the rows
	wrong  *fault      // why the text in the field is no size
	before string      // id of the card's value
	said   string      // a remark on the whole list
	tried  bool        // the card beside the list is that of the row under the cursor
	unfit  *fault      // why that row has no card
}

func openAsk(c *choice.Choice) action {
	return func(m *root) tea.Cmd { m.push(newPicker(c, &m.session)); return nil }
}

func (p *picker) about(m *root) about {
	keys := "enter choose  ↑↓ pick"
	if m.Book != nil && m.step() == 0 { // a saved card can be opened without the path
		keys += "  f5 kept"
	}
	return about{help: "in a list", term: p.ask.Label(), keys: keys + "  * why  esc back  tab next  q quit"}
}

func newPicker(c *choice.Choice, s *session) *picker {
	p := &picker{ask: c, before: c.Now(&s.card)}
	p.load(s)
	if c.About != nil {
		p.said = c.About(s.present())
	}
	p.filter(s)
	return p
}

// refresh draws the rows again, in other units or for another card. Cursor and field stay.
func (p *picker) refresh(m *root) {
	s, at := &m.session, p.list.at()
	p.before = p.ask.Now(&s.card)
	p.load(s)
	p.filter(s)
	p.list.goTo(at)
}

// load fills in the rows. If the card's value is none of them it becomes a row, so that stepping back to the list and
// on again keeps it.
func (p *picker) load(s *session) {
	p.rows = p.ask.Rows(s.present())
	if p.before == "" || len(p.rows) == 0 || p.index(p.before) >= 0 {
		return
	}
	own := choice.Row{ID: p.before, Name: p.ask.Shown(&s.card, s.Units), Line: "as it stands on the card"}
	if p.ask.Sized() {
		if typed, err := p.ask.Typed(s.present(), p.before); err == nil {
			own = typed
		}
	}
	p.rows = append([]choice.Row{own}, p.rows...)
}

// press handles a key. The choice under the cursor is tried out as it moves.
func (p *picker) press(m *root, msg tea.KeyPressMsg) action {
	defer p.tryOut(&m.session)
	if p.field.empty() { // some characters are keys
		if msg.String() == "*" {
			return explain(p.ask, p.choice())
		}
		if a := actionOf(msg, keyAction{bound.Back, goBack}, keyAction{bound.Leave, leave},
			keyAction{bound.Help, openHelp}); a != nil {
			return a
		}
	}
	switch {
	case msg.Text == "" && key.Matches(msg, bound.On):
		return p.on()
	case msg.Text == "" && p.moved(msg):
	case p.edit(msg):
		p.filter(&m.session)
	}
	return nil
}

// tryOut computes the card of the row under the cursor, which is shown beside the list.
func (p *picker) tryOut(s *session) {
	p.tried, p.unfit = false, nil
	c := p.choice()
	if c == nil || p.wrong != nil || p.typed == nil && c.ID == p.before {
		return // it is the job itself until the cursor has moved
	}
	if _, err := s.try(s.taken(p.ask, c.ID)); err != nil {
		p.unfit = faultOf(err)
	} else {
		p.tried = true
	}
}

func (p *picker) on() action {
	if p.wrong != nil {
		return p.wrong.said
	}
	c := p.choice()
	if c == nil {
		return refuse("nothing here is called "+p.field.String(), "type less, or esc to see the whole list")
	}
	return chose(p.ask, c.ID)
}

// choice is the row under the cursor, or the typed size; nil if there is neither.
func (p *picker) choice() *choice.Row {
	switch {
	case p.typed != nil:
		return p.typed
	case len(p.found) > 0 && !p.none:
		return &p.rows[p.found[p.list.at()]]
	}
	return nil
}

// moved handles the keys that move the cursor. A move discards a typed size.
func (p *picker) moved(msg tea.KeyPressMsg) bool {
	switch {
	case p.none && key.Matches(msg, bound.Down): // the cursor was above the rows, so down leads to the first one
		p.list.goTo(0)
	case p.ask.Sized() && !p.field.empty() && key.Matches(msg, bound.Top, bound.Bottom): // they belong to the field
		return false
	case !p.list.moved(msg):
		return false
	}
	p.none, p.wrong = false, nil
	if p.ask.Sized() {
		p.field.clear()
		p.typed = nil
	}
	return true
}
