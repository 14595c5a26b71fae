package tui

import (
	"strconv"

	"brazebooth/tui/canvas"
)

// cardPage is the card: choices as chips, what a hand dials in big digits, what else it sets, the dangers, and what
// follows from it all. The arrows to the sides pick, those up and down change what is picked, digits type a value of
// its own, tab goes to the next row.
type cardPage struct {
	rows    []cardRow
	at      int             // row under the cursor
	last    [cardGroups]int // where the cursor was in each group
	dotted  bool            // a point was pressed: a digit now picks a chip
	typing  bool            // digits are being typed for the row under the cursor
	field   field           // what is typed
	scroll  window          // of the figures
	columns int             // in which they stand
	joint   canvas.Kept[canvas.Joint]
}

// load lays out the session's card and keeps the cursor on the row it was on; at first it stands on the first dial.
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

func (p *cardPage) row() *cardRow {
	if p.at < len(p.rows) {
		return &p.rows[p.at]
	}
	return nil
}

func (p *cardPage) goTo(i int) {
	if p.at = max(0, i); p.at < len(p.rows) {
		p.last[p.rows[p.at].group()] = p.at
	}
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
	if r := p.row(); r != nil {
		from, to := p.span(r.group())
		p.goTo(max(from, min(to-1, p.at+by)))
	}
}

// nextGroup goes to the next row of the card, where the cursor was there.
func (p *cardPage) nextGroup(by int) {
	r := p.row()
	if r == nil {
		return
	}
	g := cardGroup((int(r.group()) + by + int(cardGroups)) % int(cardGroups))
	if from, to := p.span(g); to > from {
		p.goTo(max(from, min(to-1, p.last[g])))
	}
}

// nextDial goes to the next dial, from the last one to the first.
func (p *cardPage) nextDial() {
	from, to := p.span(dialGroup)
	if p.at+1 > from && p.at+1 < to {
		p.goTo(p.at + 1)
	} else if to > from {
		p.goTo(from)
	}
}

func (p *cardPage) about(*root) about {
	a := about{help: "on the card", full: true}
	r, enter := p.row(), "why"
	if r != nil {
		a.term = r.label
		if r.ask != nil {
			enter = "list"
		}
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

// back gives up what is typed, or following the heat of a timed arc.
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

// numbered are what a digit, enter and another point mean behind a point, for the keys' line.
func (p *cardPage) numbered() string {
	keys := "enter type it  . next dial  0 rest"
	from, to := p.span(chipGroup)
	for i := from; i < to; i++ {
		keys += "  " + strconv.Itoa(i-from+1) + " " + p.rows[i].chipName()
	}
	return keys
}

// left and start forget what was typed.
func (p *cardPage) left(*root)  { p.stopTyping() }
func (p *cardPage) start(*root) { p.stopTyping() }

func (p *cardPage) refresh(m *root) { p.load(&m.session) }
