package tui

import (
	"context"
	"fmt"
	"slices"
	"strings"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/calc/correct"
	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// correctPage follows a series of test beads. Each was laid with a setting and showed something; the latest answer says
// what to change for the next one.
type correctPage struct {
	slow[string, advice.Page]
	tries   []correct.Try
	applied bool     // the answer's change is on the card: the next bead can be laid
	keeping *keeping // of the last bead
	note    string   // why the earlier beads do not count any more
}

// reset forgets the beads if the job has changed: they teach nothing about the new one.
func (p *correctPage) reset(c *calc.Card) {
	n := len(p.tries)
	if n == 0 || correct.SameBead(p.tries[n-1].Job, c.Job) {
		return
	}
	p.note = "the job is another one now: the beads before it do not count"
	if p.tries[n-1].Job.Mode != c.Job.Mode {
		p.note = "the arc runs in another mode now: the beads before it do not count"
	}
	p.cancel()
	p.tries, p.applied = nil, false
}

// moved reports whether a setting was changed since the last bead, so that its answer is about another setting.
func (p *correctPage) moved(c *calc.Card) bool {
	n := len(p.tries)
	return n > 0 && !p.applied && p.tries[n-1].Job != correct.AsSet(c.Job, laidOf(c))
}

func laidOf(c *calc.Card) *calc.Job { j := calc.Laid(c); return &j }

// ask starts computing the answer to the last bead, also if it was cancelled before.
func (p *correctPage) ask(m *root) tea.Cmd {
	if len(p.tries) == 0 {
		return nil
	}
	p.cancelled, p.err = false, nil
	tries := p.tries
	return p.want(m.Context, p.key(), func(ctx context.Context, _ string, _ func(float64)) (advice.Page, error) {
		return m.next(ctx, tries)
	})
}

// key tells one series of beads from another.
func (p *correctPage) key() string { return fmt.Sprintf("%+v", p.tries) }

// saw records what the bead laid with the present card showed, and starts computing the answer.
func (p *correctPage) saw(m *root, ids []string) tea.Cmd {
	c := &m.session.card
	try := correct.Try{Job: correct.AsSet(c.Job, laidOf(c)), Seen: strings.Join(ids, ",")}
	p.tries = append(slices.Clip(p.tries), try)
	p.applied, p.keeping, p.note = false, new(keeping), ""
	return p.ask(m)
}

// answer is the answer to the last bead, nil until it is there.
func (p *correctPage) answer() *advice.Page {
	if len(p.tries) == 0 || !p.ready(p.key()) {
		return nil
	}
	return &p.have
}

func sawBead(ids []string) action {
	return func(m *root) tea.Cmd {
		if len(ids) == 0 {
			return m.act(refuse("nothing is marked", "space marks what the bead shows, good too"))
		}
		m.pop()
		return m.fix.saw(m, ids)
	}
}

// enterCorrect does what enter means on the page at this moment: ask what is seen, put the change on the card, or go on
// to the next bead.
func (m *root) enterCorrect() tea.Cmd {
	m.fix.reset(&m.session.card)
	a := m.fix.answer()
	if a != nil && !m.fix.applied && !m.fix.moved(&m.session.card) && a.Correction.Change != nil {
		m.changed(a.Correction.Next, "on the card: lay the next bead")
		m.fix.applied = m.notice == nil
		return nil
	}
	if len(m.fix.tries) > 0 && a == nil && m.fix.err == nil {
		return m.fix.ask(m)
	}
	if m.session.card.Stopped() {
		return m.act(refuse("this job is stopped", "no setting mends it"))
	}
	m.push(sightMarks())
	return nil
}

func (m *root) correctBody(w int) (b block) {
	th := &m.th
	m.fix.reset(&m.session.card)
	if m.session.card.Stopped() {
		b.say(th.stop, 0, "no setting mends a job that is stopped", w)
		return b
	}
	if len(m.fix.tries) == 0 {
		b.say(th.quiet, 0, m.fix.note, w)
		b.say(th.plain, 0, "Lay a test bead on scrap of the same sheet with the settings of the card, look at both "+
			"faces, peel it.", w)
		b.skip()
		b.say(th.bold, 0, "enter: say what the bead shows", w)
		return b
	}
	n := len(m.fix.tries) - 1
	m.beadText(&b, n, w)
	a := m.fix.answer()
	switch {
	case m.fix.err != nil:
		b.say(th.watch, 0, "▲ "+faultOf(m.fix.err).what, w)
	case a == nil && m.fix.cancelled:
		b.say(th.watch, 0, "given up; enter looks at it after all", w)
	case a == nil:
		b.say(th.quiet, 0, "looking at it …", w)
	case m.fix.moved(&m.session.card):
		b.say(th.plain, 0, "the card was changed by hand since that bead: lay one with it", w)
		b.skip()
		b.say(th.bold, 0, "enter: say what the bead shows", w)
	default:
		m.changeText(&b, a, w)
	}
	if n > 0 {
		b.skip()
	}
	for i := range n {
		m.beadText(&b, i, w)
	}
	return b
}

func (m *root) beadText(b *block, i, w int) {
	var laid []string
	t := &m.fix.tries[i]
	for _, set := range choice.Hand(t.Job.Mode == "timed") {
		if o := set.At(&t.Job); o.Set {
			laid = append(laid, quantity.ShowDialed(set.Figure, o.V, set.Unit, m.Units.Lead()))
		}
	}
	b.say(m.th.quiet, 0, fmt.Sprintf("bead %d: %s – %s", i+1, strings.Join(laid, ", "), report.SeenText(t.Seen)), w)
}

// keepText says how to save the last bead.
func (m *root) keepText(b *block, w int) {
	if m.Book == nil {
		return
	}
	th, now := &m.th, m.fix.keeping
	seen := m.fix.tries[len(m.fix.tries)-1].Seen
	if m.meter.kept != "" && !now.sent {
		b.say(th.quiet, 0, "laid on "+m.meter.kept, w)
	}
	switch {
	case now.kept:
		b.say(th.good, 0, "✓ this bead is in the book", w)
	case now.sent:
		b.say(th.quiet, 0, "this bead is being kept …", w)
	case seen == "good":
		b.say(th.bold, 0, "k: keep this bead in the book as a good one", w)
	default:
		b.say(th.bold, 0, "k: keep this bead in the book as a bad one, a: as acceptable", w)
	}
	if seen == "good" {
		b.say(th.good, 0, "to keep the settings for the next person: the page book, and type a name", w)
	}
}
