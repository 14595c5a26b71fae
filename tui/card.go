package tui

import (
	"strconv"

	"brazebooth/tui/canvas"
)

// cardPage is the card: choices as chips, the settings to dial in big digits, the other settings, the dangers, and the
// results. Left and right pick, up and down change the picked one, digits type a value of the user's own, tab goes to
// the next group.
type cardPage struct {
	rows    []cardRow
	at      int             // row under the cursor
	last    [cardGroups]int // where the cursor was in each group
	dotted  bool            // "." was pressed: a digit now picks a chip
	typing  bool            // digits are being typed for the row under the cursor
	field   field           // the typed text
	scroll  window          // of the figures
	columns int             // of the figures
	joint   canvas.Cached[canvas.Joint]
}

// load lays out the session's card and keeps the cursor on its row. The first time, the cursor is on the first dial.
func (p *cardPage) load(s *session) {
	name := "wire_feed"
	if p.at < len(p.rows) {
		name = p.rows[p.at].name
	}
	p.rows = buildRows(s, &s.card)
	for i := range p.rows {
		if p.rows[i].name == name {
			p.goTo(i)
			return
		}
	}
	p.goTo(min(p.at, len(p.rows)-1))
}

// row is the row under the cursor. There always is one, because every card has its choices.
func (p *cardPage) row() *cardRow { return &p.rows[p.at] }

func (p *cardPage) goTo(i int) {
	p.at = i
	p.last[p.row().group()] = i
}

// span is where a group's rows begin and end.
func (p *cardPage) span(g cardGroup) (from, to int) {
	for i := range p.rows {
		if p.rows[i].group() == g {
			if to == 0 {
				from = i
			}
			to = i + 1
		}
	}
	return from, to
}

// pick moves the cursor within its group.
func (p *cardPage) pick(by int) {
	from, to := p.span(p.row().group())
	p.goTo(max(from, min(to-1, p.at+by)))
}

// nextGroup goes to another group of rows, to the row where the cursor was last.
func (p *cardPage) nextGroup(by int) {
	g := (p.row().group() + cardGroup(by) + cardGroups) % cardGroups
	if from, to := p.span(g); to > from {
		p.goTo(max(from, min(to-1, p.last[g])))
	}
}

// nextDial goes to the next dial, and from the last one to the first.
func (p *cardPage) nextDial() {
	from, to := p.span(dialGroup)
	if p.at+1 > from && p.at+1 < to {
		p.goTo(p.at + 1)
	} else if to > from {
		p.goTo(from)
	}
}

func (p *cardPage) about(*root) about {
	a := about{help: "on the card", full: true, term: p.row().label}
	enter := "why"
	if p.row().ask != nil {
		enter = "list"
	}
	switch {
	case p.typing:
		a.keys = "enter set  esc leave it"
	case p.dotted:
		a.keys = p.numbered()
	default:
		a.keys = "←→ pick  ↑↓ change  enter " + enter + "  k keep  tab row  c cautions  m map  b booth  p pages  " +
			"t timed  x section  g words  r suggestion  ctrl+z undo  u units  esc back  q quit"
	}
	return a
}

// back cancels typing, or the computation of a timed arc's heat.
func (p *cardPage) back(m *root) bool {
	if p.typing {
		p.stopTyping()
		return true
	}
	if m.beat.stop == nil {
		return false
	}
	m.beat.cancel()
	m.notice = &fault{"given up: the times are the line-source estimate", "t follows the heat after all"}
	return true
}

func (p *cardPage) stopTyping() { p.typing, p.dotted, p.field = false, false, field{} }

// numbered is the text in the keys' line about what a digit, enter and another "." mean after ".".
func (p *cardPage) numbered() string {
	keys := "enter type it  . next dial  0 rest"
	from, to := p.span(chipGroup)
	for i := from; i < to; i++ {
		keys += "  " + strconv.Itoa(i-from+1) + " " + p.rows[i].chipName()
	}
	return keys
}

// left discards the typed text.
func (p *cardPage) left(*root) { p.stopTyping() }

func (p *cardPage) refresh(m *root) { p.load(&m.session) }

// figures are the results, in as many columns as there is room for, and the lines of the cursor's row.
func (p *cardPage) figures(m *root, w int) (b block, first, last int) {
	cols := measure(p.rows)
	wide := cols.label + 1 + cols.number + 1 + cols.unit + 2 + cols.band
	if cols.alt > 0 {
		wide += cols.alt + 2
	}
	var list []int
	for i := range p.rows {
		if r := &p.rows[i]; r.group() == figureGroup && (r.numbered() || i == p.at || m.h >= 50 || m.h < 30) {
			list = append(list, i)
		}
	}
	columns := max(1, (w+2)/(wide+2))
	if p.columns = columns; columns == 1 {
		for _, i := range list {
			lines := p.rows[i].draw(&m.th, cols, i == p.at, w)
			if i == p.at {
				first, last = len(b), len(b)+len(lines)-1
			}
			b.addAll(lines)
		}
		return b, first, last
	}
	lines := (len(list) + columns - 1) / columns
	each := (w + 2) / columns
	for y := range lines {
		r := newRow(w)
		for x := range columns {
			n := y*columns + x
			if n >= len(list) {
				continue
			}
			i := list[n]
			if i == p.at {
				first, last = y, y
			}
			p.rows[i].cells(&m.th, r.to(x*each), cols, i == p.at, x*each+wide)
		}
		b.add(r.line())
	}
	return b, first, last
}

// cells puts a figure into its column: name, number, unit, band.
func (r *cardRow) cells(th *theme, to *row, c columns, chosen bool, end int) {
	at := to.used
	to.put(th.under(chosen, th.plain), r.label).to(at + c.label + 1)
	if !r.numbered() {
		if width(r.words) <= end-to.used { // otherwise enter shows them
			to.put(th.plain, r.words)
		}
		return
	}
	v := &r.fig.Value
	to.blank(c.number-width(v.Number)).put(th.plain, v.Number+" "+v.Unit)
	if c.alt > 0 {
		to.to(at+c.label+1+c.number+1+c.unit+2).put(th.plain, r.fig.Other.String())
	}
	to.to(end-c.band).put(th.plain, v.Band())
}

// draw draws the parts of the row side by side. Parts without room go below the value, in full.
func (r *cardRow) draw(th *theme, c columns, chosen bool, w int) block {
	from := c.label + 2
	head := newRow(w).put(th.under(chosen, th.plain), r.label).to(from)
	if !r.numbered() {
		return flow(head, []piece{{from, th.plain, r.words}}, from, w)
	}
	v := &r.fig.Value
	head.to(from+c.number-width(v.Number)).put(th.plain, v.Number+" "+v.Unit)
	at := from + c.number + 1 + c.unit + 2
	parts := []piece{{at, th.plain, r.fig.Other.String()}}
	if c.alt > 0 {
		at += c.alt + 2
	}
	return flow(head, append(parts, piece{at, th.plain, v.Band()}), from, w)
}
