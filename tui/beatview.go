package tui

import (
	"fmt"
	"math"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tui/canvas"
)

// view shows the times in big digits below their beat, and below them remarks and the heat from which they follow. Beat
// and digits keep their place while the heat is computed: then they are grey, the times of an earlier job, or dashes.
func (p *beatPage) view(m *root, w, h int) (block, *tea.Cursor) {
	th, s, sp := &m.th, &m.session, &p.have
	var b block
	if p.err != nil {
		b.fault(th, faultOf(p.err), w)
		return b, nil
	}
	stops(&b, th, s, &sp.Card, w)
	if p.ok && len(sp.Figures) == 0 {
		b.addAll(p.standing(th, w))
		b.say(th.watch, 0, th.inUnits(sp.Why), min(w, 88))
		b.skip()
		b.addAll(s.finding(th, []report.Block{report.Remedies{List: sp.Remedies, Rhythm: true}}, w, false))
		return b, nil
	}
	b.addAll(p.beat(m, w, max(1, h/10)))
	// On a low terminal the remarks on a closed joint need this line.
	if h >= 24 || h >= 18 && !sp.Card.Warned("timed-closed") {
		b.skip()
	}
	b.addAll(block(p.dials.Draw(p.dialled(m), th.Theme, w, min(max(len(beatDials), h/3), h-len(b)))))
	b.addAll(p.why(th, s, w, h))
	b.addAll(p.facts(th, s, w))
	if room := h - len(b); room >= leastTrace && p.chart != nil {
		if room > leastTrace+1 { // with less room the heat gets this line
			b.skip()
		}
		b.addAll(block(p.trace.Draw(p.chart, th.Theme, w, min(h-len(b), 22))))
	}
	if room := h - len(b); room > 1 {
		b.addAll(s.finding(th, []report.Block{report.Limits{List: sp.Limits}, report.Wider{Wider: sp.Wider}}, w,
			false).fit(room))
	}
	return b, nil
}

// leastTrace is the fewest lines on which the heat can be read.
const leastTrace = 5

// standing says that the heat is still being computed, or that the page shows another job's times.
func (p *beatPage) standing(th *theme, w int) (b block) {
	switch {
	case p.stop != nil:
		long, short := "", ""
		if p.ok {
			long, short = "figures of the job before; ", "the job before; "
		}
		text := fmt.Sprintf("%sfollowing the heat, %.0f %% – esc gives up", long, 100*p.share())
		if width(text) > w {
			text = fmt.Sprintf("%sheat followed: %.0f %%", short, 100*p.share())
		}
		b.say(th.bold, 0, text, w)
	case p.ok && p.old():
		b.say(th.watch, 0, "▲ timed arc of an earlier job", w)
	}
	return b
}

// why says what the times are for, with all remarks if there is room.
func (p *beatPage) why(th *theme, s *session, w, h int) (b block) {
	sp, style := &p.have, th.plain
	if sp.Reason != "" || sp.Card.Zone != "good" {
		style = th.watch
	}
	now, f := &s.card, sp.Card.Used.Feed.V
	if f > 0 && p.ok && sp.Good && now.Used.Mode != "timed" && math.Abs(now.Used.Feed.V/f-1) > 0.02 {
		b.say(th.watch, 0, "▲ the card is "+now.Used.Mode+" at another wire feed: these times need the feed above", w)
	}
	if !p.ok || h < lowBody && sp.Reason == "" {
		return b
	}
	b.say(style, 0, th.inUnits(sp.Why), min(w, 88))
	for _, x := range sp.Card.Warnings {
		switch x.Code {
		case "timed-closed", "timed-on-long", "timed-on-short", "timed-off-long", "timed-off-short", "timed-narrow":
			if x.Text != sp.Why {
				b.say(th.watch, 0, "▲ "+th.inUnits(x.Text), min(w, 88))
			}
		}
	}
	return b
}

