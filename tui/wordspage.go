package tui

import (
	"slices"
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/tables"
)

// wordsPage is the glossary: every word of the trade on a screen, found while typing, with its meaning below or beside
// it.
type wordsPage struct {
	finder
	rows []*tables.Term
}

func (p *wordsPage) about(*root) about {
	return about{help: "everywhere", keys: "↑↓ pick  esc back"}
}

// openWords opens the glossary at the word under the cursor.
func openWords(m *root) tea.Cmd {
	term := ""
	for i := len(m.stack) - 1; i >= 0 && term == ""; i-- {
		term = m.stack[i].about(m).term
	}
	if _, text := m.front().(*textPage); text {
		m.pop()
	}
	p := &wordsPage{}
	p.find()
	if t, ok := tables.TermFor(term); ok {
		p.list.goTo(slices.Index(p.rows, t))
	}
	m.push(p)
	return nil
}

func (p *wordsPage) press(_ *root, msg tea.KeyPressMsg) action {
	switch {
	case msg.String() == "f3", key.Matches(msg, bound.On), p.field.empty() && key.Matches(msg, bound.Back):
		return goBack
	case p.edit(msg):
		p.find()
	}
	return nil
}

// find lists first the words that begin with the typed text, then those that contain it.
func (p *wordsPage) find() {
	text := strings.ToLower(p.field.trimmed())
	begins := func(name string) bool { return strings.HasPrefix(strings.ToLower(name), text) }
	var begin, within []*tables.Term
	for i := range tables.Terms {
		t := &tables.Terms[i]
		switch {
		case slices.ContainsFunc(append([]string{t.Word}, t.Also...), begins):
			begin = append(begin, t)
		case strings.Contains(strings.ToLower(t.Word+" "+strings.Join(t.Also, " ")), text):
			within = append(within, t)
		}
	}
	p.rows = append(begin, within...)
	p.list.set(len(p.rows))
	p.list.goTo(0)
}

func (p *wordsPage) view(m *root, w, h int) (b block, cursor *tea.Cursor) {
	th := &m.th
	field, x := p.list.search(th, &p.field, "word: ", "type to find", w-2) // the walk has a mark to the right of it
	cursor = tea.NewCursor(x, 0)
	b.add(field)
	b.skip()
	if len(p.rows) == 0 {
		b.say(th.plain, 0, "No such word. Fewer letters find more.", w)
		return b, cursor
	}
	left := 24
	if w < besideWords {
		left = w
	}
	row := func(i int, chosen bool) line {
		if chosen {
			return newRow(left).put(th.accent, "▸ ").put(th.cursor, p.rows[i].Word).line()
		}
		return newRow(left).blank(2).put(th.plain, p.rows[i].Word).line()
	}
	room, at := max(1, h-len(b)), p.rows[p.list.at()]
	if w >= besideWords {
		b.addAll(beside(p.list.draw(room, row), termText(th, at, min(w-left-3, 66)), left+3, th.quiet, "│ "))
		return b, cursor
	}
	text := termText(th, at, w)
	b.addAll(p.list.draw(max(2, room-len(text)-1), row))
	b.skip()
	b.addAll(text)
	return b, cursor
}

// termText is one entry: the word, its meaning, its unit, its other names, and its source.
func termText(th *theme, t *tables.Term, w int) (b block) {
	b.add(newRow(w).put(th.bold, t.Word).line())
	b.say(th.plain, 0, th.inUnits(t.Says), w)
	if t.Unit != "" {
		b.say(th.plain, 0, "In "+t.Unit+".", w)
	}
	from := t.Source
	if t.Known != tables.Practice && t.Known != tables.Own {
		from += " (" + string(t.Known) + ")"
	}
	b.say(th.quiet, 0, "From: "+from, w)
	return b
}

// besideWords is the width from which a word's explanation is shown beside the list.
const besideWords = 72
