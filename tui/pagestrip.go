package tui

import (
	"charm.land/bubbles/v2/key"

	"brazebooth/calc/advice"
)

// measureKeys are those of the form that do something: none of its own without a book, the watch where a row has one.
func (m *root) measureKeys(k *keyMap) []key.Binding {
	list := []key.Binding{m.turning(&m.meter.field), named(k.Back, "esc", "back")}
	if m.keeper == nil {
		return list
	}
	form := []key.Binding{named(k.On, "enter", "go on"), list[0]}
	if measureRows[m.meter.at].timed {
		form = append(form, named(k.Play, "space", "watch"))
	}
	return append(form, named(k.Up, "↑↓", "rows"), list[1])
}

// partKeys are for the keys' line.
func (m *root) partKeys() []key.Binding {
	k := &m.keys
	switch name := m.part.name(); {
	case name == pageBook:
		return []key.Binding{named(k.On, "enter", "open, or keep"), m.turning(&m.shelf.field), named(k.Down, "↑↓",
			"pick"), named(k.Back, "esc", "back")}
	case name == pageRecords:
		return []key.Binding{named(k.On, "enter", "read"), m.turning(&m.records.field), named(k.Down, "↑↓", "pick"),
			named(k.Back, "esc", "back")}
	case name == pageMeasure:
		return m.measureKeys(k)
	case m.practising():
		return m.drill.hints(k)
	case name == pagePractice:
		return []key.Binding{named(k.On, "enter", "open"), named(k.Down, "↑↓", "pick"), named(k.Less, "− +", "booth"),
			named(k.More, "←→", "pages"), named(k.Back, "esc", "card")}
	case name == pageWalk:
		return []key.Binding{named(k.On, "enter", "begin"), named(k.More, "←→", "pages"), named(k.Back, "esc", "card")}
	}
	return []key.Binding{named(k.More, "←→", "pages"), named(k.TypeName, "a–z", "jump"), named(k.On, "enter",
		m.partEnter()), named(k.Why, "*", "sources"),
		named(k.Down, "↑↓", "scroll"), named(k.Units, "u", "units"), named(k.Back, "esc", "card")}
}

// turning is the key that turns a page on which letters are typed: the arrows move in what stands there.
func (m *root) turning(f *field) key.Binding {
	if f.empty() {
		return named(m.keys.More, "←→", "pages")
	}
	return named(m.keys.Pages, "f4", "pages")
}

// partEnter is what enter does on the page beside the card.
func (m *root) partEnter() string {
	switch page, ok := advice.EntryByName(m.part.name()); {
	case m.part.name() == "correct":
		return "go on"
	case ok && len(page.Needs) > 0:
		return "fill in"
	}
	return "card"
}

// pageStrip lists every page under its chapter, the open one in brackets.
func pageStrip(th *theme, at, w int) block {
	var b block
	w -= 2 // for the walk's mark
	r := newRow(w)
	chapter := ""
	for i, name := range pageNames {
		c := chapterOf(name)
		head := ""
		if c != chapter {
			head, chapter = c, c
		}
		text := name
		if i == at {
			text = "[" + name + "]"
		}
		need := width(text) + 1
		if head != "" {
			need += width(head) + 2
		}
		if r.used > 0 && r.left() < need {
			b.add(r.line())
			r = newRow(w)
		}
		if head != "" {
			if r.used > 0 {
				r.blank(1)
			}
			r.put(th.bold, head).blank(1)
		}
		if i == at {
			r.put(th.cursor, text)
		} else {
			r.put(th.quiet, text)
		}
		r.blank(1)
	}
	b.add(r.line())
	return b
}

// pageTurn is the open page between its neighbours, for a screen without room for them all.
func pageTurn(th *theme, at, w int) line {
	n := len(pageNames)
	r := newRow(w).put(th.quiet, "← "+pageNames[(at+n-1)%n]+"  ").put(th.cursor, "["+pageNames[at]+"]")
	return r.put(th.quiet, "  "+pageNames[(at+1)%n]+" →").line()
}
