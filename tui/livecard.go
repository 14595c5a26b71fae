package tui

import (
	"brazebooth/calc"
)

// liveCard is the card beside a list: the dials below each other, a few figures that follow, how many cautions there
// are.
func liveCard(m *root, c *calc.Card, w, h int) block {
	rows := buildRows(&m.session, c)
	var b block
	dials := dialsOf(m, rows, c)
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

// lowCard is the card under a list, in the least room: a line for each dial.
func lowCard(m *root, c *calc.Card, w int) block {
	dials := dialsOf(m, buildRows(&m.session, c), c)
	if w < narrowWidth && m.h < 14 {
		return block(dials.Draw(m.th.Theme, w, 1))
	}
	return block(dials.Draw(m.th.Theme, w, len(dials)))
}
