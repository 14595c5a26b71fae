package tui

import (
	"fmt"
	"strings"

	tea "charm.land/bubbletea/v2"

	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// view is the form; under it what the row under the cursor is and how it is done.
func (p *measurePage) view(m *root, w, h int) (b block, _ *tea.Cursor) {
	if m.keeper == nil {
		b.say(m.th.plain, 0, "There is no book here to keep a reading in: start the program with one, brazebooth "+
			"--book FILE.", w)
		return b, nil
	}
	p.mode, p.units = m.session.card.Used.Mode, m.units
	return p.draw(&m.th, p, "", p.told(&m.th, w), w, h)
}

func (p *measurePage) rows() []formRow { return measureRows[:] }

// says is how a row was read.
func (p *measurePage) says(th *theme, at int, here bool) (string, paint) {
	said, err := p.read(at)
	switch {
	case at == askSave && p.busy:
		return "being kept …", th.quiet
	case at == askSave && here:
		return "enter keeps it", th.bold
	case here && p.watch.running:
		return "■ the watch runs – space stops it", th.good
	case err != nil && !here:
		return "▲ " + faultOf(err).what, th.watch
	case err != nil:
		return "", th.quiet
	case said != "":
		return "= " + said, th.quiet
	case p.seconds[at] > 0:
		return fmt.Sprintf("%.1f s", p.seconds[at]), th.quiet
	}
	return "", th.quiet
}

// told is what is to be known of the row under the cursor: another reading of its number, what to type, how it is
// measured; and what was kept last.
func (p *measurePage) told(th *theme, w int) (b block) {
	row, rule := &measureRows[p.at], measureRows[p.at].rule
	if p.at == askSource {
		rule = "any name that the booth goes by"
		if len(p.sources) > 0 {
			rule = "known: " + strings.Join(p.sources, ", ") + "; enter alone takes the first"
		}
	}
	b.say(th.plain, 0, p.field.reading(row.field, quantity.Both, rule), w)
	if p.said != "" {
		b.say(th.good, 0, p.said, w)
	}
	if l, ok := tables.PracticeByCode(row.how); ok {
		b.say(th.plain, 0, l.Text, w) // it has the cautions of the measurement
	}
	return b
}
