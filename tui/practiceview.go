package tui

import (
	"fmt"
	"strings"

	"charm.land/bubbles/v2/key"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tables"
	"brazebooth/tui/canvas"
)

// practiceTitle stands where the path of the card stands else.
func practiceTitle(th *theme, units quantity.System, w int) line {
	text := "  a simulated booth, not your card"
	if w < narrowWidth {
		text = "  simulated, not your card"
	}
	r := newRow(w).put(th.bold, "practice").put(th.plain, text)
	if text := string(units); r.left() > width(text)+1 && units != quantity.Both {
		r.to(w-width(text)).put(th.quiet, text)
	}
	return r.line()
}

// hints are the keys of the open job.
func (p *practicePage) hints(k *keyMap) []key.Binding {
	if p.over {
		return []key.Binding{named(k.On, "enter", "next booth"), named(k.Why, "*", "why"), named(k.KeepBead, "k",
			"keep"), named(k.PageDown, "pgdn", "scroll"), named(k.Cautions, "c", "cautions"), named(k.Back, "esc",
			"levels")}
	}
	return []key.Binding{named(k.On, "enter", "lay the bead"), named(k.Down, "↑↓", "select"), named(k.More, "←→",
		"change"), named(k.EndPractice, "s", "end"), named(k.Words, "g", "words"), named(k.Reset, "r", "as laid"),
		named(k.PageDown, "pgdn", "scroll"), named(k.Cautions, "c", "cautions"), named(k.Units, "u", "units"),
		named(k.Back, "esc", "levels")}
}

// draw is the list of levels.
func (p *practicePage) draw(th *theme, w, h int) block {
	var b block
	b.say(th.bold, 0, fmt.Sprintf("practise correcting test beads: booth %d, − + another", p.seed), w)
	var first, last int
	for i, l := range practice.Levels() {
		mark, paint, at := "  ", th.plain, len(b)
		if i == p.level {
			mark, paint = "› ", th.accent
		}
		b.hang(paint, 0, fmt.Sprintf("%s%d  ", mark, l.Level), l.Name, w)
		if i == p.level {
			first, last = at, len(b)-1
		}
	}
	switch {
	case p.stop != nil:
		b.say(th.quiet, 0, "the booth is being set up …", w)
	case p.err != nil:
		b.say(th.watch, 0, "▲ "+faultOf(p.err).what, w)
	default:
		b.say(th.bold, 0, "enter opens the job: "+practice.WorkOf(p.level+1, p.seed).Line(), w)
	}
	b.skip()
	b.say(th.quiet, 0, "A simulated booth hides a heat of its own, as far from the card's as a real one's may be. "+
		"You set, it lays the bead, you correct. Nothing is kept but by a key at the end.", w)
	if p.moved { // the row that was picked comes onto the screen
		p.view.show(b, first, last, h-2)
		p.moved = false
	}
	return p.view.pinned(th, b, w, h)
}

// drawJob is the open job, from the setting to the beads that were laid.
func (p *practicePage) drawJob(th *theme, keeps bool, units quantity.System, w, h int) block {
	var b block
	b.say(th.bold, 0, fmt.Sprintf("level %d, booth %d: %s", p.job.Level, p.job.Seed, p.job.Work), w)
	if h >= 14 {
		b.say(th.quiet, 0, report.PracticeWork(&p.card, units.Lead()), w)
	}
	if p.why && p.revealed != nil {
		b.addAll(p.truth(th, units, w))
		b.skip()
	}
	last := &p.beads[len(p.beads)-1]
	if w >= besideWidth {
		left := p.controls(th, keeps, units, 36)
		b.addAll(beside(left, p.beadBlock(th, last, units, w-39, max(4, h-9)), 39, th.quiet, "│ "))
	} else {
		b.addAll(p.controls(th, keeps, units, w))
		b.addAll(p.beadBlock(th, last, units, w, max(4, h/2)))
	}
	if p.run != nil {
		b.skip()
		b.addAll(p.program(th, units, w))
	}
	if n := len(p.beads) - 1; n > 0 {
		b.skip()
		b.add(newRow(w).put(th.bold, "your earlier beads").line())
		for i := range n {
			b.addAll(beadLine(th, i+1, &p.beads[i], units, w))
		}
	}
	return p.view.pinned(th, b, w, h)
}

// pinned draws a text over the caution that is never scrolled away; on a job c says it in full, with those of its card.
func (v *window) pinned(th *theme, b block, w, h int) block {
	text := "▲ no licence: test beads on scrap first"
	if w >= besideWidth {
		text = "▲ simulated beads are no licence: at the booth test beads on scrap come first"
	}
	out := append(v.draw(th, b, w, h-1).fit(h-1), line{})
	out[h-1] = newRow(w).put(th.watch, text).line()
	return out
}