// beat is one beat to scale over the whole width. During playback the elapsed part is lit. Without a beat of this job
// its lines say so.
func (p *beatPage) beat(m *root, w, lines int) block {
	if said := p.standing(&m.th, w); !p.plays && len(said) > 0 {
		return said.fit(lines)
	}
	on, off := report.BeatOf(&p.have)
	spot, share, slower := p.phase()
	show := m.th.look.number
	b := canvas.Beat{On: on, Off: off, OnText: show(fmt.Sprintf("ARC ON  %.2f s", on)),
		OffText: show(fmt.Sprintf("off  %.2f s", off)),
		Playing: p.plays, At: share, Note: "space plays it"}
	if b.Playing {
		b.Note = fmt.Sprintf("spot %d", spot)
		if slower > 1.01 {
			b.Note += show(fmt.Sprintf(", played %.1f times slower: faster would flash", slower))
		}
	}
	out := block(b.Draw(m.th.Theme, w, lines))
	if b.Playing && b.Burns() { // the whole width shows it, so that it is seen from the corner of the eye
		lamp := canvas.Lamp{Word: "ON", Note: b.Note, Lit: true}
		return append(out, block(lamp.Draw(m.th.Theme, w, lines))...)
	}
	return append(out, make(block, map[bool]int{true: lines}[b.Playing])...)
}

// dialled are the settings in big digits.
func (p *beatPage) dialled(m *root) canvas.Dials {
	c := &p.have.Card
	var list canvas.Dials
	for i, name := range beatDials {
		f, ok := p.figure(name)
		if !ok {
			continue
		}
		x := report.RowOf(c, &f, report.OfTimed, m.Units)
		d := dialOf(&cardRow{name: name, label: x.Label, fig: x}, c, m.th.look)
		d.Cursor, d.Bar.Off = i == p.cursor, !p.ok || p.old() || p.stop != nil
		if !p.ok && !choice.SettingOf(name).Given(&p.job) {
			p.estimated(&d)
		}
		list = append(list, d)
	}
	return list
}

func (p *beatPage) facts(th *theme, s *session, w int) block {
	if !p.ok {
		return nil
	}
	var parts []piece
	for _, f := range p.have.Figures {
		switch f.Name {
		case "first_spot_on", "seam_time":
			x := report.RowOf(&p.have.Card, &f, report.OfTimed, s.Units)
			parts = append(parts, piece{0, th.quiet, x.Label}, piece{0, th.plain, x.Value.String()})
		}
	}
	return flow(newRow(w).put(th.quiet, "good to about a factor of two"), parts, 0, w)
}

// heatChart is the heat at root edge and middle over the last beats, in the units of the screen; nil if it was not
// computed.
func heatChart(sp *calc.Timed, units quantity.System, comma bool) *canvas.Chart {
	points := report.LastBeats(sp)
	if len(points) < 2 {
		return nil
	}
	sys := units.Lead()
	deg := func(celsius float64) float64 { return report.In(celsius, "C", sys) }
	ch := &canvas.Chart{X: "s", Y: quantity.Label("C", sys), OnName: "arc on",
		Comma: comma, Limits: []canvas.Limit{
			{Name: "base melts", At: deg(sp.BaseSolidus), State: canvas.Burns},
			{Name: "filler flows", At: deg(sp.Liquidus), State: canvas.Good},
			{Name: "filler is solid", At: deg(sp.Solidus), State: canvas.Cold}}}
	edge, middle := canvas.Trace{Name: "root edge"}, canvas.Trace{Name: "middle", Dotted: true}
	for i, q := range points {
		t := q.Time - points[0].Time
		edge.X, edge.Y = append(edge.X, t), append(edge.Y, deg(q.Edge))
		middle.X, middle.Y = append(middle.X, t), append(middle.Y, deg(min(q.Centre, sp.BaseSolidus+300)))
		if n := len(ch.On); q.On && n > 0 && i > 0 && points[i-1].On {
			ch.On[n-1].To = t
		} else if q.On {
			ch.On = append(ch.On, canvas.Stretch{From: t, To: t})
		}
	}
	ch.Traces = []canvas.Trace{edge, middle}
	return ch
}
