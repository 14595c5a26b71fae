package tui

import (
	"slices"
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/tables"
	"brazebooth/tui/canvas"
)

// marksPage is a list in which several rows can be marked: what stops a job.
type marksPage struct {
	rows  []markRow
	at    int
	top   window
	alone string                    // marking the row with this id clears the others
	done  func(ids []string) action // the action of enter
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
	default:
		return everywhere(press)
	}
	return nil
}

// toggle marks the row under the cursor, or removes its mark.
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
	b.add(newRow(w).put(th.bold, "does any of these apply? each stops the job").line())
	b.say(th.quiet, 0, "space marks, enter answers", w)
	b.skip()
	below := block{line{}} // for the sentence of the row under the cursor
	below.say(th.quiet, 0, p.rows[p.at].line, w)
	if h-len(b)-len(below) < 4 { // the list is more important than its sentence
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
	b.addAll(p.top.show(th, list, first, last, w, room))
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
	p := &marksPage{alone: "none"}
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

// sightPage asks what a test bead shows, with small drawings in a grid of which several can be marked.
type sightPage struct {
	marksPage
	columns int // as last drawn: up and down move by rows
}

// sightMarks asks what a test bead shows.
func sightMarks() *sightPage {
	p := &sightPage{marksPage: marksPage{alone: "good"}, columns: 1}
	for _, s := range tables.Sights {
		p.rows = append(p.rows, markRow{id: s.ID, name: s.Name})
	}
	p.done = sawBead
	return p
}

func (p *sightPage) about(*root) about {
	return about{help: "in a list of marks", term: "test bead",
		keys: "←→↑↓ pick  space mark, several may be true  enter go on  esc back"}
}

// press moves in the grid. Enter without a mark takes the drawing under the cursor.
func (p *sightPage) press(m *root, press tea.KeyPressMsg) action {
	by := map[string]int{"left": -1, "right": 1, "up": -p.columns, "down": p.columns}[press.String()]
	if by != 0 {
		if to := p.at + by; to >= 0 && to < len(p.rows) {
			p.at = to
		}
		return nil
	}
	if key.Matches(press, bound.On) && len(p.ids()) == 0 {
		p.toggle()
	}
	return p.marksPage.press(m, press)
}

// sightWidth is the width of a place of the grid, sightLeast the width on a phone, where two are still side by side.
const sightWidth, sightLeast = 18, 15

func (p *sightPage) view(m *root, w, h int) (block, *tea.Cursor) {
	th := &m.th
	wide := min(sightWidth, max(sightLeast, (w-1)/2))
	p.columns = max(1, (w+1)/(wide+1))
	head := p.head(th, w, h)
	lines := 4
	if h < lowBody {
		lines = 3
	}
	high := lines + 2
	if h >= 24 {
		high++ // an empty line between them
	}
	var b block
	for from := 0; from < len(p.rows); from += p.columns { // drawings, and their names on two lines
		var row block
		for i := min(len(p.rows), from+p.columns) - 1; i >= from; i-- {
			row = beside(p.place(th, i, wide, lines).fit(high), row, min(w, wide+1), th.quiet, "")
		}
		b.addAll(row)
	}
	row := p.at / p.columns
	room := h - len(head)
	return append(head, p.top.show(th, b, row*high, row*high+lines+1, w, room)...), nil
}

// head asks the question, and names the drawing under the cursor in full: below the question if there is no room beside
// it, and instead of it on a low terminal.
func (p *sightPage) head(th *theme, w, h int) (b block) {
	title := newRow(w).put(th.bold, "What does the test bead show?").blank(2)
	name, low := p.rows[p.at].name, h < lowBody
	switch fits := width(name) <= title.left(); {
	case fits && low:
		b.add(title.put(th.quiet, name).line())
	case fits:
		b.add(title.put(th.quiet, name).line())
		b.skip()
	case low:
		b.say(th.bold, 0, name, w)
	default:
		b.add(title.line())
		b.say(th.quiet, 0, name, w)
	}
	return b
}

// place is a drawing above its name.
func (p *sightPage) place(th *theme, i, wide, lines int) block {
	r := &p.rows[i]
	b := block(canvas.DrawSight(th.Theme, r.id, wide, lines)).fit(lines)
	ink, name := th.plain, r.name
	if r.marked {
		ink, name = th.bold, "[x] "+name
	}
	if i == p.at {
		ink, name = th.cursor, "› "+name
	}
	name = fewer(name, ",:;", func(name string) bool { return len(wrap(name, wide)) <= 2 }) // the head has it in full
	b.say(ink, 0, name, wide)
	return b
}
