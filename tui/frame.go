package tui

import (
	"fmt"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc/advice"
	"brazebooth/internal/quantity"
)

// draw lays the whole screen out: title and path on top, keys at the bottom, the open screen between.
func (m *root) draw() tea.View {
	v := tea.View{AltScreen: true, WindowTitle: "brazebooth"}
	if m.w < leastWidth || m.h < leastHeight {
		v.Content = m.tooSmall().String()
		return v
	}
	if m.walk != nil {
		v.Content = m.drawWalk().String()
		return v
	}
	if m.onBooth {
		v.Content = m.boothBody(m.w, m.h).String()
		return v
	}
	top := m.top()
	foot := m.foot()
	body, cursor := m.body(m.w, m.h-len(top)-len(foot))
	if cursor != nil {
		cursor.Y += len(top)
		v.Cursor = cursor
	}
	top.addAll(body.fit(m.h - len(top) - len(foot)))
	top.addAll(foot)
	v.Content = top.String()
	return v
}

// tooSmall is shown where not even the five figures fit.
func (m *root) tooSmall() block {
	var b block
	if m.w < 1 || m.h < 1 {
		return b
	}
	b.say(m.th.plain, 0, "Too small: this needs 40 columns and 14 lines. ctrl+c quits.", m.w)
	return b.fit(min(len(b), m.h))
}

// top is the title, the path and, where there is room, the rest of the job.
func (m *root) top() block {
	c := m.shown()
	if m.practising() {
		return block{practiceTitle(&m.th, m.units, m.w)}
	}
	b := append(block{titleLine(&m.th, &m.session, m.w)}, pathLines(&m.th, &m.session, c, m.step, m.w)...)
	if m.w >= narrowWidth && m.h >= 20 {
		b.addAll(restLines(&m.th, &m.session, c, m.w))
	}
	if m.h >= 16 {
		b.skip()
	}
	return b
}

// foot is the one place for what went wrong or was done, and the keys.
func (m *root) foot() block {
	var b block
	switch {
	case m.notice != nil:
		m.say(&b, m.notice)
	case m.done != "":
		b.say(m.th.good, 0, "✓ "+m.done, m.w)
	case m.old && m.session.fault != nil:
		m.say(&b, m.session.fault)
	case m.beat.stop != nil && !m.onBeat:
		b.say(m.th.quiet, 0, fmt.Sprintf("on and off are rough until their heat is followed: %.0f %%", 100*m.beat.share()), m.w)
	default:
		b.skip()
	}
	b.add(footLine(&m.th, m.hints(), named(m.keys.Help, "f1", "help"), m.w))
	return b
}

func (m *root) say(b *block, f *fault) {
	text := "▲ " + f.what
	if f.hint != "" {
		text += " – " + f.hint
	}
	b.say(m.th.watch, 0, text, m.w)
}

