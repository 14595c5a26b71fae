package tui

import (
	"fmt"
	"strings"

	tea "charm.land/bubbletea/v2"

	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// measureColumn is where what is typed begins.
const measureColumn = 14

// view is the form: each row with what stands there and how it was read; under it what the row under the cursor is and
// how it is done.
func (p *measurePage) view(m *root, w, h int) (b block, _ *tea.Cursor) {
	th := &m.th
	if m.keeper == nil {
		b.say(th.plain, 0, "There is no book here to keep a reading in: start the program with one, brazebooth "+
			"--book FILE.", w)
		return b, nil
	}
	p.mode, p.units = m.session.card.Used.Mode, m.units
	var rows block
	y := 0
	x, first, last := 0, 0, 0
	for at := range measureCount {
		if !p.asked(at) {
			continue
		}
		if at == p.at {
			first = len(rows)
		}
		if at == askSeen {
			rows.add(newRow(w).put(th.quiet, "── the bead").line())
		}
		line, column := p.row(th, at, w)
		if at == p.at {
			x, y = column, len(rows)
		}
		rows.addAll(line)
		if at == p.at {
			last = len(rows) - 1
		}
	}
	told := p.told(th, w)
	room := max(3, h-len(told))
	if room < len(rows) {
		room = max(3, min(room, h*2/3))
	}
	b.addAll(p.scroll.marked(th, p.scroll.show(rows, first, last, room), len(rows), w))
	y -= p.scroll.top
	b.addAll(p.below.draw(th, told, w, max(1, h-len(b))))
	return b.fit(min(len(b), h)), tea.NewCursor(x, y)
}

// row is one row: its name, what stands there, how it was read. x is where typing goes.
func (p *measurePage) row(th *theme, at, w int) (b block, x int) {
	row, here := &measureRows[at], at == p.at
	r := newRow(w)
	name := th.quiet
	if here {
		name = th.cursor
	}
	r.put(name, row.ask).to(measureColumn)
	if at == askSave {
		switch {
		case p.busy:
			r.put(th.quiet, "being kept …")
		case here:
			r.put(th.bold, "enter keeps it")
		}
		return block{r.line()}, measureColumn
	}
	text, x := p.values[at], measureColumn
	if here {
		var column int
		text, column = p.field.view(r.left())
		x = min(measureColumn+column, w-1)
	}
	said, err := p.read(at)
	paint := th.quiet
	switch {
	case here && p.watch.running:
		said, paint = "■ the watch runs – space stops it", th.good
	case err != nil && !here:
		said, paint = "▲ "+faultOf(err).what, th.watch
	case err != nil:
		said = ""
	case said == "" && p.seconds[at] > 0:
		said = fmt.Sprintf("%.1f s", p.seconds[at])
	case said != "":
		said = "= " + said
	}
	return flow(r, []piece{{0, th.bold.exact(), text}, {0, paint, said}}, measureColumn, w), x
}

// told is what is to be known of the row under the cursor: another reading of its number, what to type, how it is
// measured; and what was kept last.
func (p *measurePage) told(th *theme, w int) (b block) {
	row := &measureRows[p.at]
	rule := row.rule
	if p.at == askSource {
		rule = "any name that the booth goes by"
		if len(p.sources) > 0 {
			rule = "known: " + strings.Join(p.sources, ", ") + "; enter alone takes the first"
		}
	}
	b.say(th.plain, 0, readingOr(row.field, p.field.String(), quantity.Both, rule), w)
	if p.said != "" {
		b.say(th.good, 0, p.said, w)
	}
	if l, ok := tables.PracticeByCode(row.how); ok {
		b.say(th.plain, 0, l.Text, w) // it has the cautions of the measurement
	}
	return b
}
