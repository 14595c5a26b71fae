package tui

import (
	"strings"

	"brazebooth/calc/advice"
	"brazebooth/internal/report"
)

// partBody is the open page's text.
func (m *root) partBody(w int) block {
	var b block
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
		needs := strings.ReplaceAll(strings.Join(page.Needs, ", "), "-", " ")
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