// hints are the keys that the foot of the open screen shows, most needed first.
func (m *root) hints() []key.Binding {
	k := &m.keys
	switch {
	case m.page != nil:
		return []key.Binding{named(k.Back, "esc", "back"), named(k.Down, "↑↓", "scroll")}
	case m.words != nil:
		return []key.Binding{named(k.Down, "↑↓", "pick"), named(k.Back, "esc", "back")}
	case m.why != nil && m.why.set != nil:
		return []key.Binding{named(k.On, "enter", "set, or back"), named(k.Down, "↑↓", "scroll"), named(k.Back, "esc", "back")}
	case m.why != nil:
		return []key.Binding{named(k.Back, "esc", "back"), named(k.Down, "↑↓", "scroll"), k.Units}
	case m.marks != nil:
		return []key.Binding{named(k.Play, "space", "mark"), named(k.On, "enter", "go on"), named(k.Down, "↑↓", "pick"), named(k.Back, "esc", "back")}
	case m.other:
		return m.pickHints()
	case m.form != nil:
		return []key.Binding{named(k.On, "enter", "go on"), named(k.Up, "↑", "step back"), named(k.Back, "esc", "back")}
	case m.inputs != nil:
		return []key.Binding{named(k.On, "enter", "set"), named(k.Down, "↑↓", "pick"), named(k.Back, "backspace", "open again"), named(k.Back, "esc", "back")}
	case m.onPart && m.part.name() == pageBook:
		return []key.Binding{named(k.On, "enter", "open, or keep"), m.turning(&m.shelf.field), named(k.Down, "↑↓", "pick"), named(k.Back, "esc", "back")}
	case m.onPart && m.part.name() == pageRecords:
		return []key.Binding{named(k.On, "enter", "read"), m.turning(&m.records.field), named(k.Down, "↑↓", "pick"), named(k.Back, "esc", "back")}
	case m.onPart && m.part.name() == pageMeasure:
		return []key.Binding{named(k.On, "enter", "go on"), m.turning(&m.meter.field), named(k.Play, "space", "watch"), named(k.Up, "↑", "step back"), named(k.Back, "esc", "back")}
	case m.practising():
		return m.drill.hints(k)
	case m.onPart && m.part.name() == pagePractice:
		return []key.Binding{named(k.On, "enter", "open"), named(k.Down, "↑↓", "pick"), named(k.Less, "− +", "booth"), named(k.More, "←→", "pages"), named(k.Back, "esc", "card")}
	case m.onPart && m.part.name() == pageWalk:
		return []key.Binding{named(k.On, "enter", "begin"), named(k.More, "←→", "pages"), named(k.Back, "esc", "card")}
	case m.onPart:
		return []key.Binding{named(k.Pages, "p", "next page"), named(k.More, "←→", "pages"), named(k.On, "enter", m.partEnter()), named(k.Why, "*", "sources"),
			named(k.Down, "↑↓", "scroll"), named(k.Units, "u", "units"), named(k.Back, "esc", "card")}
	case m.onMap:
		return []key.Binding{named(k.More, "←→↑↓", "walk"), named(k.Reset, "r", "suggestion"), named(k.Units, "u", "units"), named(k.Back, "esc", "card")}
	case m.onBeat:
		return []key.Binding{named(k.Play, "space", "play, stop"), named(k.Up, "↑↓", "on"), named(k.More, "←→", "off"), named(k.Reset, "r", "suggestion"), named(k.Units, "u", "units"), named(k.Back, "esc", "card")}
	case m.picking():
		return m.pickHints()
	}
	return []key.Binding{named(k.Down, "↑↓", "select"), named(k.More, "←→", "change"), named(k.On, "enter", "why"),
		named(k.Cautions, "c", "cautions"), named(k.Keep, "k", "keep"), named(k.Map, "m", "map"), named(k.Pages, "p", "pages"), named(k.Beat, "t", "timed"), named(k.Words, "g", "words"), named(k.Drawing, "x", "section"), named(k.Booth, "b", "booth"), named(k.Reset, "r", "reset"),
		named(k.Units, "u", "units"), named(k.Back, "esc", "back"), k.Leave}
}

// turning is the key that turns a page on which letters are typed: the arrows move in what stands there.
func (m *root) turning(f *field) key.Binding {
	if f.empty() {
		return named(m.keys.More, "←→", "pages")
	}
	return named(m.keys.Pages, "f4", "pages")
}

