package tui

import (
	"context"
	"fmt"
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/calc/correct"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// measured is the book's answer to the measurements: first about the reading, then about the bead.
type measured struct {
	job     calc.Job
	said    string
	reading bool // the reading was saved
}

// keepMeasured sends the reading to the book, then the bead. The part that is saved already is not sent again.
func keepMeasured(reading, bead bool) action {
	return withBook(func(m *root) tea.Cmd {
		p := &m.meter
		p.busy = true
		source, seen, job := p.values[askSource], p.values[askSeen], m.session.base()
		r, travel := p.reading()
		laid, cut := p.bead(&m.session.card)
		_, verdict, _ := p.read(askVerdict)
		return m.act(asking(func(ctx context.Context, k Keeper) (done measured, err error) {
			done.job = job
			if reading {
				done.job, done.said, err = k.Measure(ctx, source, r, travel, job)
				done.reading = err == nil
			}
			if bead && err == nil {
				var said string
				if said, err = k.Cut(ctx, laid, seen, verdict, source, cut); err == nil {
					done.said = strings.TrimPrefix(done.said+"; "+said, "; ")
				}
			}
			return done, err
		}, p.took))
	})
}

// bead is the measured bead: laid as the card says, with travel and times as measured.
func (p *measurePage) bead(c *calc.Card) (laid calc.Job, cut Measured) {
	laid = correct.AsSet(c.Job, laidOf(c))
	rows := map[int]*calc.Opt{askOn: &laid.ArcOn, askOff: &laid.ArcOff, askStep: &laid.SpotStep}
	if p.mode != "timed" {
		rows[askTravel] = &laid.Travel
	}
	for at, to := range rows {
		if v := p.value(at); v.Set {
			*to = v
		}
	}
	return laid, Measured{p.value(askWidth).V, p.value(askLeg).V, p.value(askThroat).V, p.value(askZinc).V}
}

// took puts what the readings teach on the card, and clears the rows that were saved.
func (p *measurePage) took(m *root, done measured, err error) tea.Cmd {
	p.busy = false
	source, was := p.values[askSource], p.values
	if err == nil || done.reading {
		*p = measurePage{form: form{at: askPull}, sources: p.sources, said: done.said, kept: source}
		p.values[askSource] = source
	}
	switch {
	case err != nil && done.reading:
		copy(p.values[askSeen:askSave], was[askSeen:askSave])
		p.to(askSave)
		m.notice = bookFault("the reading is kept, the bead is not: ", err, "enter tries the bead again")
	case err != nil:
		m.notice = bookFault("not kept: ", err, "what is measured stays here: enter tries again")
	}
	if done.reading {
		m.learn(&done.job, "kept, and on the card")
	}
	return nil
}

// learn puts what readings taught on the card as it is now.
func (m *root) learn(lessons *calc.Job, said string) {
	taught := m.session.base()
	if taught.Learn(lessons); taught != m.session.base() {
		m.changed(taught, said)
	}
}

// recall puts on the card what a known power source taught earlier. If the book fails, nothing changes.
func recall(source string) action {
	return func(m *root) tea.Cmd {
		job := m.session.base()
		return m.act(asking(func(ctx context.Context, k Keeper) (calc.Job, error) { return k.Recall(ctx, source, job) },
			func(m *root, lessons calc.Job, err error) tea.Cmd {
				if err != nil || source != m.meter.values[askSource] {
					return nil
				}
				m.meter.kept = source
				if lessons.Readings.Set || lessons.FeedDial.Known() || lessons.VoltsDial.Known() {
					m.learn(&lessons, "the card has what "+source+" taught before")
				}
				return nil
			}))
	}
}

// find asks for the known power sources, once.
func (p *measurePage) find(m *root) tea.Cmd {
	if m.Book == nil || p.sources != nil {
		return nil
	}
	return m.act(asking(func(ctx context.Context, k Keeper) ([]Entry, error) { return k.List(ctx, "source", "") },
		func(_ *root, list []Entry, _ error) tea.Cmd { // after an error none: the first reading creates the book
			p.sources = nil
			for _, e := range list {
				p.sources = append(p.sources, e.Name)
			}
			return nil
		}))
}

// view is the form, and below it an explanation of the row under the cursor and how to measure it.
func (p *measurePage) view(m *root, w, h int) (b block, _ *tea.Cursor) {
	if m.Book == nil {
		b.say(m.th.plain, 0, "There is no book here to keep a reading in: start the program with one, brazebooth "+
			"--book FILE.", w)
		return b, nil
	}
	p.mode, p.units, p.rows = m.session.card.Used.Mode, m.Units, slices.Clone(measureRows[:])
	for at := range p.rows {
		p.rows[at].skip = !p.asked(at)
	}
	says := func(at int, here bool) (string, paint) { return p.says(&m.th, at, here) }
	return p.draw(&m.th, says, "", p.explain(&m.th, w), w, h)
}

func (p *measurePage) says(th *theme, at int, here bool) (string, paint) {
	_, said, err := p.read(at)
	switch {
	case at == askSave:
		return p.keeps(th, here)
	case here && !p.began.IsZero():
		return "■ the watch runs – space stops it", th.good
	case err != nil && !here:
		return "▲ " + faultOf(err).what, th.watch
	case err != nil:
		return "", th.quiet
	case said != "":
		return "= " + said, th.quiet
	case p.seconds[at] > 0:
		return fmt.Sprintf("%.1f s", p.seconds[at]), th.quiet
	}
	return "", th.quiet
}

// explain explains the row under the cursor: another way to read its number, what to type, how to measure it; and what
// was saved last.
func (p *measurePage) explain(th *theme, w int) (b block) {
	row, rule := &measureRows[p.at], measureRows[p.at].rule
	if p.at == askSource {
		rule = "any name that the booth goes by"
		if len(p.sources) > 0 {
			rule = "known: " + strings.Join(p.sources, ", ") + "; enter alone takes the first"
		}
	}
	b.say(th.plain, 0, p.field.reading(row.field, quantity.Both, rule), w)
	b.say(th.good, 0, p.said, w)
	if l, ok := tables.PracticeLines.ByID(row.how); ok {
		b.say(th.plain, 0, th.inUnits(l.Text), w) // it has the cautions of the measurement
	}
	return b
}
