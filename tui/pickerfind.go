package tui

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"brazebooth/internal/choice"
	"brazebooth/tables"
)

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
