package tui

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/report"
)

// stopWidth is the width of a stop: a long line is easily overlooked.
const stopWidth = 88

// finding shows a finding to a user who has the card; why adds the sources.
func (s *session) finding(th *theme, blocks []report.Block, w int, why bool) (b block) {
	lines := report.Words(blocks, report.Options{Units: s.Units, Why: why, Beside: true})
	for i := range lines {
		l := &lines[i]
		if l.N == 1 && (l.Kind == report.Topic || l.Kind == report.Reason) && len(b) > 0 {
			b.skip() // before the reasons
		}
		th.said(&b, l, w)
	}
	return b
}

func (th *theme) said(b *block, l *report.Line, w int) {
	switch l.Kind {
	case report.Gap, report.Subject, report.Heading, report.Picture, report.Formula, report.PutIn, report.LeansOn:
	case report.Title:
		b.skip()
		b.add(newRow(w).put(th.bold, l.Text).line())
	case report.Stop:
		b.say(th.stop, 0, "■ stop: "+l.Text, min(w, stopWidth))
	case report.Caution:
		b.addAll(cautionLines(th, &calc.Warning{Severity: calc.Caution, Text: l.Text}, w))
	case report.Note:
		b.addAll(cautionLines(th, &calc.Warning{Severity: calc.Info, Text: l.Text}, w))
	case report.FitVerdict:
		p := map[string]paint{advice.Suits: th.good, advice.WithCare: th.watch, advice.AnotherWay: th.watch,
			advice.StopWork: th.stop}[l.Lead]
		b.say(p, 0, report.FitLabel+": "+l.Text, w)
	case report.Instead:
		b.say(th.plain, 0, "instead: "+l.Text, w)
	case report.Rank:
		if l.Bad {
			b.say(th.watch, 0, "✗ "+l.Text, w)
		} else {
			b.hang(th.bold, 0, fmt.Sprintf("%d  ", l.N), l.Text, w)
		}
	case report.For:
		b.hang(th.plain, 3, "+ ", l.Text+" ("+calc.KnownShort(l.Known)+")", w)
	case report.Against:
		b.hang(th.plain, 3, "− ", l.Text+" ("+calc.KnownShort(l.Known)+")", w)
	case report.FigureRow:
		b.addAll(th.figure(l.Row, w))
	case report.Source:
		b.say(th.quiet, 4, l.Text+" ("+calc.KnownWords(l.Known)+")", w)
	case report.RestsOn:
		b.say(th.quiet, 0, "~ "+l.Text, w)
	case report.Turns:
		b.say(th.plain, 0, l.Lead+":", w)
		b.say(th.bold, 2, l.Text, w)
	case report.Topic:
		b.add(newRow(w).put(th.bold, l.Text).line())
	case report.Reason:
		b.hang(th.plain, 0, "• ", l.Text+" ("+calc.KnownShort(l.Known)+")", w)
	case report.Limit:
		b.say(th.quiet, 0, l.Lead+": "+l.Text, w)
	case report.CheckFirst, report.Setting:
		b.say(th.plain, 2, l.Lead+": "+l.Text, w)
	case report.Remedy:
		p := th.good
		if l.Bad {
			p = th.quiet
		}
		b.say(p, 0, l.Lead+" – "+l.Text, w)
	case report.Edge:
		sign, p := "✓", th.good
		if l.Bad {
			sign, p = "▲", th.watch
		}
		r := newRow(w).put(p, sign).blank(1).put(th.plain, l.Lead)
		b.addAll(flow(r, []piece{{22, th.quiet, l.Text}}, 4, w))
	case report.CardVerdict:
		b.say(th.plain, 0, l.Lead+": "+l.Text, w)
	default:
		b.say(th.plain, 0, l.Text, w)
	}
}

// figure is a row of a page's figures. A ~ marks an assumed value and a value that depends on one.
func (th *theme) figure(f *report.Row, w int) block {
	value, band := 20, 36
	if w < narrowWidth {
		value, band = 17, 28
	}
	parts := []piece{{value, th.bold, f.Value.String()}, {band, th.quiet, f.Value.Band()}, {52, th.plain,
		f.Other.String()}}
	r := newRow(w).put(th.quiet, f.Label)
	if f.Assumed || f.Rests { // the sign goes to the left of the column
		parts[0].text = "~" + parts[0].text
		value--
	}
	if r.used == value {
		r.blank(1)
	}
	return flow(r, parts, value, w)
}

// stops shows at the top of a page what must not be done at all.
func stops(b *block, th *theme, s *session, c *calc.Card, w int) {
	b.addAll(s.finding(th, []report.Block{report.Stops{List: calc.Stops(c.Warnings)}}, w, false))
}

// partBody is the finding of the open page, or what it lacks, and how to fill that in.
func (m *root) partBody(w int) (b block) {
	switch name := m.part.name(); name {
	case pageWalk:
		b.say(m.th.plain, 0, "A walk over these screens with the example, one key a step. Your own job stays as it "+
			"is, and esc leaves at any moment.", w)
		b.skip()
		b.say(m.th.bold, 0, "enter begins", w)
	case "correct":
		stops(&b, &m.th, &m.session, &m.session.card, w)
		b.addAll(m.correctBody(w))
	default:
		blocks, err := m.session.said(name)
		if err != nil {
			stops(&b, &m.th, &m.session, &m.session.card, w)
			b.fault(&m.th, faultOf(err), w)
		} else {
			b.addAll(m.session.finding(&m.th, blocks, w, m.part.why))
		}
	}
	if page, ok := advice.EntryByName(m.part.name()); ok && len(page.Needs) > 0 && page.Name != "correct" {
		needs := strings.ReplaceAll(strings.Join(page.Asks(m.session.card.Used.Joint), ", "), "-", " ")
		b.skip()
		b.say(m.th.bold, 0, "enter: what this page asks for ("+needs+")", w)
	}
	return b
}

// pageStrip lists every page under its chapter, with the open one in brackets.
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

// pageTurn is the open page between its neighbours, for a screen without room for all pages.
func pageTurn(th *theme, at, w int) line {
	n := len(pageNames)
	before, here, after := "← "+pageNames[(at+n-1)%n], "["+pageNames[at]+"]", pageNames[(at+1)%n]+" →"
	gap := 2
	if width(before)+width(here)+width(after)+2*gap > w {
		gap = 1
	}
	r := newRow(w).put(th.quiet, before).blank(gap).put(th.cursor, here)
	return r.blank(gap).put(th.quiet, after).line()
}
