package tui

import "brazebooth/calc/advice"

// partEnter is what enter does on the page beside the card.
func (m *root) partEnter() string {
	switch page, ok := advice.EntryByName(m.part.name()); {
	case m.part.name() == "correct":
		return "go on"
	case m.part.name() == pageWalk:
		return "begin"
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
