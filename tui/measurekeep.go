package tui

import (
	"context"
	"strings"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/calc/correct"
	"brazebooth/tables"
)

// measured is the book's answer to what was measured: of the reading, then of the bead.
type measured struct {
	job     calc.Job
	said    string
	reading bool // it is kept
	err     error
}

// keepMeasured sends the reading to the book, then the bead. What is kept of the two is not sent again.
func keepMeasured(reading, bead bool) action {
	return withBook(func(m *root) tea.Cmd {
		p := &m.meter
		p.busy = true
		source, job := p.values[askSource], m.session.base()
		r, travel := p.reading()
		laid, seen, verdict, cut := p.bead(&m.session.card)
		return m.act(asking(func(ctx context.Context, k Keeper) action {
			done := measured{job: job}
			if reading {
				done.job, done.said, done.err = k.Measure(ctx, source, r, travel, job)
				done.reading = done.err == nil
			}
			if bead && done.err == nil {
				var said string
				if said, done.err = k.Cut(ctx, laid, seen, verdict, source, cut); done.err == nil {
					done.said = strings.TrimPrefix(done.said+"; "+said, "; ")
				}
			}
			return func(m *root) tea.Cmd { m.meter.took(m, done); return nil }
		}))
	})
}

// bead is the bead that was measured: laid as the card has it, with travel and times as they were measured.
func (p *measurePage) bead(c *calc.Card) (laid calc.Job, seen, verdict string, cut Measured) {
	laid = correct.AsSet(c.Job, laidOf(c))
	put := func(at int, to *calc.Opt) {
		if v := p.value(at); v.Set && p.asked(at) {
			*to = v
		}
	}
	if p.mode != "timed" {
		put(askTravel, &laid.Travel)
	}
	put(askOn, &laid.ArcOn)
	put(askOff, &laid.ArcOff)
	put(askStep, &laid.SpotStep)
	if text := p.values[askSeen]; text != "" {
		seen, _ = correct.SeenIDs(tables.SightsSaid(text))
	}
	verdict, _ = p.read(askVerdict)
	cut = Measured{p.value(askWidth).V, p.value(askLeg).V, p.value(askThroat).V, p.value(askZinc).V}
	return laid, seen, verdict, cut
}

// took puts what the readings teach on the card, and empties the rows of what is kept.
func (p *measurePage) took(m *root, msg measured) {
	p.busy = false
	source := p.values[askSource]
	was := *p
	if msg.err == nil || msg.reading {
		*p = measurePage{form: form{at: askPull}, sources: p.sources, said: msg.said, kept: source, mode: p.mode,
			units: p.units}
		p.values[askSource] = source
	}
	if msg.err != nil {
		m.notice = bookFault("not kept: ", msg.err, "what is measured stays here: enter tries again")
		if msg.reading {
			copy(p.values[askSeen:askSave], was.values[askSeen:askSave])
			p.to(askSave)
			m.notice = bookFault("the reading is kept, the bead is not: ", msg.err, "enter tries the bead again")
		}
	}
	job := m.session.base() // as it is by now
	taught := job
	taught.Learn(&msg.job)
	if msg.reading && taught != job {
		m.changed(taught, "kept, and on the card")
	}
}

// recall puts on the card what a known power source taught before; a book that cannot say changes nothing.
func recall(source string) action {
	return withBook(func(m *root) tea.Cmd {
		job := m.session.base()
		return m.act(asking(func(ctx context.Context, k Keeper) action {
			lessons, err := k.Recall(ctx, source, job)
			return func(m *root) tea.Cmd {
				if err == nil && source == m.meter.values[askSource] {
					m.recalled(source, &lessons)
				}
				return nil
			}
		}))
	})
}

func (m *root) recalled(source string, lessons *calc.Job) {
	m.meter.kept = source
	job := m.session.base()
	taught := job
	taught.Learn(lessons)
	if taught != job && (taught.Readings.Set || taught.FeedDial.Known() || taught.VoltsDial.Known()) {
		m.changed(taught, "the card has what "+source+" taught before")
	}
}

// openMeter asks for the known power sources.
func (m *root) openMeter() tea.Cmd {
	if m.keeper == nil || m.meter.sources != nil {
		return nil
	}
	return m.act(asking(func(ctx context.Context, k Keeper) action {
		names, err := k.Sources(ctx)
		if err != nil {
			return nil // there is no book yet: the first reading makes one
		}
		return func(m *root) tea.Cmd { m.meter.sources = names; return nil }
	}))
}
