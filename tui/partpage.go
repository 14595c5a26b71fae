package tui

import (
	"cmp"
	"slices"
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc/advice"
	"brazebooth/calc/practice"
	"brazebooth/internal/choice"
	"brazebooth/internal/report"
)

// partPage is one of the pages beside the card, in the order of the work: decide, set, check, keep.
type partPage struct {
	at     int // index in pageNames
	why    bool
	scroll window
}

// openPart opens the page that was open last.
func openPart(m *root) tea.Cmd {
	m.part.scroll = window{} // the card may be another one
	m.push(&m.part)
	return m.enterPage()
}

func openPage(name string) action {
	return func(m *root) tea.Cmd {
		m.part.open(name)
		return openPart(m)
	}
}

func turnPage(by int) action {
	return func(m *root) tea.Cmd {
		m.part.turn(by)
		return m.enterPage()
	}
}

func (p *partPage) left(m *root) {
	m.fix.cancel()
	m.drill.cancel()
}

// own is the screen of a page that is more than a text; nil for others.
func (p *partPage) own(m *root) screen {
	return map[string]screen{pageBook: &m.shelf, pageRecords: &m.records, pageMeasure: &m.meter,
		pagePractice: &m.levels}[p.name()]
}

func (p *partPage) about(m *root) about {
	enter, _ := m.enters()
	a := about{help: "on the pages",
		keys: "esc card  ←→ pages  a–z jump  enter " + enter + p.scroll.key() + "  * sources  u units"}
	if own := p.own(m); own != nil {
		a = own.about(m)
	}
	a.term = cmp.Or(a.term, p.name())
	return a
}

// enters is what enter does on a page that is a text, and a word for that.
func (m *root) enters() (string, action) {
	switch page, ok := advice.EntryByName(m.part.name()); {
	case m.part.name() == "correct":
		return "go on", (*root).enterCorrect
	case m.part.name() == pageWalk:
		return "begin", startWalk
	case ok && len(page.Needs) > 0:
		return "fill in", opening(askFor(page.Name, choice.Named(page.Asks(m.session.card.Used.Joint)...)...))
	}
	return "card", goBack
}

// pageSheet is the page that contains all others.
const pageSheet = "sheet"

// The pages that exist only on the screens.
const (
	pageBook     = "book"
	pageRecords  = "records"
	pageMeasure  = "measure"
	pageWalk     = "walk"
	pagePractice = "practice"
)

// pageNames are the pages beside the card in the order of the work. The sheet of all pages is the last.
var pageNames = func() []string {
	var names []string
	for _, p := range advice.Contents() {
		names = append(names, p.Name)
		if p.Name == "correct" {
			names = append(names, pageMeasure, pageWalk, pagePractice)
		}
	}
	return append(names, pageBook, pageRecords, pageSheet)
}()

// ownChapters are the steps of the work of the pages that exist only on the screens.
var ownChapters = map[string]advice.Chapter{pageMeasure: advice.Look, pageWalk: "Learn", pagePractice: "Learn",
	pageBook: advice.Keep, pageRecords: advice.Keep, pageSheet: advice.Keep}

// chapterOf is the step of the work that a page belongs to.
func chapterOf(name string) string { return string(cmp.Or(ownChapters[name], report.ChapterOf(name))) }

func (p *partPage) name() string { return pageNames[p.at] }

func (p *partPage) open(name string) { p.turn(slices.Index(pageNames, name) - p.at) }

func (p *partPage) turn(by int) {
	p.at = (p.at + by + len(pageNames)) % len(pageNames)
	p.scroll, p.why = window{}, false
}

// jumps is the distance to the next page whose name begins with a letter; 0 if there is none.
func (p *partPage) jumps(letter string) int {
	for by := 1; by < len(pageNames); by++ {
		if len(letter) == 1 && strings.HasPrefix(pageNames[(p.at+by)%len(pageNames)], letter) {
			return by
		}
	}
	return 0
}

// turnBy is where a key leads on a page for typing while nothing is typed. A keypad has − and + instead of arrows.
func turnBy(press tea.KeyPressMsg) int {
	return map[string]int{"right": 1, "+": 1, "left": -1, "-": -1}[press.String()]
}

func (p *partPage) view(m *root, w, h int) (block, *tea.Cursor) {
	b := pageStrip(&m.th, m.part.at, w)
	if len(b) > h/4 {
		b = block{pageTurn(&m.th, m.part.at, w)}
	}
	b.skip()
	w = min(w, textWidth)
	own := p.own(m)
	if own == nil {
		return append(b, p.scroll.draw(&m.th, m.partBody(w), w, h-len(b))...), nil
	}
	body, cursor := own.view(m, w, h-len(b))
	if cursor != nil {
		cursor.X, cursor.Y = min(cursor.X, w-1), cursor.Y+len(b)
	}
	return append(b, body...), cursor
}

// press passes the key to the open page. F4 turns every page, also those for typing.
func (p *partPage) press(m *root, press tea.KeyPressMsg) action {
	if press.Text == "" && key.Matches(press, bound.Pages) {
		return turnPage(1)
	}
	if own := p.own(m); own != nil {
		return own.press(m, press)
	}
	switch correct := p.name() == "correct"; {
	case correct && key.Matches(press, bound.KeepBead):
		return keepTrial("")
	case correct && key.Matches(press, bound.Acceptable):
		return keepTrial(practice.BeadAcceptable)
	case p.jumps(press.String()) != 0:
		return turnPage(p.jumps(press.String()))
	case p.scroll.moved(press):
		return nil
	}
	return everywhere(press, keyAction{bound.Pages, turnPage(1)}, keyAction{bound.More, turnPage(1)},
		keyAction{bound.Less, turnPage(-1)}, keyAction{bound.Cautions, openPoints},
		keyAction{bound.On, func(m *root) tea.Cmd { _, a := m.enters(); return a(m) }},
		keyAction{bound.Why, func(m *root) tea.Cmd {
			if p.why = !p.why; p.why {
				m.done = "each reason has its source below it" // the lines may be out of view
			}
			return nil
		}})
}

// enterPage starts what a page needs when it is opened: what it shows of the book, or the answer to a test bead.
func (m *root) enterPage() tea.Cmd {
	if own, ok := m.part.own(m).(interface{ find(m *root) tea.Cmd }); ok {
		return own.find(m)
	}
	return m.fix.ask(m)
}