// controls are the settings and what can be done now.
func (p *practicePage) controls(th *theme, keeps bool, units quantity.System, w int) block {
	var b block
	was := &p.beads[len(p.beads)-1].Job
	for i, set := range p.settings() {
		v := set.At(&p.now).Or(tables.DefaultStickOut.V)
		mark, paint := "  ", th.plain
		if i == p.at && !p.over {
			mark, paint = "› ", th.accent
		}
		r := newRow(w).put(th.accent, mark).put(paint, calc.FigureLabel(set.Figure)).
			to(13).put(th.bold, report.SettingValue(v, set.Unit, units.Lead()))
		if old := set.At(was).Or(tables.DefaultStickOut.V); old != v && !p.over {
			r.put(th.quiet, "  was "+report.SettingValue(old, set.Unit, units.Lead()))
		}
		b.add(r.line())
	}
	b.addAll(p.next(th, keeps, w))
	return b
}

// next says what enter and the other keys do now, and how the job ended.
func (p *practicePage) next(th *theme, keeps bool, w int) block {
	var b block
	n := len(p.beads)
	switch {
	case p.stop != nil && p.over:
		b.say(th.quiet, 0, "the program lays its own beads …", w)
	case p.stop != nil:
		b.say(th.quiet, 0, "the bead is being laid …", w)
	case p.err != nil:
		f := faultOf(p.err)
		b.say(th.watch, 0, "▲ "+f.what+" – "+f.hint, w)
	case p.over && p.run != nil:
		b.say(th.bold, 0, report.PracticeTally(n, p.beads[n-1].Verdict, p.run), w)
		b.say(th.bold, 0, "* why: what the booth hid", w)
		p.keepText(&b, th, keeps, w)
		b.say(th.bold, 0, "enter: the next booth", w)
	default:
		b.say(th.bold, 0, fmt.Sprintf("enter: lay bead %d", n+1), w)
		b.say(th.quiet, 0, "s: end, see the program's", w)
	}
	return b
}

// keepText says what is kept, and that nothing is unasked.
func (p *practicePage) keepText(b *block, th *theme, keeps bool, w int) {
	switch {
	case !keeps:
	case p.keeping:
		b.say(th.quiet, 0, "being kept …", w)
	case p.kept:
		b.say(th.good, 0, "✓ kept in the book", w)
	default:
		b.say(th.bold, 0, "k: keep level, booth, your beads and the program's in the book; else nothing is kept", w)
	}
}

// beadBlock is a bead with its verdict, its look and its drawing.
func (p *practicePage) beadBlock(th *theme, bead *practice.Bead, units quantity.System, w, h int) block {
	var b block
	n := len(p.beads)
	who := fmt.Sprintf("bead %d ", n)
	if n == 1 {
		who = "bead 1, as the last welder left it "
	}
	mark, paint := beadMark(th, bead.Verdict)
	b.hang(paint, 0, mark+" ", who+"– "+report.LookText(bead), w)
	b.say(th.quiet, 0, "meter: "+report.MeterText(bead), w)
	if p.over && len(bead.Unmet) > 0 {
		for _, x := range bead.Unmet {
			b.say(th.quiet, 0, "not met: "+x, w)
		}
	}
	wide, high := min(w, 60), min(10, max(7, h-len(b)-1))
	if j, ok := jointOf(&bead.Section); ok && bead.Section.Wet[0] > 0 && bead.Section.Wet[1] > 0 {
		b.addAll(drawnJoint(th, j, wide, high, units))
		return b
	}
	for _, id := range strings.Split(bead.Seen, ",") {
		if lines := canvas.DrawSight(th.Theme, id, min(wide, 24), 4); lines != nil {
			b.addAll(block(lines))
			b.say(th.quiet, 0, report.SketchText, w)
			break
		}
	}
	return b
}

func beadMark(th *theme, verdict string) (string, paint) {
	switch verdict {
	case practice.BeadGood:
		return "✓", th.good
	case practice.BeadAcceptable:
		return "▲", th.watch
	}
	return "✗", th.stop
}

// beadLine is a bead in short: how it was laid, what it showed.
func beadLine(th *theme, n int, bead *practice.Bead, units quantity.System, w int) block {
	var b block
	mark, paint := beadMark(th, bead.Verdict)
	b.hang(paint, 0, fmt.Sprintf("%s %d  ", mark, n), report.SettingText(&bead.Job,
		units.Lead())+" – "+report.LookText(bead), w)
	return b
}
