package tui

import (
	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// The booth view is for a screen some steps away: five figures in digits as large as the terminal allows, the beat of a
// timed arc as a bar that moves, the zone and the strongest caution. It takes the whole screen; any key leaves it, and c leads
// to the cautions on the way.

type boothView struct{}

// openBooth opens the view; the beat of a timed arc runs in it.
func openBooth(m *root) tea.Cmd {
	m.push(boothView{})
	return m.playInBooth()
}

// playInBooth lets the beat of a timed arc run in the booth view, once its heat was followed.
func (m *root) playInBooth() tea.Cmd {
	if !m.isOpen(boothView{}) || m.session.card.Used.Mode != "timed" || !m.followed || m.beat.playing() {
		return nil
	}
	return m.beat.start()
}

func (boothView) fills()              {}
func (boothView) about(m *root) about { return m.card.about(m) }
func (boothView) left(m *root)        { m.beat.halt() }

// update leads from the view back to the card, or to the cautions over it.
func (v boothView) update(m *root, msg tea.Msg) action {
	press, ok := msg.(tea.KeyPressMsg)
	if !ok {
		return nil
	}
	m.close(v)
	if key.Matches(press, m.keys.Cautions) {
		return openPoints
	}
	return nil
}

func (boothView) view(m *root, w, h int) (block, *tea.Cursor) { return m.boothBody(w, h), nil }

// boothFigures are the figures of the view: what the hand sets or times.
func boothFigures(c *calc.Card) []string {
	if _, timed := c.Figure("arc_on"); timed {
		return []string{"wire_feed", "volts", "travel", "arc_on", "arc_off"}
	}
	return []string{"wire_feed", "volts", "travel", "gas_flow", "stickout"}
}

func boothCells(s *session, comma bool) []boothCell {
	var cells []boothCell
	rows := buildRows(s, &s.card)
	for _, name := range boothFigures(&s.card) {
		for i := range rows {
			if r := &rows[i]; r.name == name && r.numbered() {
				cells = append(cells, r.booth(comma))
			}
		}
	}
	return cells
}

func (r *cardRow) booth(comma bool) boothCell {
	c := boothCell{label: guessMark(r.tag) + r.label, number: r.fig.Value.Number, unit: r.fig.Value.Unit, band: r.fig.Value.Band()}
	if a := r.fig.Other.String(); a != "" {
		c.alt = "(" + a + ")"
	}
	if r.name == "travel" {
		c.pace = r.short
	}
	if comma {
		c.number = quantity.Comma(c.number)
	}
	return c
}

// fewer are the cells without the other system, or without their ranges.
func fewer(cells []boothCell, alt, band bool) []boothCell {
	list := append([]boothCell{}, cells...)
	for i := range list {
		if !alt {
			list[i].alt = ""
		}
		if !band {
			list[i].band = ""
		}
	}
	return list
}

// boothLayout is what stands on the view: figures, and lines over and under them.
type boothLayout struct {
	cells     []boothCell
	top, hint block
}

// boothLayouts are the ways to lay the view out, the best first. The other system is left out only where no digits fit
// with it.
func (m *root) boothLayouts(w, room int) []boothLayout {
	cells := boothCells(&m.session, m.th.plain.comma)
	alt := true
	if _, ok := gridOf(fewer(cells, true, false), w, room); !ok {
		alt = false
	}
	all, bare := fewer(cells, alt, true), fewer(cells, alt, false)
	hint := m.boothHint(w)
	return []boothLayout{{all, nil, hint}, {bare, nil, hint}, {all, nil, nil}, {bare, nil, nil}}
}

// boothBody is the whole view. What must be read under the figures goes before the size of their digits, as long as any fit
// over it. Then the digits come first: the ranges, the path over them and the line that says how to leave stand there only
// where they cost the digits nothing.
func (m *root) boothBody(w, h int) block {
	feet := m.boothFeet(w, h)
	for _, foot := range feet {
		if b, ok := m.boothOver(foot, w, h); ok {
			return b
		}
	}
	foot := feet[len(feet)-1]
	b := boothLines(&m.th, boothCells(&m.session, m.th.plain.comma), w)
	return append(b.fit(h-len(foot)), foot...)
}

// boothOver is the view over what stands under its figures; false where there is no room for digits over that.
func (m *root) boothOver(foot block, w, h int) (block, bool) {
	var best boothGrid
	var shown boothLayout
	for _, l := range m.boothLayouts(w, h-len(foot)) {
		g, ok := gridOf(l.cells, w, h-len(foot)-len(l.top)-len(l.hint))
		if ok && g.dot.larger(best.dot) {
			best, shown = g, l
		}
	}
	if best.dot.high == 0 || !allDrawable(shown.cells) {
		return nil, false
	}
	under := append(append(block{}, foot...), shown.hint...)
	b := append(block{}, shown.top...)
	b.addAll(best.draw(&m.th, shown.cells, w, h-len(b)-len(under)))
	return append(b.fit(h-len(under)), under...), true
}

// boothHint says how to leave.
func (m *root) boothHint(w int) block {
	var b block
	b.say(m.th.quiet, 0, "any other key returns", w)
	return b
}

func allDrawable(cells []boothCell) bool {
	for i := range cells {
		if !drawable(cells[i].number) {
			return false
		}
	}
	return true
}

// boothLines are the figures as text, for a number that has no digits or a terminal without room for them.
func boothLines(th *theme, cells []boothCell, w int) block {
	var b block
	for i := range cells {
		c := &cells[i]
		r := newRow(w).put(th.bold, c.label).to(12)
		b.addAll(flow(r, []piece{{12, th.bold, c.number + " " + spaced(c.unit, c.alt)}}, 2, w))
	}
	return b
}
