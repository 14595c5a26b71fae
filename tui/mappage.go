package tui

import (
	"context"
	"fmt"
	"math"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tui/canvas"
)

// mapPage is the operating window: what every wire feed and travel would do, with the present setting marked. The
// arrows walk through it, and the card follows.
type mapPage struct{ slow[calc.Job, calc.Window] }

// anySetting is the job without the two settings that a map spans.
func anySetting(j calc.Job) calc.Job {
	j.Feed, j.Travel, j.Amps = calc.Opt{}, calc.Opt{}, calc.Opt{}
	return j
}

func openMap(m *root) tea.Cmd {
	m.push(&m.chart)
	return m.chart.want(m.Context, anySetting(m.job), m.Window)
}

func (p *mapPage) about(m *root) about {
	return about{help: "on the map", term: "window", keys: m.withPicture("←→↑↓ walk  r suggestion  u units  esc card")}
}

func (p *mapPage) press(m *root, press tea.KeyPressMsg) action {
	s := &m.session
	by, walks := map[string][2]int{"up": {0, 1}, "down": {0, -1}, "left": {-1, 0}, "-": {-1, 0}, "right": {1, 0},
		"+": {1, 0}, "=": {1, 0}}[press.String()]
	if walks {
		return p.walk(s, by[0], by[1])
	}
	if key.Matches(press, bound.Picture) && p.ok && !p.old() {
		return asPicture("the map", mapPicture(p.have))
	}
	reset := change(anySetting(s.job), "suggestion back")
	return everywhere(press, keyAction{bound.Reset, reset}, keyAction{bound.ResetAll, reset},
		keyAction{bound.On, goBack}, keyAction{bound.Map, goBack})
}

// walk moves the setting to the next point of the map.
func (p *mapPage) walk(s *session, di, dj int) action {
	m := &p.have
	if len(m.Feeds) == 0 || p.old() {
		return nil
	}
	i, j := m.At(s.card.Used.Feed.V, s.card.Used.Travel.V)
	i = max(0, min(len(m.Feeds)-1, i+di))
	j = max(0, min(len(m.Travels)-1, j+dj))
	job := s.job
	job.Amps = calc.Opt{}
	job.Feed, job.Travel = calc.Some(m.Feeds[i]), calc.Some(m.Travels[j])
	return change(job, "")
}

// windowFunc computes an operating window.
type windowFunc func(ctx context.Context, job calc.Job, progress func(float64)) (calc.Window, error)

// view draws the map with the setting and the suggestion, and what the setting does: beside the map, or below it on a
// narrow terminal.
func (p *mapPage) view(m *root, w, h int) (block, *tea.Cursor) {
	th, s := &m.th, &m.session
	var b block
	switch {
	case p.stop != nil:
		b.say(th.quiet, 0, fmt.Sprintf("operating window: computing, %.0f %% – esc gives up", 100*p.share()), w)
	case p.ok && p.old():
		b.say(th.watch, 0, "▲ operating window of an earlier job", w)
	}
	stops(&b, th, s, &s.card, w)
	if p.err != nil {
		b.fault(th, faultOf(p.err), w)
		return b, nil
	}
	if len(p.have.Feeds) == 0 {
		return b, nil
	}
	signs := block(canvas.Legend(th.Theme, w))
	if words := p.have.CoarserWords(); words != "" {
		signs.say(th.quiet, 0, words, w)
	}
	room := h - len(b) - len(signs)
	field := p.field(s, th.look)
	if w >= besideWidth {
		side := max(26, w/4)
		left := block(field.Draw(th.Theme, w-side-2, room))
		b.addAll(beside(left, p.facts(th, s, side, room), w-side, th.quiet, ""))
	} else {
		facts := p.facts(th, s, w, max(0, min(5, room/4)))
		b.addAll(block(field.Draw(th.Theme, w, room-len(facts))))
		b.addAll(facts)
	}
	b.addAll(signs)
	return b, nil
}

// The margins, in percent, from which a good point gets the second and the third green.
const (
	fairMargin  = 8
	ampleMargin = 16
)

