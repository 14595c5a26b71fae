package tui

import (
	"slices"
	"time"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// measurePage is a form for what the booth's meter, a rule and a watch show. Each row says how it read its text. The
// form is saved as a whole or not at all, and then narrows the card.
type measurePage struct {
	form
	seconds [measureCount]float64 // measured with the watch
	began   time.Time             // when the watch was started with the space bar; zero if it is stopped
	sources []string
	kept    string // the power source of the last reading that was saved
	fresh   string // a name that is not known, typed once so far
	said    string
	mode    string // of the card: only a timed arc has a rhythm
	units   quantity.System
}

// about names the keys that work here: none of the form's without a book, and the watch only on rows that have one.
func (p *measurePage) about(m *root) about {
	a := about{help: "at a measurement", keys: "enter go on" + p.field.pagesKey() + "  ↑↓ rows  esc back"}
	switch {
	case m.Book == nil:
		a.keys = p.field.pagesKey()[len(keyGap):] + "  esc back"
	case measureRows[p.at].timed:
		a.keys = "enter go on" + p.field.pagesKey() + "  space watch  ↑↓ rows  esc back"
	}
	return a
}

func (p *measurePage) press(m *root, msg tea.KeyPressMsg) action {
	switch {
	case p.field.empty() && key.Matches(msg, bound.Back):
		return goBack
	case p.busy:
		return nil
	case key.Matches(msg, bound.On):
		return p.next()
	case measureRows[p.at].timed && p.field.empty() && key.Matches(msg, bound.Play):
		p.stamp(m.Now())
		return nil
	case p.field.empty() && turnBy(msg) != 0:
		return turnPage(turnBy(msg))
	}
	was := p.at
	if p.edit(msg); p.at != was { // leaving a row stops its watch
		p.began = time.Time{}
	}
	return nil
}

// stamp starts the watch, or stops it.
func (p *measurePage) stamp(at time.Time) {
	if p.began.IsZero() {
		p.began, p.seconds[p.at] = at, 0
		return
	}
	p.began, p.seconds[p.at] = time.Time{}, at.Sub(p.began).Seconds()
}

// next accepts the row and goes to the next one. After a fault, which says what to type, it stays.
func (p *measurePage) next() action {
	p.store()
	switch {
	case !p.began.IsZero():
		return refuse("the watch runs", "space stops it")
	case p.at == askSource:
		return p.nextSource()
	case p.at == askSave:
		return p.keep()
	}
	if _, _, err := p.read(p.at); err != nil {
		return faultOf(err).said
	}
	p.move(1)
	return nil
}

// nextSource accepts the power source: without text the first known one; a new name must be confirmed once.
func (p *measurePage) nextSource() action {
	name := p.values[askSource]
	if name == "" && len(p.sources) > 0 {
		name = p.sources[0]
		p.field.insert(name)
	}
	switch {
	case name == "":
		return refuse("a reading without a power source", "type its name, as booth 1")
	case len(p.sources) > 0 && !p.known(name) && p.fresh != name:
		p.fresh = name
		return refuse("no power source is called "+name, "enter once more makes it a new one")
	}
	p.move(1)
	if p.known(name) {
		return recall(name)
	}
	return nil
}

// keep sends everything to the book. If a row is wrong or missing, it goes there and saves nothing.
func (p *measurePage) keep() action {
	wrong := func(at int, what, hint string) action {
		p.to(at)
		return refuse(what, hint)
	}
	for at := range measureCount {
		if _, _, err := p.read(at); err != nil {
			p.to(at)
			return faultOf(err).said
		}
	}
	has := func(rows ...int) bool {
		return slices.ContainsFunc(rows, func(at int) bool { _, said, _ := p.read(at); return said != "" })
	}
	arc, dials := has(askPull, askPullAgain, askStickOut, askAmps, askVolts), has(askFeedDial, askVoltsDial)
	bead := has(askSeen, askVerdict, askWidth, askLeg, askThroat, askZinc, askOn, askOff, askStep)
	switch {
	case !has(askSource):
		return wrong(askSource, "a reading without a power source", "type its name, as booth 1")
	case !arc && !dials && !bead:
		return refuse("nothing is measured yet", "↑ goes to the rows; what is empty is left out")
	case has(askPull) && !has(askPullAgain):
		return wrong(askPullAgain, "one pull of wire", "pull once more: two that agree are one reading")
	case arc && !has(askPull), has(askFeedDial) && !has(askPull):
		return wrong(askPull, "a reading without wire feed", "pull the wire twice: 635mm")
	case arc && !has(askAmps) && !dials:
		return wrong(askAmps, "a reading without amps", "read the meter while the arc burns: 93A")
	case has(askAmps) && !has(askStickOut):
		return wrong(askStickOut, "a reading without stick-out", "measure it from tip to arc: 12mm")
	case has(askVoltsDial) && !has(askVolts):
		return wrong(askVolts, "the volts' dial without volts", "read the meter while the arc burns: 14.8V")
	case bead && !has(askSeen, askVerdict):
		return wrong(askVerdict, "a bead without a verdict", "type good, acceptable or bad, or what it shows")
	}
	return keepMeasured(arc || dials, bead)
}

// reading is what was measured at the arc.
func (p *measurePage) reading() (r calc.Reading, travel float64) {
	if again := p.value(askPullAgain); again.Set {
		r.Feed = (p.value(askPull).V + again.V) / 2
	}
	r.StickOut, r.Amps, r.Volts = p.value(askStickOut).V, p.value(askAmps).V, p.value(askVolts).V
	r.FeedDial, r.VoltsDial = p.value(askFeedDial), p.value(askVoltsDial)
	return r, p.value(askTravel).V
}

// value is the number on a row; not set if there is none.
func (p *measurePage) value(at int) calc.Opt {
	v, _, _ := p.read(at)
	return v
}
