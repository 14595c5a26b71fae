package tui

import (
	"brazebooth/calc"
)

// liveCard is the card beside a list: the figures that a hand needs, a few that follow, and how many
// cautions there are.
func liveCard(th *theme, s *session, c *calc.Card, bad *fault, w, h int) block {
	var b block
	head := newRow(w).put(th.bold, "card")
	if bad != nil || s.old {
		head.put(th.watch, "  ▲ of the last job")
	}
	b.add(head.line())
	rows := buildRows(s, c)
	cols := measure(rows, settingRow)
	for i := range rows {
		if r := &rows[i]; r.kind == settingRow && r.numbered() {
			b.addAll(r.brief(th, cols, w))
		}
	}
	b.skip()
	results := measure(rows, resultRow)
	cols.number, cols.unit = max(cols.number, results.number), max(cols.unit, results.unit)
	for i := range rows {
		if r := &rows[i]; r.kind == resultRow && isTelling(r.name) {
			b.addAll(r.brief(th, cols, w))
		}
	}
	b.skip()
	b.add(cautionTally(th, c, w).line())
	if bad != nil {
		b.skip()
		b.say(th.watch, 0, bad.what, w)
		b.say(th.plain, 0, bad.hint, w)
	}
	return b.fit(min(h, len(b)))
}

// isTelling picks the results that stand beside a list.
func isTelling(name string) bool {
	switch name {
	case "current", "net_heat", "bead_width", "zinc_boiled_halfwidth":
		return true
	}
	return false
}

// brief is the row without remarks: name, value, and the band where there is room.
func (r *cardRow) brief(th *theme, c columns, w int) block {
	row := newRow(w).put(th.quiet, r.label).to(c.label + 1)
	style := th.bold
	if r.kind != settingRow {
		style = th.bold
	}
	mark := " "
	if r.tag == "assumed" {
		mark, style = "~", th.plain
	}
	from := row.used
	row.blank(c.number-width(r.fig.Value.Number)).put(th.quiet, mark).put(style, r.fig.Value.Number).put(th.plain, " "+r.fig.Value.Unit)
	var parts []piece
	if r.kind == settingRow {
		parts = append(parts, piece{0, style, r.fig.Other.String()})
	}
	if at := from + c.number + c.unit + 4; at+width(r.fig.Value.Band()) <= w && r.fig.Other.String() == "" {
		parts = append(parts, piece{at, th.quiet, r.fig.Value.Band()})
	}
	if r.name == "travel" {
		parts = append(parts, piece{0, th.quiet, r.short})
	}
	return flow(row, parts, from+1, w)
}

// fiveFigures is the card in the least room: what the hand sets, in as few lines as it takes.
func fiveFigures(th *theme, s *session, c *calc.Card, w int) block {
	rows := buildRows(s, c)
	var b block
	r := newRow(w)
	for i := range rows {
		x := &rows[i]
		if x.kind != settingRow || !x.numbered() {
			continue
		}
		value := x.fig.Value.String()
		if a := x.fig.Other.String(); a != "" {
			value += " (" + a + ")"
		}
		if x.name == "travel" {
			value += ", " + x.short
		}
		if x.tag == "assumed" {
			value = "~" + value
		}
		need := width(x.label) + 1 + width(value)
		if r.used > 0 && r.used+3+need > w {
			b.add(r.line())
			r = newRow(w)
		}
		if r.used > 0 {
			r.blank(3)
		}
		if need > w {
			b.addAll(flow(r.put(th.quiet, x.label), []piece{{0, th.bold, value}}, width(x.label)+1, w))
			r = newRow(w)
			continue
		}
		r.put(th.quiet, x.label).blank(1).put(th.bold, value)
	}
	if r.used > 0 {
		b.add(r.line())
	}
	return b
}
