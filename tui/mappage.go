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

// mapFound takes a finished map.
func mapFound(m *root, f slowFound[calc.Window]) tea.Cmd {
	m.chart.found(f)
	return nil
}

func (p *mapPage) about(m *root) about {
	k := &m.keys
	return about{"on the map", "window", []key.Binding{named(k.More, "←→↑↓", "walk"), named(k.Reset, "r", "suggestion"), named(k.Units, "u", "units"), named(k.Back, "esc", "card")}}
}

// left gives up what is being computed.
func (p *mapPage) left(m *root) {
	p.cancel()
	m.card.load(&m.session)
}

func (p *mapPage) update(m *root, msg tea.Msg) action {
	k, s := &m.keys, &m.session
	press, ok := msg.(tea.KeyPressMsg)
	if !ok {
		return nil
	}
	switch {
	case key.Matches(press, k.Up):
		return p.walk(s, 0, 1)
	case key.Matches(press, k.Down):
		return p.walk(s, 0, -1)
	case key.Matches(press, k.Less):
		return p.walk(s, -1, 0)
	case key.Matches(press, k.More):
		return p.walk(s, 1, 0)
	case key.Matches(press, k.Reset), key.Matches(press, k.ResetAll):
		job := s.job
		job.Feed, job.Travel, job.Amps = calc.Opt{}, calc.Opt{}, calc.Opt{}
		return change(job, "suggestion back")
	case key.Matches(press, k.On), key.Matches(press, k.Back), key.Matches(press, k.Map):
		return goBack
	}
	return everywhere(press, k)
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

// view draws the map with the setting, the suggestion and what the setting does.
func (p *mapPage) view(m *root, w, h int) (block, *tea.Cursor) {
	return p.draw(&m.th, &m.session, w, h), nil
}

func (p *mapPage) draw(th *theme, s *session, w, h int) block {
	var b block
	b.addAll(p.heading(th, &s.card, w))
	stops(&b, th, s, &s.card, w)
	m := &p.have
	if p.err != nil {
		f := faultOf(p.err)
		b.say(th.watch, 0, "▲ "+f.what+" – "+f.hint, w)
		return b
	}
	if len(m.Feeds) == 0 {
		return b
	}
	signs := legend(th, w)
	if words := m.CoarserWords(); words != "" {
		signs.say(th.quiet, 0, words, w)
	}
	if w >= besideWidth {
		left := min(62, w-25)
		side := block{newRow(w-left).put(th.bold, verdictWords(&s.card)).line()}
		side.addAll(p.facts(th, s, w-left, h-len(b)-len(signs)-1))
		b.addAll(beside(p.grid(th, s, left-10, h-1-len(b)-len(signs)), side, left, th.quiet, ""))
		b.addAll(signs)
		return b
	}
	facts := p.facts(th, s, w, max(0, min(5, (h-7)/2-1)))
	b.addAll(p.grid(th, s, w-10, h-1-len(b)-len(facts)-len(signs)))
	b.addAll(facts)
	b.addAll(signs)
	return b
}

func (p *mapPage) heading(th *theme, c *calc.Card, w int) block {
	now := piece{}
	switch {
	case p.stop != nil:
		now = piece{0, th.quiet, fmt.Sprintf("computing, %.0f %% – esc gives up", 100*p.share())}
	case p.old():
		now = piece{0, th.watch, "▲ of an earlier job"}
	case w < besideWidth: // beside the map it stands over the figures
		now.paint, now.text = zoneWord(th, c)
	}
	return flow(newRow(w).put(th.bold, "operating window"), []piece{now}, 0, w)
}

// grid draws at most w by h points, sampled evenly, and the axes.
func (p *mapPage) grid(th *theme, s *session, w, h int) block {
	m := &p.have
	cols, rows := min(w-1, len(m.Feeds)), max(2, min(h-2, len(m.Travels)))
	i0, j0 := p.where(&s.card)
	si, sj := m.At(m.Suggestion.Feed, m.Suggestion.Travel)
	pick := func(k, n, all int) int { return k * (all - 1) / max(1, n-1) }
	nearCol := func(i int) int { return (i*(cols-1) + (len(m.Feeds)-1)/2) / (len(m.Feeds) - 1) }
	nearRow := func(j int) int { return (j*(rows-1) + (len(m.Travels)-1)/2) / (len(m.Travels) - 1) }
	var b block
	for row := rows - 1; row >= 0; row-- {
		j := pick(row, rows, len(m.Travels))
		label := ""
		if row%3 == 0 || row == rows-1 {
			label = report.Point(m.Travels[j], "mm/s", s.units)
		}
		r := newRow(w+8).to(6-min(6, width(label))).put(th.quiet, label).to(7).put(th.quiet, "│")
		for col := range cols {
			mark := report.PointMark(m, pick(col, cols, len(m.Feeds)), j)
			paint, text := zonePaint(th, mark), string(mark)
			switch {
			case row == nearRow(j0) && col == nearCol(i0) && !p.old():
				paint, text = th.bold, "@"
			case row == nearRow(sj) && col == nearCol(si):
				paint, text = th.bold, "S"
			}
			r.put(paint, text)
		}
		b.add(r.line())
	}
	first, last := report.Point(m.Feeds[0], "m/min", s.units), report.Point(m.Feeds[len(m.Feeds)-1], "m/min", s.units)
	b.add(newRow(w+8).blank(8).put(th.quiet, first).to(8+max(0, cols-width(last))).put(th.quiet, last).line())
	axes := "wire feed " + quantity.Label("m/min", s.units.Lead()) + " →   travel " + quantity.Label("mm/s", s.units.Lead()) + " ↑"
	b.add(newRow(w+8).blank(max(0, min(8, w+8-width(axes)))).put(th.quiet, axes).line())
	return b
}

func zonePaint(th *theme, mark byte) paint {
	switch mark {
	case '+':
		return th.good
	case '.':
		return th.state(canvas.Cold)
	case 'x':
		return th.state(canvas.Hot)
	case '#':
		return th.state(canvas.Burns)
	case ',':
		return th.state(canvas.Outside)
	}
	return th.quiet
}

// legend says what each mark of the map is, in its own style: on one line where that can be, else on two.
func legend(th *theme, w int) block {
	for _, gap := range [...]string{" ", ""} {
		if b := legendLines(th, gap, w); len(b) == 1 || gap == "" {
			return b
		}
	}
	return nil
}

func legendLines(th *theme, gap string, w int) block {
	var b block
	r := newRow(w)
	for _, sign := range [...]struct{ mark, short, long string }{
		{"+", "good", "good"}, {".", "cold", "cold"}, {"x", "hot", "hot"}, {"#", "burns", "burns through"},
		{",", "edge", "other edge"}, {"S", " suggested", "suggested"}, {"@", "yours", "yours"},
	} {
		word := sign.short
		if gap != "" {
			word = sign.long
		}
		if r.used > 0 && r.left() < 1+width(sign.mark+gap+word) {
			b.add(r.line())
			r = newRow(w)
		}
		if r.used > 0 {
			r.blank(1 + len(gap))
		}
		r.put(markPaint(th, sign.mark), sign.mark+gap+word)
	}
	return append(b, r.line())
}

// markPaint is the style of a zone's mark, of the suggestion and of the present setting.
func markPaint(th *theme, mark string) paint {
	switch mark {
	case "S":
		return th.bold
	case "@":
		return th.bold
	}
	return zonePaint(th, mark[0])
}

// facts are what the present setting does.
func (p *mapPage) facts(th *theme, s *session, w, h int) block {
	c := &s.card
	var b block
	for _, name := range [...]string{"wire_feed", "travel", "current", "wetting_angle", "base_peak_temperature", "margin"} {
		f, ok := c.Figure(name)
		if !ok || len(b) >= h {
			continue
		}
		b.add(newRow(w).put(th.quiet, calc.FigureLabel(name)).to(14).put(th.plain, report.ValueOf(&f, s.units).String()).line())
	}
	if aim := c.Used.Aim.V; aim != 0 && len(b) < h {
		b.add(newRow(w).put(th.quiet, aimedAt(aim)).to(14).put(th.plain, lengthText(math.Abs(aim), s.units.Lead())).line())
	}
	if !p.old() && len(b)+2 < h {
		var tail block
		tail.say(th.quiet, 0, fmt.Sprintf("suggested: good with %.0f %% chance", p.have.Chance.Good), w)
		if words := p.have.Chance.Words(); words != "" {
			tail.say(th.quiet, 0, "most often missed: "+words, w)
		}
		for _, r := range p.have.Remedies {
			if r.Opens {
				tail.say(th.good, 0, "✓ opens one: "+r.Change, w)
			}
		}
		if len(b)+1+len(tail) <= h { // else the words go before the gap
			b.skip()
		}
		b.addAll(tail)
	}
	return b.fit(min(len(b), h))
}

// aimedAt names the member toward which the arc points off the joint.
func aimedAt(mm float64) string {
	if mm > 0 {
		return "aim to 2nd"
	}
	return "aim to 1st"
}

// windowFunc computes an operating window.
type windowFunc func(ctx context.Context, job calc.Job, progress func(float64)) (calc.Window, error)

// zoneWord is the verdict in a word, and an edge that is not met besides.
func zoneWord(th *theme, c *calc.Card) (paint, string) {
	style := th.watch
	switch c.Verdict() {
	case "", "not-modelled", "stop": // a stop says so itself
		return th.quiet, ""
	case "good":
		style = th.good
	case "burn-through":
		style = th.stop
	case "outside":
		return th.watch, "not met: " + c.NearestEdge().Name
	}
	return style, c.Verdict()
}
