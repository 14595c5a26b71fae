package tui

import (
	"fmt"
	"strings"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc/practice"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tables"
	"brazebooth/tui/canvas"
)

// strip is the verdict on the last bead, and what to do now. It also says that this is practice and not the card.
func (p *practicePage) strip(units quantity.System) canvas.Strip {
	last, n := p.last(), len(p.beads)
	s := canvas.Strip{State: canvas.Burns, Word: "BAD", Status: "practice, simulated   " + string(units)}
	switch last.Verdict {
	case practice.BeadGood:
		s.State, s.Word = canvas.Good, "GOOD"
	case practice.BeadAcceptable:
		s.State, s.Word = canvas.Marginal, "FAIR"
	}
	s.Reason = fmt.Sprintf("bead %d: %s", n, report.SeenText(last.Seen))
	if n == 1 {
		s.Reason = "bead 1, as the last welder left it: " + report.SeenText(last.Seen)
	}
	s.Brief, _, _ = strings.Cut(report.SeenText(last.Seen), ",")
	switch {
	case p.stop != nil && p.over:
		s.Do = "The program lays its own beads …"
	case p.stop != nil:
		s.Do = "The bead is being laid …"
	case p.over && p.keeping.kept:
		s.Do = "Kept in the book. Enter: the next booth."
	case p.over:
		s.Do = "* why: what the booth hid. Enter: the next booth."
	default:
		s.Do = fmt.Sprintf("Change a setting, then enter lays bead %d.", n+1)
	}
	return s
}

// view shows the target and the last bead beside each other, their differences, the settings, then the text.
func (p *practicePage) view(m *root, w, h int) (block, *tea.Cursor) {
	th, units := &m.th, m.Units
	room := h - 1 // the caution is below
	if p.typing {
		room--
	}
	var head, foot block
	if h >= 12 {
		head.say(th.bold, 0, fmt.Sprintf("level %d, booth %d: %s", p.job.Level, p.job.Seed, p.job.Work), w)
	}
	if h >= 16 {
		head.addAll(block(p.chips(m).Draw(th.Theme, w, 1)))
	}
	if p.why && p.revealed != nil {
		head = append(p.truth(th, min(w, textWidth), units), head...)
	}
	if !p.over {
		foot = p.dialLines(m, w, h)
	}
	text := p.text(m, min(w, textWidth))
	picture := max(3, h/4) // the text is more important
	if !p.over {
		picture = max(3, min(h/2, h-3-len(head)-len(foot)-max(1, h/8)))
	}
	beads := p.compared(th, units, w, picture)
	b := append(append(append(head, beads...), foot...), text...)
	at := p.scroll.view.YOffset()
	shown := p.scroll.show(th, b, at, at, w, room)
	if !p.typing {
		return pinned(th, shown, w, h), nil
	}
	set := p.settings()[p.at]
	shown, cursor := p.below(shown.fit(room), th, set.Words(), set, w)
	return pinned(th, shown, w, h), cursor
}

// chips are the job's choices, which cannot be changed here.
func (p *practicePage) chips(m *root) canvas.Chips {
	rows := choiceRows(&m.session, &p.card)
	for i := range rows {
		rows[i].tag = "" // nobody could have chosen otherwise
	}
	return chipsOf(&m.th, rows, &p.card)
}

// dialLines are the settings in digits as large as there is room for: below 60 columns in rows, on a low terminal two
// per line.
func (p *practicePage) dialLines(m *root, w, h int) (b block) {
	list, lines := p.dials(m), 6
	switch {
	case h < 10:
		for from := 0; from < len(list); from += 2 {
			b.addAll(block(list[from:min(len(list), from+2)].Draw(m.th.Theme, w, 1)))
		}
		return b
	case m.w < narrowWidth && h >= 22:
		lines = 3 * len(list)
	case m.w < narrowWidth:
		lines = len(list)
	case h >= 45:
		lines = h / 4
	case h >= 30:
		lines = 9
	}
	return block(list.Draw(m.th.Theme, w, lines))
}

// dials are the settings that can be changed. A changed one also shows its earlier value.
func (p *practicePage) dials(m *root) canvas.Dials {
	var list canvas.Dials
	was, sys := &p.last().Job, m.Units.Lead()
	for i, set := range p.settings() {
		v, old := set.At(&p.now).Or(tables.DefaultStickOut.V), set.At(was).Or(tables.DefaultStickOut.V)
		number := func(v float64) string {
			text, _, _ := quantity.Dialed(set.Figure, v, v, v, set.Unit, false, sys)
			return m.th.look.number(text)
		}
		d := canvas.Dial{Name: set.Words(), Unit: quantity.Label(set.Unit, sys), Number: number(v),
			Widest: m.th.look.number("88.8"), Cursor: i == p.at, Short: handSettings[set.Figure].short}
		if d.Name == "stickout" {
			d.Name = "stick-out"
		}
		if v != old {
			d.Also, d.Span = "was "+number(old), "was "+number(old)
		}
		if d.Cursor && p.typing {
			d.Number = p.field.String()
		}
		d.Bar.Low, d.Bar.High = track(set.Figure, v, v)
		d.Bar.Value = v
		list = append(list, d)
	}
	return list
}

// text is the text below the dials: what went wrong, how the job ended, the meter, the earlier beads.
func (p *practicePage) text(m *root, w int) (b block) {
	th, last, n := &m.th, p.last(), len(p.beads)
	switch {
	case p.err != nil:
		b.fault(th, faultOf(p.err), w)
	case p.over && p.run != nil:
		b.say(th.bold, 0, report.PracticeTally(n, last.Verdict, p.run), w)
		p.keepText(&b, th, m.Book != nil, w)
	}
	b.say(th.quiet, 0, "meter: "+report.MeterText(last), w)
	if _, drawn := beadJoint(last); !drawn {
		b.say(th.quiet, 0, report.SketchText, w)
	}
	if p.over {
		for _, x := range last.Unmet {
			b.say(th.quiet, 0, "not met: "+x, w)
		}
	}
	if p.run != nil {
		b.skip()
		b.addAll(p.program(th, m.Units, w))
	}
	if n > 1 {
		b.skip()
		b.add(newRow(w).put(th.bold, "your earlier beads").line())
		for i := range n - 1 {
			b.addAll(beadLine(th, i+1, &p.beads[i], m.Units, w))
		}
	}
	return b
}
