package tui

import (
	"context"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tui/canvas"
)

// spans are the good spans of a card's wire feed and travel, also of what a hand set; ok is false where none is
// computed.
type spans struct {
	feed, travel calc.GoodSpan
	ok           bool
}

// spansOf finds them; a card whose feed and travel are both suggested has them already.
func spansOf(ctx context.Context, c *calc.Card) (s spans) {
	s.feed, s.travel, s.ok = calc.GoodSpans(ctx, c)
	return s
}

// followSpans lets the good spans of a card come whose feed or travel a hand set: they take about as long as the card.
func (m *root) followSpans() tea.Cmd {
	c := &m.session.card
	set := c.Job.Feed.Set || c.Job.Amps.Set || c.Job.Travel.Set
	if m.old || !set || m.timed() || stateOf(c) == canvas.NotJudged {
		m.good.cancel()
		return nil
	}
	card := *c
	return m.good.want(m.ctx, c.Used, func(ctx context.Context, _ calc.Job, _ func(float64)) (spans, error) {
		return m.spans(ctx, &card), nil
	})
}

// spanned puts the good span of a setting that a hand made under its dial.
func (m *root) spanned(d *canvas.Dial, r *report.Row) {
	c := &m.session.card
	if !m.good.ready(c.Used) || !m.good.have.ok || d.Bar.Kind == canvas.GoodSpan {
		return
	}
	span := m.good.have.feed
	switch r.Figure.Name {
	case "wire_feed":
	case "travel":
		span = m.good.have.travel
	default:
		return
	}
	if span.High == 0 {
		return
	}
	f := r.Figure
	_, from, to := quantity.Dialed(f.Name, f.Value, span.Low, span.High, f.Unit, true, m.units.Lead())
	d.Span = m.th.look.number(from + "–" + to)
	d.Bar.Kind, d.Bar.Span = canvas.GoodSpan, [2]float64{span.Low, span.High}
	d.Bar.Low, d.Bar.High = track(f.Name, min(f.Value, span.Low), max(f.Value, span.High))
}
