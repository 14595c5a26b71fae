package tui

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"brazebooth/internal/choice"
	"brazebooth/tables"
)

// filter finds the rows that match the text in the field.
func (p *picker) filter(s *session) {
	p.found, p.typed, p.wrong, p.none = p.found[:0], nil, nil, false
	defer func() { p.list.set(len(p.found)) }()
	text := strings.ToLower(p.field.trimmed())
	switch n, err := strconv.Atoi(text); {
	case text == "":
		p.all()
		p.moveTo(p.before)
	case p.ask.Sized():
		p.all()
		p.size(s, text)
	case err == nil && n >= 1 && n <= len(p.rows): // a row's number
		p.all()
		p.goTo(n - 1)
	default:
		p.names(text)
		p.known(text)
	}
}

// known refuses a name that is known but has no row, whatever rows its letters begin. The cursor is then on no row, and
// only an arrow moves it to one.
func (p *picker) known(text string) {
	if _, err := p.ask.Find(text); errors.Is(err, tables.ErrNotBrazed) {
		p.wrong, p.none = faultOf(err), true
	}
}

func (p *picker) all() {
	for i := range p.rows {
		p.found = append(p.found, i)
	}
}

// goTo puts the cursor on one of the found rows.
func (p *picker) goTo(i int) {
	p.list.set(len(p.found))
	p.list.goTo(i)
}

// moveTo puts the cursor on the row with this id and reports whether there is one.
func (p *picker) moveTo(id string) bool {
	i := slices.IndexFunc(p.found, func(row int) bool { return p.rows[row].ID == id })
	if i >= 0 {
		p.goTo(i)
	}
	return i >= 0
}

// size reads the field as a size and goes to its row, or makes a row for it.
func (p *picker) size(s *session, text string) {
	c, err := p.ask.Typed(s.present(), text)
	if err != nil {
		p.wrong = faultOf(err)
		return
	}
	if !p.moveTo(c.ID) {
		p.typed = &c
	}
}

// names keeps the rows that contain the text: first those whose name begins with it, then those with it in the name,
// then those with it in their line. If there are none, it keeps the row that a misspelt name may mean.
func (p *picker) names(text string) {
	for rank := range 3 {
		for i := range p.rows {
			if fits(&p.rows[i], text) == rank {
				p.found = append(p.found, i)
			}
		}
	}
	p.goTo(0)
	if len(p.found) > 0 {
		return
	}
	id, err := p.ask.Find(text)
	if err != nil {
		return
	}
	for i := range p.rows {
		if p.rows[i].ID == id {
			p.found = append(p.found, i)
		}
	}
}

// fits says how well a row matches a text: 0 best, 3 not at all.
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
	return 3
}
