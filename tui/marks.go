package tui

import (
	"slices"
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/choice"
)

// marksPage is a list of which several may be true: what stops a job.
type marksPage struct {
	title, hint string
	rows        []markRow
	at          int
	top         window
	alone       string                    // id that stands for itself: marking it clears the others
	done        func(ids []string) action // what enter asks for
}

type markRow struct {
	id, name, line string
	marked         bool
}

func (p *marksPage) about(*root) about {
	return about{help: "in a list of marks", keys: "space mark  enter go on  ↑↓ pick  esc back"}
}

func (p *marksPage) press(m *root, press tea.KeyPressMsg) action {
	switch {
	case key.Matches(press, bound.Up):
		p.at = max(0, p.at-1)
	case key.Matches(press, bound.Down):
		p.at = min(len(p.rows)-1, p.at+1)
	case key.Matches(press, bound.Play), key.Matches(press, bound.Booth): // space, or 5 on a keypad
		p.toggle()
	case key.Matches(press, bound.On):
		return p.done(p.ids())
	case key.Matches(press, bound.Back):
		return goBack
	default:
		return everywhere(press)
	}
	return nil
}

// toggle marks the row under the cursor, or takes its mark away.
func (p *marksPage) toggle() {
	r := &p.rows[p.at]
	r.marked = !r.marked
	if !r.marked || p.alone == "" {
		return
	}
	for i := range p.rows {
		if i != p.at && (r.id == p.alone || p.rows[i].id == p.alone) {
			p.rows[i].marked = false
		}
	}
}

func (p *marksPage) ids() []string {
	var ids []string
	for i := range p.rows {
		if p.rows[i].marked {
			ids = append(ids, p.rows[i].id)
		}
	}
	return ids
}

func (p *marksPage) view(m *root, w, h int) (b block, _ *tea.Cursor) {
	th := &m.th
	b.add(newRow(w).put(th.bold, p.title).line())
	b.say(th.quiet, 0, p.hint, w)
	b.skip()
	below := block{line{}} // the sentence of the row under the cursor
	below.say(th.quiet, 0, p.rows[p.at].line, w)
	if h-len(b)-len(below) < 4 { // the list comes before its sentence
		below = nil
	}
	var list block
	first, last := 0, 0
	for i := range p.rows {
		row := p.row(th, i, w)
		if i == p.at {
			first, last = len(list), len(list)+len(row)-1
		}
		list.addAll(row)
	}
	room := max(1, h-len(b)-len(below))
	b.addAll(p.top.marked(th, p.top.show(list, first, last, room), w))
	return append(b, below...), nil
}

func (p *marksPage) row(th *theme, i, w int) block {
	r := &p.rows[i]
	box, paint := "[ ] ", th.plain
	if r.marked {
		box = "[x] "
	}
	cursor := "  "
	if i == p.at {
		cursor, paint = "› ", th.accent
	}
	head := newRow(w).put(th.accent, cursor).put(th.bold, box)
	return flow(head, []piece{{0, paint, r.name}}, width(cursor+box), w)
}

// stopMarks asks what stops a job, in one short list.
func stopMarks(c *calc.Card) *marksPage {
	p := &marksPage{title: "does any of these apply? each stops the job", hint: "space marks, enter answers",
		alone: "none"}
	now := strings.Split(c.Used.Hazard, ",")
	for _, r := range choice.ByName("hazard").Rows(&choice.Present{}) {
		p.rows = append(p.rows, markRow{id: r.ID, name: r.Name, line: r.Line, marked: slices.Contains(now, r.ID)})
	}
	p.done = func(ids []string) action {
		if len(ids) == 0 {
			return refuse("nothing is marked", "mark what applies, or the last row: none of these")
		}
		return func(m *root) tea.Cmd {
			job := m.base()
			job.Hazard, _ = calc.HazardIDs(strings.Join(ids, ","))
			m.pop()
			m.changed(job, "the stops are answered")
			return nil
		}
	}
	return p
}
