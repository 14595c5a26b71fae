package tui

import (
	"context"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
)

// mapPage is the operating window: what every wire feed and travel would do, with the present setting in
// it. Arrows walk in it and the card follows.
type mapPage struct{ slow[calc.Job, calc.Window] }

// anySetting is the job without the settings that a map spans.
func anySetting(j calc.Job) calc.Job {
	j.Feed, j.Travel, j.Amps = calc.Opt{}, calc.Opt{}, calc.Opt{}
	return j
}

// openMap opens the map and lets it be computed.
func openMap(m *root) tea.Cmd {
	m.push(&m.chart)
	return m.chart.want(m.ctx, anySetting(m.job), m.maps)
}

func (p *mapPage) about(*root) about {
	return about{"on the map", "window", "←→↑↓ walk  r suggestion  u units  esc card"}
}

// left gives up what is being computed.
func (p *mapPage) left(m *root) {
	p.cancel()
	m.card.load(&m.session)
}

func (p *mapPage) press(m *root, press tea.KeyPressMsg) action {
	s := &m.session
	switch press.String() {
	case "up":
		return p.walk(s, 0, 1)
	case "down":
		return p.walk(s, 0, -1)
	case "left", "-":
		return p.walk(s, -1, 0)
	case "right", "+", "=":
		return p.walk(s, 1, 0)
	}
	switch {
	case key.Matches(press, bound.Reset), key.Matches(press, bound.ResetAll):
		return change(anySetting(s.job), "suggestion back")
	case key.Matches(press, bound.On), key.Matches(press, bound.Back), key.Matches(press, bound.Map):
		return goBack
	}
	return everywhere(press)
}

// walk moves the setting to the next point of the map.
func (p *mapPage) walk(s *session, di, dj int) action {
	m := &p.have
	if len(m.Feeds) == 0 || p.old() {
		return nil
	}
	i, j := p.where(&s.card)
	i = max(0, min(len(m.Feeds)-1, i+di))
	j = max(0, min(len(m.Travels)-1, j+dj))
	job := s.base()
	job.Amps = calc.Opt{}
	job.Feed, job.Travel = calc.Some(m.Feeds[i]), calc.Some(m.Travels[j])
	return change(job, "")
}

// where is the map's point nearest to the card's setting.
func (p *mapPage) where(c *calc.Card) (i, j int) {
	return p.have.At(c.Used.Feed.V, c.Used.Travel.V)
}

// windowFunc computes an operating window.
type windowFunc func(ctx context.Context, job calc.Job, progress func(float64)) (calc.Window, error)
