package tui

import (
	"strings"

	"brazebooth/calc/advice"
	"brazebooth/internal/report"
)

func (m *root) partBody(w int) (b block) {
	switch m.part.name() {
	case pageSheet:
		blocks, err := m.session.sheet()
		b.addAll(m.pageText(blocks, err, w))
	case pageWalk:
		m.walkText(&b, w)
	case "correct":
		stops(&b, &m.th, &m.session, &m.session.card, w)
		b.addAll(m.correctBody(w))
	default:
		p, err := m.session.part(m.part.name())
		b.addAll(m.pageText(report.Page(&p, nil), err, w))
	}
	if page, ok := advice.EntryByName(m.part.name()); ok && len(page.Needs) > 0 && page.Name != "correct" {
		needs := strings.ReplaceAll(strings.Join(page.Asks(m.session.card.Used.Joint), ", "), "-", " ")
		b.skip()
		b.say(m.th.bold, 0, "enter: what this page asks for ("+needs+")", w)
	}
	return b
}

// pageText is what was found for the open page, or what it lacks.
func (m *root) pageText(blocks []report.Block, err error, w int) (b block) {
	if err != nil {
		stops(&b, &m.th, &m.session, &m.session.card, w)
		b.fault(&m.th, faultOf(err), w)
		return b
	}
	return m.session.finding(&m.th, blocks, w, m.part.why)
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
