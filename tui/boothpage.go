package tui

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// The booth view is for a screen some steps away: five figures in digits as large as the terminal allows, the beat of a
// timed arc as a bar that moves, the zone and the strongest caution. It takes the whole screen, and any key leaves it.

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
	c := boothCell{label: guessMark(r.tag) + r.label, number: r.cell.number, unit: r.cell.unit, band: r.cell.band}
	if a := r.cell.alt(); a != "" {
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
	path := func() block { return append(pathLines(&m.th, &m.session, &m.session.card, cardStep, w), line{}) }
	return []boothLayout{{all, path(), hint}, {all, nil, hint}, {bare, path(), hint}, {bare, nil, hint}, {all, nil, nil}, {bare, nil, nil}}
}

// boothBody is the whole view. The digits come first: the ranges, the path over them and the line that says how to leave
// stand there only where they cost the digits nothing.
func (m *root) boothBody(w, h int) block {
	foot := m.boothFoot(w, h)
	var best boothGrid
	var shown boothLayout
	for _, l := range m.boothLayouts(w, h-len(foot)) {
		g, ok := gridOf(l.cells, w, h-len(foot)-len(l.top)-len(l.hint))
		if ok && g.dot.larger(best.dot) {
			best, shown = g, l
		}
	}
	foot = append(foot, shown.hint...)
	top := shown.top
	if best.dot.high > 0 && allDrawable(shown.cells) {
		top = append(top, best.draw(&m.th, shown.cells, w, h-len(top)-len(foot))...)
	} else {
		top = boothLines(&m.th, boothCells(&m.session, m.th.plain.comma), w)
	}
	return append(top.fit(h-len(foot)), foot...)
}

// boothHint says how to leave.
func (m *root) boothHint(w int) block {
	var b block
	text := "any key returns"
	if n := len(m.session.card.Warnings); n > 1 {
		text = fmt.Sprintf("any key returns; c there shows all %d", n)
	}
	b.say(m.th.quiet, 0, text, w)
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
		b.addAll(flow(r, []piece{{12, th.strong, c.number + " " + spaced(c.unit, c.alt)}}, 2, w))
	}
	return b
}

// boothFoot is the beat, and the zone with the strongest caution.
func (m *root) boothFoot(w, h int) block {
	b := m.boothBeat(w, h)
	if m.old {
		b.say(m.th.watch, 0, "▲ card is of the last job", w)
	}
	return append(b, boothVerdict(&m.th, &m.session.card, w, h)...)
}

// boothBeat is the bar of a timed arc, or how far its heat is followed.
func (m *root) boothBeat(w, h int) block {
	var b block
	switch {
	case m.session.card.Used.Mode != "timed":
	case m.beat.stop != nil:
		b.say(m.th.quiet, 0, fmt.Sprintf("on and off are rough until their heat is followed: %.0f %%", 100*m.beat.share()), w)
	case m.beat.playing():
		lines := max(1, h/12)
		if w < narrowWidth {
			lines = 1
		}
		for range lines {
			b.add(m.beat.filling(&m.th, w))
		}
	}
	return b
}

// boothVerdict is the zone's word with a stop, or, where there is room, with the strongest caution; and what endangers
// the hand.
func boothVerdict(th *theme, c *calc.Card, w, h int) block {
	style, word := zoneWord(th, c)
	r := newRow(w).put(style, word)
	if word != "" && len(c.Warnings) > 0 {
		r.blank(2)
	}
	dangers := dangerWords(c)
	if len(c.Warnings) == 0 || c.Warnings[0].Severity != calc.Stop && len(dangers) > 0 && h < lowHeight {
		putDangers(th, r, dangers, 0)
		return block{r.line()}
	}
	x := &c.Warnings[0] // they stand in the order of their severity
	p, mark := th.sign(x.Severity)
	text, body := x.Text, th.plain
	if x.Severity == calc.Stop {
		text, body = "STOP: "+text, th.stop
	}
	r.put(p, mark).blank(1)
	at, most := r.used, 1
	if w < narrowWidth || h >= 30 {
		most = 2
	}
	var b block
	for i, l := range wrap(clauses(text, w-at, most), w-at) {
		if i > 0 {
			r = newRow(w).blank(at)
		}
		b.add(r.put(body, l).line())
	}
	if len(dangers) > 0 {
		r = newRow(w)
		putDangers(th, r, dangers, 0)
		b.add(r.line())
	}
	return b
}

// zoneWord is the verdict in a word, and an edge that is not met besides.
func zoneWord(th *theme, c *calc.Card) (paint, string) {
	style := th.watch
	switch c.Verdict() {
	case "", "not-modelled":
		return th.quiet, ""
	case "good":
		style = th.good
	case "burn-through", "stop":
		style = th.stop
	case "outside":
		return th.watch, "not met: " + c.NearestEdge().Name
	}
	return style, c.Verdict()
}

// clauses is as much of a caution as a few lines hold, whole clauses only: at least the first one. A sign says where more
// is to be read.
func clauses(text string, w, lines int) string {
	if len(wrap(text, w)) <= lines {
		return text
	}
	best := ""
	for i, r := range text {
		if !strings.ContainsRune(";:.", r) || i+1 < len(text) && text[i+1] != ' ' {
			continue
		}
		head := text[:i+utf8.RuneLen(r)] + " …"
		if best == "" || best == "STOP: …" || len(wrap(head, w)) <= lines {
			best = head
		}
	}
	if best == "" {
		return text
	}
	return best
}
