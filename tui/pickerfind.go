package tui

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"brazebooth/internal/choice"
	"brazebooth/tables"
)

// filter finds the rows that fit what stands in the field.
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

// known refuses a name that stands for something without a row, whatever rows its letters also begin. The cursor then
// stands on none of them: only an arrow takes one.
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

// goTo puts the cursor on one of the rows that are found.
func (p *picker) goTo(i int) {
	p.list.set(len(p.found))
	p.list.goTo(i)
}

// moveTo puts the cursor on the row with that id and reports whether there is one.
func (p *picker) moveTo(id string) bool {
	i := slices.IndexFunc(p.found, func(row int) bool { return p.rows[row].ID == id })
	if i >= 0 {
		p.goTo(i)
	}
	return i >= 0
}

// size reads the field as a size and goes to its row, or keeps it as a row of its own.
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

// names leaves the rows that hold the text: those whose name begins with it first, then those that
// hold it in the name, then in their line; where none does, the one that loose typing finds.
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

// fits tells how well a row fits a text: 0 best, 3 not at all.
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
