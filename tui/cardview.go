package tui

import tea "charm.land/bubbletea/v2"

// view is the card, on a wide screen with the reasons of the selected row beside it.
func (p *cardPage) view(m *root, w, h int) (block, *tea.Cursor) {
	if w < wideWidth {
		return p.draw(&m.th, &m.session, w, h, false), nil
	}
	side := w * 2 / 5
	left := w - side - 3
	b := p.draw(&m.th, &m.session, left, h, true)
	r := p.row()
	if r == nil {
		return b, nil
	}
	var why block
	why.add(newRow(side).put(m.th.bold, r.label).line())
	why.skip()
	why.addAll(reasons(&m.th, r, &m.session.card, m.units, side))
	why.skip()
	why.addAll(cautionList(&m.th, &m.session.card, side, h-len(why)))
	return beside(b.fit(h), why.fit(min(h, len(why))), left+3, m.th.quiet, "│ "), nil
}

// draw draws the card in at most h lines. aside means that the cautions stand beside it.
func (p *cardPage) draw(th *theme, s *session, w, h int, aside bool) block {
	heads, first, last := p.part(th, settingRow, w)
	rest, restFirst, restLast := p.lower(th, w)
	bandRoom := max(2, min(9, h-len(heads)-6))
	if stop := stopLines(th, &s.card, w); stop > 0 { // a stop goes before the results
		bandRoom = max(bandRoom, min(9, h-len(heads)-4, stop+1))
	}
	band := cautionBand(th, &s.card, w, bandRoom, !aside)
	fixed := len(heads) + 1 + len(band) + 1
	var b block
	switch {
	case fixed+4 <= h:
		b.addAll(heads)
		b.skip()
		b.addAll(band)
		b.skip()
		b.addAll(p.rest.marked(th, p.rest.show(rest, restFirst, restLast, h-fixed), len(rest), w))
	default:
		b.addAll(heads)
		b.skip()
		b.addAll(rest)
		if restLast >= 0 {
			first, last = restFirst+len(heads)+1, restLast+len(heads)+1
		}
		pin := cautionBand(th, &s.card, w, h/2, false)
		if len(pin) < 4 && !aside { // room for the first caution, however many rows a timed arc has
			pin = cautionBand(th, &s.card, w, min(h/2, 5), true)
		}
		all := len(b)
		b = p.all.marked(th, p.all.show(b, first, last, h-len(pin)), all, w)
		b.addAll(pin)
	}
	return b
}

// lower is what stands under the cautions: results, then the other choices.
func (p *cardPage) lower(th *theme, w int) (b block, first, last int) {
	results, f1, l1 := p.part(th, resultRow, w)
	choices, f2, l2 := p.part(th, choiceRow, w)
	b.addAll(results)
	b.skip()
	n := len(b)
	b.addAll(choices)
	switch {
	case l1 >= 0:
		return b, f1, l1
	case l2 >= 0:
		return b, f2 + n, l2 + n
	}
	return b, 0, -1
}

// part draws the rows of one kind and tells which lines the cursor's row takes, -1 for none.
func (p *cardPage) part(th *theme, kind rowKind, w int) (b block, first, last int) {
	cols := measure(p.rows, kind)
	first, last = 0, -1
	for i := range p.rows {
		r := &p.rows[i]
		if r.kind != kind {
			continue
		}
		lines := r.draw(th, cols, i == p.at, w)
		if i == p.at {
			first, last = len(b), len(b)+len(lines)-1
		}
		b.addAll(lines)
	}
	return b, first, last
}

// piece is one part of a row: where it would like to stand and how it looks.
type piece struct {
	col   int
	paint paint
	text  string
}

// tagRoom is the width from which "assumed" is written out; below it the sign ~ stands alone.
const tagRoom = 72

// draw sets the row's parts side by side; those without room stand under the value, whole.
func (r *cardRow) draw(th *theme, c columns, chosen bool, w int) block {
	head := newRow(w)
	name, value := th.quiet, th.bold
	if r.kind != settingRow {
		value = th.bold
	}
	if chosen {
		head.put(th.bold, "▸")
		name = th.bold
	}
	head.to(2).put(name, r.label)
	from := 2 + c.label + 2
	head.to(from)
	if !r.numbered() {
		return r.drawWords(th, head, from, w)
	}
	if r.tag == "assumed" {
		value = th.plain
	}
	head.to(from+c.number-width(r.fig.Value.Number)-1).put(th.quiet, guessMark(r.tag)).to(from + c.number - width(r.fig.Value.Number))
	head.put(value, r.fig.Value.Number).put(th.plain, " "+r.fig.Value.Unit)
	return flow(head, r.parts(th, c, value, from, w), from, w)
}

// parts are what stands behind a number: the other system, the band, whose it is, the remark.
func (r *cardRow) parts(th *theme, c columns, value paint, from, w int) []piece {
	at := from + c.number + 1 + c.unit + 2
	list := make([]piece, 0, 4)
	put := func(p paint, text string, room int) {
		list = append(list, piece{at, p, text})
		if room > 0 {
			at += room + 2
		}
	}
	put(value, r.fig.Other.String(), c.alt)
	if tag := tagText(r.tag, w); r.fig.Value.Band() == "" && width(tag) <= c.band { // it stands in for the band, and nothing wraps
		put(th.tag(r.tag), tag, c.band)
	} else {
		put(th.quiet, r.fig.Value.Band(), c.band)
		put(th.tag(r.tag), tag, width(tag))
	}
	long := r.long
	if w-at < width(long) {
		long = r.short
	}
	put(th.quiet, long, 0)
	return list
}

func guessMark(tag string) string {
	if tag == "assumed" {
		return "~"
	}
	return ""
}

// drawWords sets a row whose value is a text.
func (r *cardRow) drawWords(th *theme, head *row, from, w int) block {
	text := r.words
	if width(r.long) <= head.left() && r.long != "" {
		text = r.long
	}
	value := th.bold
	if r.tag == "assumed" || r.kind == choiceRow {
		value = th.plain
	}
	parts := []piece{{from, value, guessMark(r.tag) + text}, {0, th.tag(r.tag), tagText(r.tag, w)}}
	return flow(head, parts, from, w)
}

// flow puts the parts behind head, in their columns where that fits, closer where it does not, and on
// further lines from column from on where the line is full.
func flow(head *row, parts []piece, from, w int) block {
	var b block
	for _, p := range parts {
		if p.text == "" {
			continue
		}
		at, need := from, width(p.text)
		if head.used > from {
			at = max(p.col, head.used+2)
			if at+need > w {
				at = head.used + 2
			}
		}
		if at+need > w && head.used > from {
			b.add(head.line())
			head, at = newRow(w), from
			if need <= w-2 {
				at = min(from, w-need)
			}
		}
		for i, l := range wrap(p.text, w-at) {
			if i > 0 {
				b.add(head.line())
				head = newRow(w)
			}
			head.to(at).put(p.paint, l)
		}
	}
	b.add(head.line())
	return b
}

// tag is how "yours" and "assumed" look.
func (th *theme) tag(tag string) paint {
	if tag == "yours" {
		return th.bold
	}
	return th.quiet
}

func tagText(tag string, w int) string {
	if tag == "assumed" && w < tagRoom {
		return ""
	}
	return tag
}
