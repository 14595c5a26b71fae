package tui

import (
	"strings"

	"brazebooth/calc/advice"
)

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
func pageStrip(th *theme, at, w int) (b block) {
	r := newRow(w - 2) // for the walk's mark
	chapter := ""
	for i, name := range pageNames {
		head := chapterOf(name) + " "
		if head == chapter {
			head = ""
		} else if chapter = head; r.used > 0 {
			head = " " + head
		}
		text, p := name, th.quiet
		if i == at {
			text, p = "["+name+"]", th.cursor
		}
		if r.left() < width(head+text)+1 {
			b.add(r.line())
			r, head = newRow(w-2), strings.TrimPrefix(head, " ")
		}
		r.put(th.bold, head).put(p, text).blank(1)
	}
	return append(b, r.line())
}

// pageTurn is the open page between its neighbours, for a screen without room for them all.
func pageTurn(th *theme, at, w int) line {
	n := len(pageNames)
	r := newRow(w).put(th.quiet, "← "+pageNames[(at+n-1)%n]+"  ").put(th.cursor, "["+pageNames[at]+"]")
	return r.put(th.quiet, "  "+pageNames[(at+1)%n]+" →").line()
}
