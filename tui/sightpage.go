package tui

import (
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/tables"
	"brazebooth/tui/canvas"
)

// sightPage asks what a test bead shows, by small drawings in a grid; several may be true.
type sightPage struct {
	marksPage
	columns int // as last drawn: up and down go by rows
	wide    int // of each
}

// sightMarks asks what a test bead shows.
func sightMarks() *sightPage {
	p := &sightPage{marksPage: marksPage{alone: "good"}, columns: 1}
	for _, s := range tables.Sights() {
		p.rows = append(p.rows, markRow{id: s.ID, name: s.Name})
	}
	p.done = func(ids []string) action { return sawBead(ids) }
	return p
}

func (p *sightPage) about(*root) about {
	return about{help: "in a list of marks", term: "test bead",
		keys: "←→↑↓ pick  space mark, several may be true  enter go on  esc back"}
}

// update moves in the grid. Enter without a mark takes the drawing under the cursor.
func (p *sightPage) press(m *root, press tea.KeyPressMsg) action {
	by := map[string]int{"left": -1, "right": 1, "up": -p.columns, "down": p.columns}[press.String()]
	switch {
	case by != 0:
		if to := p.at + by; to >= 0 && to < len(p.rows) {
			p.at = to
		}
		return nil
	case key.Matches(press, bound.On) && len(p.ids()) == 0:
		p.toggle()
	}
	return p.marksPage.press(m, press)
}

// sightWidth is a place of the grid, sightLeast one on a phone: two stand beside each other there too.
const sightWidth, sightLeast = 18, 15

func (p *sightPage) view(m *root, w, h int) (block, *tea.Cursor) {
	th := &m.th
	p.wide = min(sightWidth, max(sightLeast, (w-1)/2))
	p.columns = max(1, (w+1)/(p.wide+1))
	head := p.head(th, w, h)
	lines := 4
	if h < lowBody {
		lines = 3
	}
	high := lines + 2
	if h >= 24 {
		high++ // an empty line between
	}
	var b block
	for from := 0; from < len(p.rows); from += p.columns {
		b.addAll(p.places(th, from, min(len(p.rows), from+p.columns), lines, high, w))
	}
	row := p.at / p.columns
	room := h - len(head)
	return append(head, p.top.marked(th, p.top.show(b, row*high, row*high+lines+1, room), w)...), nil
}

// head asks, and says whole what the cursor is on: below the question where there is no room beside it, in its place on
// a low terminal.
func (p *sightPage) head(th *theme, w, h int) (b block) {
	title := newRow(w).put(th.bold, "What does the test bead show?").blank(2)
	name, low := p.rows[p.at].name, h < lowBody
	switch {
	case width(name) <= title.left():
		b.add(title.put(th.quiet, name).line())
	case low:
		b.say(th.bold, 0, name, w)
		return b
	default:
		b.add(title.line())
		b.say(th.quiet, 0, name, w)
		return b
	}
	if !low {
		b.skip()
	}
	return b
}

// places is one row of the grid: drawings, and their names on two lines.
func (p *sightPage) places(th *theme, from, to, lines, high, w int) block {
	var b block
	for i := to - 1; i >= from; i-- {
		b = beside(p.place(th, i, lines).fit(high), b, min(w, p.wide+1), th.quiet, "")
	}
	return b
}

// place is a drawing over its name.
func (p *sightPage) place(th *theme, i, lines int) block {
	r := &p.rows[i]
	b := block(canvas.DrawSight(th.Theme, r.id, p.wide, lines)).fit(lines)
	ink, name := th.plain, r.name
	if r.marked {
		ink, name = th.bold, "[x] "+name
	}
	if i == p.at {
		ink, name = th.cursor, "› "+name
	}
	for _, l := range wrap(fewerClauses(name, 2, p.wide), p.wide) {
		b.add(newRow(p.wide).put(ink, l).line())
	}
	return b
}

// fewerClauses is a name without its last clauses where it takes more than some lines under a drawing; the head of the
// page says it whole.
func fewerClauses(name string, lines, w int) string {
	for len(wrap(name, w)) > lines {
		i := strings.LastIndexAny(name, ",:;")
		if i < 0 {
			break
		}
		name = name[:i]
	}
	return name
}
