package tui

import (
	"fmt"
	"strings"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/calc/practice"
)

func (p *practicePage) about(m *root) about {
	a := about{help: "on a practice job", keys: "enter open  ↑↓ pick  −+ booth  ←→ pages  esc card"}
	if !m.practising() {
		return a
	}
	a.term = calc.FigureLabel(p.settings()[p.at].Figure)
	switch {
	case p.over:
		a.keys = "enter next booth  * why  k keep  pgdn scroll  c cautions  esc levels"
	case p.typing:
		a.keys = "enter set  esc leave it"
	default:
		a.keys = "enter lay the bead  ←→ pick  ↑↓ change  s end  g words  r as laid  pgdn scroll  c cautions  " +
			"u units  esc levels"
	}
	return a
}

func (p *practicePage) view(m *root, w, h int) (block, *tea.Cursor) {
	if p.open {
		return p.viewJob(m, w, h)
	}
	return p.draw(&m.th, w, h), nil
}

// draw is the list of levels, and whole what the one under the cursor asks for.
func (p *practicePage) draw(th *theme, w, h int) block {
	levels := practice.Levels()
	at := p.list.at()
	var below block
	shortened := func(name string) string { // it stands whole below
		return fewer(name, " ", func(name string) bool { return width(name) <= w-5 })
	}
	if name := levels[at].Name; shortened(name) != name {
		below.say(th.quiet, 0, name, w)
	}
	title, opens := "practise correcting test beads: ", "enter opens the job: "
	if w < narrowWidth-2 {
		title, opens = "", "enter: "
	}
	switch {
	case p.stop != nil:
		below.say(th.quiet, 0, "the booth is being set up …", w)
	case p.err != nil:
		below.say(th.watch, 0, "▲ "+faultOf(p.err).what, w)
	default:
		below.say(th.bold, 0, opens+practice.WorkOf(at+1, p.seed).Line(), w)
	}
	var b, rest block
	b.say(th.bold, 0, fmt.Sprintf("%sbooth %d, − + another", title, p.seed), w)
	rest.skip()
	rest.say(th.quiet, 0, "A simulated booth hides a heat of its own, as far from the card's as a real one's may be. "+
		"You set, it lays the bead, you correct. Nothing is kept but by a key at the end.", w)
	room := h - 1 - len(b) - len(below) // the caution stands below
	b.addAll(p.list.draw(max(1, room), func(i int, chosen bool) line {
		text := fmt.Sprintf(" %d  %s ", levels[i].Level, shortened(levels[i].Name))
		if !chosen {
			text = strings.TrimRight(text, " ")
		}
		return newRow(w).put(th.under(chosen, th.plain), text).line()
	}))
	b.addAll(below)
	if len(b)+len(rest) < h {
		b.addAll(rest)
	}
	return pinned(th, b, w, h)
}

// pinned puts the caution that is never scrolled away under a text; on a job c says it in full, with those of its card.
func pinned(th *theme, b block, w, h int) block {
	text := "▲ test beads on scrap first"
	switch {
	case w >= besideWidth:
		text = "▲ simulated beads are no licence: at the booth test beads on scrap come first"
	case w >= 39:
		text = "▲ no licence: test beads on scrap first"
	}
	out := append(b.fit(h-1), line{})
	out[h-1] = newRow(w).put(th.watch, text).line()
	return out
}
