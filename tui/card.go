package tui

import (
	"strconv"

	"brazebooth/tui/canvas"
)

// cardPage is the card: choices as chips, the settings to dial in big digits, the other settings, the dangers, and the
// results. Left and right pick, up and down change the picked one, digits type a value of the user's own, tab goes to
// the next group.
type cardPage struct {
	rows       []cardRow
	at         int             // row under the cursor
	last       [cardGroups]int // where the cursor was in each group
	dotted     bool            // "." was pressed: a digit now picks a chip
	valueField                 // for the row under the cursor
	scroll     window          // of the figures
	columns    int             // of the figures
	joint      canvas.Cached[canvas.Joint]
}

// refresh lays out the session's card and keeps the cursor on its row. The first time, the cursor is on the first dial.
func (p *cardPage) refresh(m *root) {
	name := "wire_feed"
	if p.at < len(p.rows) {
		name = p.rows[p.at].name
	}
	p.rows = buildRows(&m.session, &m.session.card)
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

// back cancels the computation of a timed arc's heat.
func (p *cardPage) back(m *root) bool {
	if m.beat.stop == nil {
		return false
	}
	m.beat.cancel()
	m.notice = &fault{"given up: the times are the line-source estimate", "t follows the heat after all"}
	return true
}

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
func (p *cardPage) left(*root) { p.valueField, p.dotted = valueField{}, false }

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
	p.columns = max(1, (w+2)/(wide+2))
	from, room := cols.label+2, w
	if p.columns > 1 {
		from, room = cols.label+1, wide
	}
	for n, i := range list {
		lines, y := p.rows[i].draw(&m.th, cols, from, i == p.at, room), len(b)
		if p.columns > 1 && len(lines) > 1 { // words without room for them, which enter shows
			lines = block{newRow(room).put(m.th.under(i == p.at, m.th.plain), p.rows[i].label).line()}
		}
		if x := n % p.columns; x > 0 {
			y--
			b[y] = join(b[y], lines[0], x*((w+2)/p.columns), paint{}, "")
		} else {
			b.addAll(lines)
		}
		if i == p.at {
			first, last = y, len(b)-1
		}
	}
	return b, first, last
}

// draw draws the parts of the row side by side, the value at a column. Parts without room go below it, in full.
func (r *cardRow) draw(th *theme, c columns, from int, chosen bool, w int) block {
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
