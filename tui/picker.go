package tui

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/internal/choice"
	"brazebooth/tables"
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

// filter finds the rows that match the text in the field, and puts the cursor on the one that is meant.
func (p *picker) filter(s *session) {
	p.found, p.typed, p.wrong, p.none = make([]int, len(p.rows)), nil, nil, false
	for i := range p.rows {
		p.found[i] = i
	}
	at, text := p.list.at(), strings.ToLower(p.field.trimmed())
	switch n, err := strconv.Atoi(text); {
	case text == "":
		at = p.index(p.before)
	case p.ask.Sized():
		row, err := p.ask.Typed(s.present(), text)
		if err != nil {
			p.wrong = faultOf(err)
		} else if i := p.index(row.ID); i >= 0 {
			at = i
		} else {
			p.typed = &row
		}
	case err == nil && n >= 1 && n <= len(p.rows): // a row's number
		at = n - 1
	default:
		at = 0
		p.names(text)
	}
	p.list.set(len(p.found))
	p.list.goTo(at)
}

// index is the row with this id, -1 if there is none.
func (p *picker) index(id string) int {
	return slices.IndexFunc(p.rows, func(r choice.Row) bool { return r.ID == id })
}

// names keeps the rows that contain the text: first those whose name begins with it, then those with it in the name,
// then those with it in their line. If there are none, it keeps the row that a misspelt name may mean. A name that is
// known but has no row is refused, whatever rows its letters begin: the cursor is then on no row, and only an arrow
// moves it to one.
func (p *picker) names(text string) {
	rank := func(i int) int { return fits(&p.rows[i], text) }
	p.found = slices.DeleteFunc(p.found, func(i int) bool { return rank(i) == noFit })
	slices.SortStableFunc(p.found, func(a, b int) int { return rank(a) - rank(b) })
	switch id, err := p.ask.Find(text); {
	case errors.Is(err, tables.ErrNotBrazed):
		p.wrong, p.none = faultOf(err), true
	case err == nil && len(p.found) == 0 && p.index(id) >= 0:
		p.found = []int{p.index(id)}
	}
}

// noFit is worse than every way in which a row can match a text.
const noFit = 3

// fits says how well a row matches a text: 0 best, noFit not at all.
func fits(c *choice.Row, text string) int {
	name := strings.ToLower(c.Name)
	switch {
	case strings.HasPrefix(name, text) || strings.HasPrefix(c.ID, text):
		return 0
	case strings.Contains(name, text) || strings.Contains(c.Also, text):
		return 1
	case len(text) > 2 && strings.Contains(strings.ToLower(c.Line), text):
		return 2
	}
	return noFit
}