// field is the window as the canvas draws it, in the leading units.
func (p *mapPage) field(s *session, as look) *canvas.Map {
	m, sys := &p.have, s.Units.Lead()
	shown := func(unit string, list ...float64) (out []float64) {
		for _, v := range list {
			out = append(out, report.In(v, unit, sys))
		}
		return out
	}
	f := &canvas.Map{Lands: make([]canvas.Land, len(m.Zones)), Comma: as.comma, Stale: p.old(),
		X: shown("m/min", m.Feeds...), NameX: "wire feed " + quantity.Label("m/min", sys),
		Y: shown("mm/s", m.Travels...), NameY: "travel " + quantity.Label("mm/s", sys)}
	for k, zone := range m.Zones {
		f.Lands[k] = landOf(zone, m.Margins[k])
	}
	feed := shown("m/min", s.card.Used.Feed.V, m.Suggestion.Feed)
	travel := shown("mm/s", s.card.Used.Travel.V, m.Suggestion.Travel)
	f.At, f.Suggested = [2]float64{feed[0], travel[0]}, [2]float64{feed[1], travel[1]}
	f.TextX, f.TextY = as.number(figureNumber(s, "wire_feed")), as.number(figureNumber(s, "travel"))
	return f
}

// figureNumber is a figure of the card as a number in the leading units.
func figureNumber(s *session, name string) string {
	f, _ := s.card.Figure(name)
	return report.ValueOf(&f, s.Units).Number
}

// landOf is the land of a point. A good point at which another edge is not met is outside.
func landOf(zone string, margin float64) canvas.Land {
	switch {
	case zone == "cold":
		return canvas.LandCold
	case zone == "hot":
		return canvas.LandHot
	case zone == "burn-through":
		return canvas.LandBurns
	case zone != "good" && zone != "marginal", margin < 0:
		return canvas.LandOutside
	case margin < fairMargin:
		return canvas.LandGood1
	case margin < ampleMargin:
		return canvas.LandGood2
	}
	return canvas.LandGood3
}

// facts are what the present setting does.
func (p *mapPage) facts(th *theme, s *session, w, h int) block {
	c := &s.card
	var b block
	add := func(label, value string) {
		if len(b) < h {
			b.add(newRow(w).put(th.plain, label).to(14).put(th.plain, value).line())
		}
	}
	for _, name := range [...]string{"wire_feed", "travel", "current", "wetting_angle", "base_peak_temperature",
		"margin"} {
		value := "–" // keeps the row, otherwise all rows below it would move
		if f, ok := c.Figure(name); ok {
			value = report.ValueOf(&f, s.Units).String()
		}
		add(calc.FigureLabel(name), value)
	}
	if aim := c.Used.Aim.V; aim != 0 {
		toward := "aim to 1st"
		if aim > 0 {
			toward = "aim to 2nd"
		}
		add(toward, quantity.Show(math.Abs(aim), "mm", s.Units.Lead()))
	}
	if !p.old() && len(b)+2 < h {
		var tail block
		lead := "suggested"
		if !p.have.Card.Met() {
			lead = "○ is the nearest miss"
		}
		tail.say(th.quiet, 0, fmt.Sprintf("%s: %s, chance %.0f in 100", lead, p.have.Card.Verdict(),
			p.have.Chance.Good), w)
		if words := p.have.Chance.Words(); words != "" {
			tail.say(th.quiet, 0, "most often missed: "+words, w)
		}
		for _, r := range p.have.Remedies {
			if r.Opens {
				tail.say(th.good, 0, "✓ opens one: "+th.inUnits(r.Change), w)
			}
		}
		if len(b)+1+len(tail) <= h { // otherwise the words take the line of the gap
			b.skip()
		}
		b.addAll(tail)
	}
	if room := h - len(b) - 1; room >= len(c.Edges)+len(c.Unjudged) && len(c.Edges) > 0 {
		b.skip()
		b.addAll(block(edgesOf(c).Draw(th.Theme, w, room)))
	}
	return b.fit(min(len(b), h))
}