func (m *root) pickHints() []key.Binding {
	k := &m.keys
	list := []key.Binding{named(k.On, "enter", "choose"), named(k.Down, "↑↓", "pick")}
	if m.keeper != nil && m.step == 0 { // who comes for a kept card needs no path
		list = append(list, named(k.Shelf, "f5", "kept"))
	}
	return append(list, named(k.Why, "*", "why"), named(k.Back, "esc", "back"), named(k.Next, "tab", "next"), k.Leave)
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

// body draws the open screen; the cursor is where typing goes, nil for nowhere.
func (m *root) body(w, h int) (block, *tea.Cursor) {
	switch {
	case m.page != nil:
		return m.pageBody(w, h), nil
	case m.words != nil:
		b, x := m.words.draw(&m.th, w, h)
		return b, tea.NewCursor(min(x, w-1), 0)
	case m.why != nil:
		return m.whyBody(w, h)
	case m.marks != nil:
		return m.marks.draw(&m.th, w, h), nil
	case m.other:
		return m.pickBody(w, h)
	case m.form != nil:
		b, x, y := m.form.draw(&m.th, w, h)
		return b, tea.NewCursor(min(x, w-1), y)
	case m.inputs != nil:
		b, x, y := m.inputs.draw(&m.th, &m.session, w, h)
		return b, tea.NewCursor(x, y)
	case m.onPart:
		return m.drawPart(w, h)
	case m.onMap:
		return m.chart.view(&m.th, &m.session, w, h), nil
	case m.onBeat:
		return m.beat.view(&m.th, &m.session, w, h), nil
	case m.picking():
		return m.pickBody(w, h)
	}
	return m.cardBody(w, h), nil
}

func (m *root) pageBody(w, h int) block {
	var b block
	b.say(m.th.strong, 0, m.page.title, w)
	b.skip()
	w = min(w, textWidth)
	b.addAll(m.page.view.draw(&m.th, m.page.body(&m.th, w), w, h-len(b)))
	return b
}

func (m *root) whyBody(w, h int) (block, *tea.Cursor) {
	var b block
	var cur *tea.Cursor
	p := m.why
	b.add(newRow(w).put(m.th.strong, p.row.label).line())
	if p.set != nil {
		ask := "set it yourself: "
		r, x := p.field.ask(&m.th, ask, w)
		cur = tea.NewCursor(x, len(b))
		b.add(r.line())
		b.say(m.th.quiet, 0, readingOr(p.set.Kind, p.field.String(), m.units, quantity.Rule(p.set.Kind)), w)
	}
	b.skip()
	w = min(w, textWidth)
	text := reasons(&m.th, &p.row, &m.session.card, m.units, w)
	b.addAll(p.view.draw(&m.th, text, w, h-len(b)))
	return b, cur
}

// pickBody is a list with the card beside it, or with the five figures under it.
func (m *root) pickBody(w, h int) (block, *tea.Cursor) {
	c := m.shown()
	bad := m.unfit
	if w < besideWidth {
		five := fiveFigures(&m.th, &m.session, c, w)
		if bad != nil {
			five = nil
			five.say(m.th.watch, 0, "▲ "+bad.what+" – "+bad.hint, w)
		}
		list, x := m.pick.view(&m.th, w, h-len(five)-1, false)
		list = list.fit(h - len(five))
		list.addAll(five)
		return list, tea.NewCursor(x, 0)
	}
	side := 30
	if w >= wideWidth {
		side = 46
	}
	left := w - side - 3
	card := liveCard(&m.th, &m.session, c, bad, side, h)
	var aside block
	if w >= wideWidth {
		aside = m.asideReasons(side, h-len(card))
		card.addAll(aside)
	}
	list, x := m.pick.view(&m.th, left, h, len(aside) > 0)
	return beside(list.fit(h), card, left+3, m.th.quiet, "│ "), tea.NewCursor(x, 0)
}

// asideReasons is what the row under the cursor rests on, under the live card of a wide screen; nothing where not even its
// sentence has room.
func (m *root) asideReasons(w, h int) block {
	c := m.pick.choice()
	if c == nil || h < 2+max(3, len(wrap(rowSentence(c), w))) {
		return nil
	}
	var b block
	b.skip()
	b.add(newRow(w).put(m.th.strong, c.Name).line())
	b.addAll(reasonPage(&m.th, c, m.pick.ask.Reasons(m.present(), c.ID), w))
	return b.fit(min(len(b), h))
}

// cardBody is the card, on a wide screen with the reasons of the selected row beside it.
func (m *root) cardBody(w, h int) block {
	if w < wideWidth {
		return m.card.view(&m.th, &m.session, w, h, false)
	}
	side := w * 2 / 5
	left := w - side - 3
	b := m.card.view(&m.th, &m.session, left, h, true)
	r := m.card.row()
	if r == nil {
		return b
	}
	var why block
	why.add(newRow(side).put(m.th.strong, r.label).line())
	why.skip()
	why.addAll(reasons(&m.th, r, &m.session.card, m.units, side))
	why.skip()
	why.addAll(cautionList(&m.th, &m.session.card, side, h-len(why)))
	return beside(b.fit(h), why.fit(min(h, len(why))), left+3, m.th.quiet, "│ ")
}
