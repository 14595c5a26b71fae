package tui

import (
	"slices"
	"strconv"
	"strings"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
)

// view is a list with the card beside it, or with the main figures below it.
func (p *picker) view(m *root, w, h int) (block, *tea.Cursor) {
	var b block
	if h >= 16 && m.h >= 20 {
		rows := choiceRows(&m.session, m.shown())
		chips := chipsOf(&m.th, rows, m.shown())
		chips.Cursor = slices.IndexFunc(rows, func(r cardRow) bool { return r.ask == p.ask })
		b.addAll(block(chips.Draw(m.th.Theme, w, 1)))
		b.skip()
	}
	body, x := p.beside(m, w, h-len(b))
	p.first += len(b)
	return append(b, body...), tea.NewCursor(x, len(b))
}

func (p *picker) beside(m *root, w, h int) (b block, x int) {
	c := m.shown()
	if w < besideWidth {
		dials := dialsOf(m, dialled(buildRows(&m.session, c)), c)
		lines := len(dials)
		if w < narrowWidth && m.h < 14 {
			lines = 1
		}
		five := block(dials.Draw(m.th.Theme, w, lines))
		list, x := p.draw(&m.th, w, h-len(five)-1, false)
		list = list.fit(h - len(five))
		list.addAll(five)
		return list, x
	}
	side := 30
	if w >= wideWidth {
		side = 46
	}
	left := w - side - 3
	card := liveCard(m, c, side, h)
	var aside block
	if w >= wideWidth {
		aside = p.asideReasons(m, side, h-len(card))
		card.addAll(aside)
	}
	list, x := p.draw(&m.th, left, h, len(aside) > 0)
	return beside(list.fit(h), card, left+3, m.th.quiet, "│ "), x
}

// asideReasons is the reasons for the row under the cursor, below the live card on a wide screen. It is empty if there
// is no room for even its sentence.
func (p *picker) asideReasons(m *root, w, h int) block {
	c := p.choice()
	if c == nil || h < 2+max(3, len(wrap(rowSentence(c), w))) {
		return nil
	}
	var b block
	b.skip()
	b.add(newRow(w).put(m.th.bold, c.Name).line())
	b.addAll(reasonPage(&m.th, c, p.ask.Reasons(m.present(), c.ID), w))
	return b.fit(min(len(b), h))
}

// draw draws the question, the list and the meaning of the row under the cursor, in at most h lines, and returns the
// cursor's column in the first line. explained means that the row's meaning is shown elsewhere. Rows may be shortened
// only if the meaning is shown in full, here or elsewhere.
func (p *picker) draw(th *theme, w, h int, explained bool) (block, int) {
	var b block
	hint := "type to find, or a row's number"
	if p.ask.Sized() {
		hint = "type it, or pick"
	}
	field, cursor := p.list.search(th, &p.field, p.ask.Ask+" ", hint, w)
	b.add(field)
	typed := p.typedLines(th, w)
	var rule block
	if p.ask.Sized() {
		rule.say(th.quiet, 0, strings.TrimPrefix(p.said+"; "+quantity.Rule(p.ask.Kind), "; "), w)
	}
	if h-1-len(rule)-len(typed) >= 4 { // otherwise the rows are more important
		b.addAll(rule)
	}
	b.addAll(typed)
	var meaning block
	if c := p.choice(); c != nil && !explained {
		meaning.say(th.plain, 0, c.Name+": "+rowSentence(c), w)
	}
	room := h - len(b) - len(meaning) - 2
	if room < 3 {
		meaning, room = meaning[:0], h-len(b)-1
	}
	b.skip()
	p.first = len(b)
	b.addAll(p.body(th, w, room, explained || len(meaning) > 0))
	if len(meaning) > 0 {
		b.skip()
		b.addAll(meaning)
	}
	return b.fit(min(len(b), h)), cursor
}

// typedLines says how a typed size was read, or what to type instead.
func (p *picker) typedLines(th *theme, w int) (b block) {
	switch {
	case p.wrong != nil:
		b.say(th.plain, 0, p.wrong.what+" – "+p.wrong.hint, w)
	case p.unfit != nil:
		b.fault(th, p.unfit, w)
	case p.typed != nil:
		b.say(th.bold, 0, "= "+p.typed.Name+"  "+p.typed.Fact, w)
	}
	if text := quantity.Reading(p.ask.Kind, p.field.String(), quantity.Metric); text != "" && p.wrong == nil {
		b.say(th.watch, 0, text, w)
	}
	return b
}

// body draws the rows around the cursor. parts means that a row may show a part of its sentence.
func (p *picker) body(th *theme, w, h int, parts bool) block {
	names, facts := 0, 0
	for _, i := range p.found {
		names = max(names, width(p.rows[i].Name))
		facts = max(facts, width(p.rows[i].Fact))
	}
	if len(p.found) == 0 {
		var b block
		b.say(th.quiet, 2, "nothing here is called that; esc lists all", w)
		return b
	}
	return p.list.draw(max(1, h), func(n int, chosen bool) line {
		return p.rowLine(th, n, chosen && p.typed == nil && !p.none, names, facts, w, parts)
	})
}

// briefRoom is the number of columns below which a row shows its own short form, because hardly a clause of its
// sentence would fit.
const briefRoom = 30

func (p *picker) rowLine(th *theme, n int, chosen bool, names, facts, w int, parts bool) line {
	i := p.found[n]
	c := &p.rows[i]
	r := newRow(w)
	if chosen {
		r.put(th.accent, "▸")
	}
	r.to(1)
	at := 2
	if !p.ask.Sized() {
		number := strconv.Itoa(i + 1)
		r.to(3-width(number)+1).put(th.quiet, number)
		at = 5
	}
	r.to(at).put(th.under(chosen, th.plain), c.Name)
	if c.ID == p.before {
		r.put(th.bold, " ✓")
	}
	if facts > 0 {
		r.to(at+names+3).put(th.plain, c.Fact)
		at += facts + 2
	}
	at += names + 3
	if room := w - at; room >= 20 && (parts || width(c.Line) <= room) {
		// a clause cut in the middle could lose the number that it is about
		line := clauses(c.Line, ",;:.", func(text string) bool { return width(text) <= room })
		if width(line) > room || strings.HasSuffix(line, "…") && c.Brief != "" && room < briefRoom {
			line = c.Brief
		}
		if width(line) <= room {
			r.to(at).put(th.quiet, line)
		}
	}
	return r.line()
}

// rowSentence is everything that a row says about itself.
func rowSentence(c *choice.Row) string { return strings.Trim(c.Line+"; "+c.More, "; ") }

// liveCard is the card beside a list: the dials below each other, a few results, the number of cautions.
func liveCard(m *root, c *calc.Card, w, h int) block {
	rows := buildRows(&m.session, c)
	var b block
	dials := dialsOf(m, dialled(rows), c)
	each := 6
	for each > 4 && h < each*len(dials)+5 {
		each--
	}
	if h < each*len(dials)+2 {
		b.addAll(block(dials.Draw(m.th.Theme, w, len(dials))))
	} else {
		for _, d := range dials {
			b.addAll(block(d.Draw(m.th.Theme, w, each)).fit(each))
		}
	}
	if len(b) < h-3 {
		b.skip()
	}
	for i := range rows {
		if r := &rows[i]; r.name == "current" || r.name == "net_heat" || r.name == "bead_width" {
			b.add(newRow(w).put(m.th.quiet, r.label).to(14).put(m.th.bold, r.fig.Value.String()).line())
		}
	}
	b.add(cautionTally(&m.th, c, w).line())
	return b.fit(min(h, len(b)))
}
