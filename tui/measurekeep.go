package tui

import (
	"context"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
)

// keepReading sends the reading to the book.
func keepReading(m *root) tea.Cmd {
	m.meter.busy = true
	k, p, job := m.keeper, m.meter, m.session.base()
	return func() tea.Msg {
		taught, said, err := k.Measure(context.Background(), p.source, p.reading, p.travel, job)
		return measured{taught, said, err}
	}
}

func (msg measured) tell(m *root) (tea.Cmd, bool) {
	m.meter.took(m, msg)
	return nil, true
}

// took puts what the readings teach on the card.
func (p *measurePage) took(m *root, msg measured) {
	p.busy = false
	if msg.err != nil {
		m.notice = bookFault("not kept: ", msg.err, "the reading stays here: enter tries again")
		return
	}
	source := p.source
	*p = measurePage{sources: p.sources, said: msg.said, at: askPull, source: source, kept: source}
	job := m.session.base() // as it is by now
	taught := job
	taught.Learn(&msg.job)
	if taught != job {
		m.changed(taught, "kept, and on the card")
	}
}

// recalled is what the book says a power source taught.
type recalled struct {
	source string
	job    calc.Job
	err    error
}

// recall asks what a known power source taught before.
func recall(source string) action {
	return func(m *root) tea.Cmd {
		k, job := m.keeper, m.session.base()
		return func() tea.Msg {
			taught, err := k.Recall(context.Background(), source, job)
			return recalled{source, taught, err}
		}
	}
}

// tell puts it on the card; a book that cannot say changes nothing.
func (msg recalled) tell(m *root) (tea.Cmd, bool) {
	if msg.err != nil || msg.source != m.meter.source {
		return nil, true
	}
	m.meter.kept = msg.source
	job := m.session.base()
	taught := job
	taught.Learn(&msg.job)
	if taught != job && (taught.Readings.Set || taught.FeedDial.Known() || taught.VoltsDial.Known()) {
		m.changed(taught, "the card has what "+msg.source+" taught before")
	}
	return nil, true
}

// openMeter asks for the known power sources.
func (m *root) openMeter() tea.Cmd {
	if m.keeper == nil || m.meter.sources != nil {
		return nil
	}
	k := m.keeper
	return func() tea.Msg {
		names, err := k.Sources(context.Background())
		if err != nil {
			return nil // there is no book yet: the first reading makes one
		}
		return sourcesKnown{names}
	}
}

// sourcesKnown are the names of the power sources in the book.
type sourcesKnown struct{ names []string }

func (msg sourcesKnown) tell(m *root) (tea.Cmd, bool) {
	m.meter.sources = msg.names
	return nil, true
}
