package tui

import (
	"slices"

	tea "charm.land/bubbletea/v2"

	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tui/canvas"
)

// cardLayout is the layout of the card. It changes only with the size of the terminal.
type cardLayout struct {
	chips, dials int // lines
	left, side   int // columns of the dials and of the drawing beside them
	edges        bool
	gaps         bool // an empty line between the parts
}

func (m *root) cardLayout() cardLayout {
	l := cardLayout{chips: 1, dials: 5}
	switch h := m.h; {
	case h >= 50:
		l.chips, l.dials = 3, h/4
	case h >= 30:
		l.chips, l.dials = 3, 8
	case h >= 24:
		l.chips, l.dials = 2, 7
	case h >= 13:
		l.dials = 6
	}
	l.gaps = m.h >= 24
	if _, drawn := jointOf(&m.session.card.Section); drawn && m.w >= 80 && m.h >= 20 {
		l.side = m.w - 2 - max(57, m.w*65/100) - 2
	}
	l.edges = m.w >= 100 && m.h >= 30
	if l.left = m.w - 2*m.margin(); l.side > 0 {
		l.left -= l.side + 2
	}
	size, _ := canvas.Fit("88.8", (l.left+2)/3-3, l.dials-4)
	l.dials = min(l.dials, max(3, size.Lines)+4) // no higher than the digits can be
	return l
}

// view is the card: chips, dials with the joint beside them, other settings, dangers, results.
func (p *cardPage) view(m *root, w, h int) (block, *tea.Cursor) {
	l, th := m.cardLayout(), &m.th
	if p.typing {
		h--
	}
	b := block(p.chips(m, l.chips > 1).Draw(th.Theme, w, l.chips)).fit(l.chips)
	main := block(p.dials(m).Draw(th.Theme, l.left, l.dials))
	main.addAll(p.held(m, l.left, h-len(b)-len(main)))
	if l.side > 0 {
		main = p.beside(m, main, l)
	}
	b.addAll(main)
	if l.gaps {
		b.skip()
	}
	b.addAll(p.lower(m, l, w, h-len(b)))
	if !p.typing {
		return b, nil
	}
	return p.below(b.fit(h), th, p.row().label, choice.SettingOf(p.row().name), w)
}

func (p *cardPage) beside(m *root, main block, l cardLayout) block {
	j, _ := jointOf(&m.session.card.Section)
	var right block
	high := len(main)
	if l.edges {
		high--
		right.say(m.th.quiet, 0, "the joint, to scale", l.side)
	}
	right.addAll(block(p.joint.Draw(j, m.th.Theme, l.side, high)))
	return beside(main, right, l.left+2, m.th.quiet, "")
}

// lower is the dangers and, below them, the results. On a large screen the edges are beside the dangers.
func (p *cardPage) lower(m *root, l cardLayout, w, h int) block {
	figures, first, last := p.figures(m, w)
	left := w
	least, said := min(len(figures), 2), m.lampSays()
	if len(unsaidStops(&m.session.card, said)) > 0 { // a stop is more important than the results
		least = 0
	}
	if l.edges {
		left, least = l.left, min(len(figures), max(2, h/3))
	}
	room := h - least
	if l.gaps {
		room--
	}
	b := cautionBand(&m.th, &m.session.card, left, max(1, room), said)
	if l.edges && len(m.session.card.Edges) > 0 {
		var right block
		right.say(m.th.quiet, 0, "how far each edge is away", l.side)
		right.addAll(block(edgesOf(&m.session.card).Draw(m.th.Theme, l.side, h-1)))
		b = beside(b, right, left+2, m.th.quiet, "")
	}
	if l.gaps {
		b.skip()
	}
	if room = h - len(b); room > 0 {
		b.addAll(p.scroll.show(&m.th, figures, first, last, w, room))
	}
	if h-len(b) > 8 { // a large screen also explains them
		b.skip()
		b.add(newRow(w).put(m.th.bold, "why: "+p.row().label).line())
		w = min(w, textWidth)
		text := reasons(&m.th, p.row(), &m.session.card, m.Units, w, !l.edges)
		if more := h - len(b); len(text) > more {
			text = text.fit(more - 1)
			text.say(m.th.quiet, 0, "enter tells all of it", w)
		}
		b.addAll(text)
	}
	return b
}

// held is the other settings and the notes, on few lines.
func (p *cardPage) held(m *root, w, room int) block {
	th := &m.th
	var b block
	most := 1
	if m.h >= 30 || m.h >= 20 && m.Units == quantity.Both {
		most = 3
	}
	if m.h >= 50 {
		most = 12
	}
	r := newRow(w)
	rows := p.rows
	if m.meter.kept != "" { // the power source whose readings are on the card, which is also saved with a test bead
		rows = append(slices.Clone(rows), cardRow{kind: noteRow, label: "on", words: m.meter.kept})
	}
	for i := range rows {
		x := &rows[i]
		label, value, band := x.held(m.h >= 30)
		if value == "" {
			continue
		}
		if x.kind == heldRow && m.unsettled(x.name) {
			if value, band = value+" rough", ""; m.beat.stop != nil {
				value = toCome
			}
		}
		gap := min(r.used, 3)
		if gap+width(label)+2+width(value)+width(band) > r.left() {
			if len(b)+1 >= min(most, room) {
				continue
			}
			if r.used > 0 {
				b.add(r.line())
				r, gap = newRow(w), 0
			}
		}
		name := th.under(i == p.at && x.kind != dialRow, th.quiet)
		if r.blank(gap).put(name, label).blank(1); width(value)+1+width(band) > r.left() {
			b.addAll(flow(r, []piece{{0, th.bold, value}, {0, th.quiet, band}}, 2, w))
			r = newRow(w)
			continue
		}
		if r.put(th.bold, value); band != "" {
			r.blank(1).put(th.quiet, band)
		}
	}
	if r.used > 0 && room > 0 {
		b.add(r.line())
	}
	return b
}

// held is the text of a row among the other settings, "" for a row that is shown elsewhere. It has the range only if
// there is room.
func (r *cardRow) held(ranges bool) (label, value, band string) {
	switch r.kind {
	case dialRow: // what the dial has no room for: the other system, or what the times are for
		if r.name == "arc_on" {
			return "on and off", r.short, ""
		}
		return r.label, r.fig.Other.String(), ""
	case heldRow:
		value = guessMark(r.tag) + r.fig.Value.String()
		if o := r.fig.Other.String(); o != "" {
			value += " (" + o + ")"
		}
		if band = r.fig.Value.Band(); !ranges {
			band = ""
		} else if r.fig.Range == report.UsualBetween {
			band = "usual " + band
		}
		return r.label, value, band
	case noteRow:
		return r.label, r.words, ""
	}
	return "", "", ""
}
