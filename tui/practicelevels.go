package tui

import (
	"fmt"
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc/practice"
)

// levelsPage is the list of the levels of practice, each of which opens a job in a simulated booth.
type levelsPage struct {
	list listbox
	seed uint64
}

func (p *levelsPage) about(*root) about {
	return about{help: "on a practice job", keys: "enter open  ↑↓ pick  −+ booth  ←→ pages  esc card"}
}

// press handles a key: a digit picks a row, − and + pick another booth.
func (p *levelsPage) press(m *root, press tea.KeyPressMsg) action {
	n := len(practice.Levels())
	switch s := press.String(); {
	// these keys are meant for the job that is not there yet
	case m.drill.stop != nil && everywhere(press) == nil:
		return refuse("the booth is being set up", "a moment, then the key once more; esc gives it up")
	case len(s) == 1 && s[0] >= '1' && s[0] < '1'+byte(n):
		p.list.goTo(int(s[0] - '1'))
	case p.list.moved(press):
	case s == "+" || s == "=":
		p.seed++
	case s == "-":
		p.seed = max(1, p.seed-1)
	case key.Matches(press, bound.On):
		return p.start
	case s == "p" || s == "right" || s == "6":
		return turnPage(1)
	case s == "left":
		return turnPage(-1)
	default:
		return everywhere(press)
	}
	return nil
}

// start opens the chosen job; the same job as before is opened where it was left.
func (p *levelsPage) start(m *root) tea.Cmd {
	d, level := &m.drill, p.list.at()+1
	if d.job.Level == level && d.job.Seed == p.seed && len(d.beads) > 0 {
		m.push(d)
		return nil
	}
	return d.ask(m, practiceAsk{what: practiceOpens, level: level, seed: p.seed})
}

// view is the list of levels, and below it the task of the level under the cursor in full.
func (p *levelsPage) view(m *root, w, h int) (block, *tea.Cursor) {
	th, levels := &m.th, practice.Levels()
	at := p.list.at()
	var below block
	shortened := func(name string) string { // its full form is shown below
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
	case m.drill.stop != nil:
		below.say(th.quiet, 0, "the booth is being set up …", w)
	case m.drill.err != nil:
		below.say(th.watch, 0, "▲ "+faultOf(m.drill.err).what, w)
	default:
		below.say(th.bold, 0, opens+practice.WorkOf(at+1, p.seed).Line(), w)
	}
	var b, rest block
	b.say(th.bold, 0, fmt.Sprintf("%sbooth %d, − + another", title, p.seed), w)
	rest.skip()
	rest.say(th.quiet, 0, "A simulated booth hides a heat of its own, as far from the card's as a real one's may be. "+
		"You set, it lays the bead, you correct. Nothing is kept but by a key at the end.", w)
	room := h - 1 - len(b) - len(below) // the caution is below
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
	return pinned(th, b, w, h), nil
}

// pinned adds a caution below a text that is never scrolled away. In a job, c shows it in full together with the
// card's.
func pinned(th *theme, b block, w, h int) block {
	text := "▲ test beads on scrap first"
	switch {
	case w >= besideWidth:
		text = "▲ simulated beads are no licence: at the booth test beads on scrap come first"
	case w >= 39:
		text = "▲ no licence: test beads on scrap first"
	}
	return append(b.fit(h-1), newRow(w).put(th.watch, text).line())
}
