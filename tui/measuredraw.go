package tui

import (
	"fmt"
	"strings"

	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// draw is the step at hand: how it is done, the watch, the field, and what was measured so far.
func (p *measurePage) draw(th *theme, keeps bool, w, h int) (b block, x, y int) {
	if !keeps {
		b.say(th.plain, 0, "There is no book here to keep a reading in: start the program with one, brazebooth "+
			"--book FILE.", w)
		return b, 0, 0
	}
	step := &measureSteps[p.at]
	b.add(newRow(w).put(th.bold, fmt.Sprintf("step %d of %d: %s", p.at+1, len(measureSteps), step.ask)).line())
	if p.at != askSave {
		ask := step.ask + ": "
		r, at := p.field.ask(th, ask, w)
		x, y = at, len(b)
		b.add(r.line())
	} else {
		text := "enter keeps this reading and narrows the card"
		if p.busy {
			text = "being kept …"
		}
		b.say(th.bold, 0, text, w)
	}
	var rest block
	if p.timed() {
		switch {
		case p.watch.running:
			b.say(th.good, 0, "■ the watch runs – space stops it", w)
		case p.watch.seconds > 0:
			b.say(th.bold, 0, fmt.Sprintf("%.1f s", p.watch.seconds), w)
		}
	}
	rest.say(th.quiet, 0, readingOr(measureSteps[p.at].field, p.field.String(), quantity.Both, p.hint()), w)
	if p.said != "" {
		rest.say(th.good, 0, p.said, w)
	}
	if l, ok := tables.PracticeByCode(step.how); ok { // its cautions before what can be scrolled to
		rest.say(th.plain, 0, l.Text, w)
		rest.skip()
	}
	rest.addAll(p.soFar(th, w))
	b.addAll(p.view.draw(th, rest, w, max(2, h-len(b))))
	return b.fit(min(len(b), h)), x, y
}

func (p *measurePage) hint() string {
	switch p.at {
	case askSource:
		if len(p.sources) > 0 {
			return "known: " + strings.Join(p.sources, ", ") + "; enter alone takes the first"
		}
		return "any name that the booth goes by"
	case askPull, askPullAgain:
		return "space starts and stops the watch; without it 6 seconds are meant; type the length: 635mm or 25in"
	case askVolts:
		return "enter alone leaves volts out"
	case askTravel:
		return "space starts and stops the watch while 100 mm are laid, or type another length after; or type " +
			"16s/100mm; enter alone leaves it out"
	case askSave:
		return "up goes back to what was typed"
	}
	return ""
}

// soFar is what was measured.
func (p *measurePage) soFar(th *theme, w int) block {
	var b block
	put := func(at int, name, value string) {
		if p.at > at {
			b.addAll(flow(newRow(w).put(th.quiet, name), []piece{{16, th.bold, value}}, 16, w))
		}
	}
	put(askSource, "power source", p.source)
	if p.at == askPullAgain {
		put(askPull, "first pull", fmt.Sprintf("%.2f m/min", p.feeds[0]))
	}
	put(askPullAgain, "wire feed", fmt.Sprintf("%.2f m/min (%.2f, %.2f)", p.reading.Feed, p.feeds[0], p.feeds[1]))
	put(askStickOut, "stick-out", fmt.Sprintf("%.1f mm", p.reading.StickOut))
	put(askAmps, "amps", fmt.Sprintf("%.0f A", p.reading.Amps))
	if p.reading.Volts > 0 {
		put(askVolts, "volts", fmt.Sprintf("%.1f V", p.reading.Volts))
	}
	if p.travel > 0 {
		put(askTravel, "travel", fmt.Sprintf("%.1f mm/s", p.travel))
	}
	return b
}
