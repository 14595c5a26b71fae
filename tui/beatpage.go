package tui

import (
	"context"
	"fmt"
	"math"
	"time"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/report"
)

// gapFunc computes the times of a timed arc.
type gapFunc func(ctx context.Context, job calc.Job, progress func(float64)) (calc.Timed, error)

// beatPage is the timed arc: how long on, how long off, how far on, with the heat that says so. It plays the
// beat, so that a hand can learn the rhythm.
type beatPage struct {
	slow[calc.Job, calc.Timed]
	began time.Time     // of the playing; zero where it rests
	at    time.Duration // since then
	asked bool          // playing was asked for, its first tick has not come
	run   int           // counts the playings: the clock of an earlier one moves nothing
}

// timedJob is the job as its timed arc is asked for.
func timedJob(j calc.Job) calc.Job {
	j.Mode = "timed"
	return j
}

// openBeat opens the page of the timed arc and lets its heat be followed.
func openBeat(m *root) tea.Cmd {
	m.push(&m.beat)
	return m.beat.want(m.ctx, timedJob(m.job), m.gaps)
}

// beatFound takes the times that following the heat gave.
func beatFound(m *root, f slowFound[calc.Timed]) tea.Cmd {
	m.beat.found(f)
	return both(m.follow(), m.playInBooth())
}

func (p *beatPage) about(m *root) about {
	k := &m.keys
	return about{"on the timed arc's page", "beat", []key.Binding{named(k.Play, "space", "play, stop"), named(k.Up, "↑↓", "on"), named(k.More, "←→", "off"),
		named(k.Reset, "r", "suggestion"), named(k.Units, "u", "units"), named(k.Back, "esc", "card")}}
}

// back stops the playing first.
func (p *beatPage) back(*root) bool {
	playing := p.playing()
	p.halt()
	return playing
}

// left gives up what is being computed.
func (p *beatPage) left(m *root) {
	p.halt()
	p.cancel()
	m.card.load(&m.session)
}

func (p *beatPage) update(m *root, msg tea.Msg) action {
	k, s := &m.keys, &m.session
	press, ok := msg.(tea.KeyPressMsg)
	if !ok {
		return nil
	}
	switch {
	case key.Matches(press, k.Play), press.Text == " ":
		return startBeat
	case key.Matches(press, k.Up):
		return p.turn(s, "arc_on", 1)
	case key.Matches(press, k.Down):
		return p.turn(s, "arc_on", -1)
	case key.Matches(press, k.More):
		return p.turn(s, "arc_off", 1)
	case key.Matches(press, k.Less):
		return p.turn(s, "arc_off", -1)
	case key.Matches(press, k.Reset), key.Matches(press, k.ResetAll):
		job := s.job
		job.ArcOn, job.ArcOff, job.SpotStep = calc.Opt{}, calc.Opt{}, calc.Opt{}
		return change(job, "suggestion back")
	case key.Matches(press, k.On), key.Matches(press, k.Back), key.Matches(press, k.Beat):
		return goBack
	}
	return everywhere(press, k)
}

// turn changes on or off by a twentieth of a second; a change makes the job's mode timed.
func (p *beatPage) turn(s *session, name string, by float64) action {
	if p.old() || !p.have.Good {
		return nil
	}
	const step = 0.05
	job := timedJob(s.base())
	to := &job.ArcOn
	if name == "arc_off" {
		to = &job.ArcOff
	}
	f, _ := p.have.Card.Figure(name)
	*to = calc.Some(math.Max(step, (math.Round(f.Value/step)+by)*step))
	return change(job, "")
}

// beatTick is the clock of the playing.
type beatTick struct {
	at  time.Time
	run int
}

// tell moves the playing on.
func (t beatTick) tell(m *root) (tea.Cmd, bool) {
	cmd := m.beat.play(t)
	return cmd, cmd != nil
}

const beatFrame = 50 * time.Millisecond

func (p *beatPage) next() tea.Cmd {
	run := p.run
	return tea.Tick(beatFrame, func(at time.Time) tea.Msg { return beatTick{at, run} })
}

func (p *beatPage) playing() bool { return p.asked || !p.began.IsZero() }

func startBeat(m *root) tea.Cmd { return m.beat.start() }

// start plays the beat, or stops it.
func (p *beatPage) start() tea.Cmd {
	if p.playing() {
		p.halt()
		return nil
	}
	if len(p.have.Figures) == 0 {
		return nil
	}
	p.asked = true
	p.run++
	return p.next()
}

func (p *beatPage) halt() { p.began, p.at, p.asked = time.Time{}, 0, false }

// play moves the playing on; nil where it was stopped.
func (p *beatPage) play(t beatTick) tea.Cmd {
	if !p.playing() || t.run != p.run {
		return nil
	}
	if p.asked {
		p.began, p.asked = t.at, false
	}
	p.at = t.at.Sub(p.began)
	return p.next()
}

// fastestFlash is how often a second the screen may change between on and off at most.
const fastestFlash = 3.0

// times are how long the arc burns and rests, s.
func (p *beatPage) times() (on, off float64) {
	a, _ := p.have.Card.Figure("arc_on")
	b, _ := p.have.Card.Figure("arc_off")
	return a.Value, b.Value
}

// phase is where the playing stands: in which spot, how far in it as a share of the beat, and how much slower
// than the arc it runs so as not to flash faster than is safe to look at.
func (p *beatPage) phase() (spot int, share, slower float64) {
	on, off := p.times()
	beat := on + off
	if !(beat > 0) {
		return 0, 0, 1
	}
	slower = max(1, 1/(fastestFlash*beat))
	n := p.at.Seconds() / (beat * slower)
	return int(n) + 1, n - math.Floor(n), slower
}

func (p *beatPage) view(m *root, w, h int) (block, *tea.Cursor) {
	return p.draw(&m.th, &m.session, w, h), nil
}

func (p *beatPage) draw(th *theme, s *session, w, h int) block {
	var b block
	b.addAll(p.heading(th, w))
	if p.err != nil {
		f := faultOf(p.err)
		b.say(th.watch, 0, "▲ "+f.what+" – "+f.hint, w)
		return b
	}
	if !p.ok {
		return b
	}
	sp := &p.have
	style := th.plain
	if sp.Reason != "" || sp.Card.Zone != "good" {
		style = th.watch
	}
	stops(&b, th, s, &sp.Card, w)
	if h < lowBody && len(sp.Figures) > 0 {
		return p.lowView(th, s, b, w, h)
	}
	b.say(style, 0, sp.Why, min(w, 88))
	for _, x := range sp.Card.Warnings {
		switch x.Code {
		case "timed-closed", "timed-on-long", "timed-on-short", "timed-off-long", "timed-off-short", "timed-narrow":
			if x.Text == sp.Why {
				continue
			}
			b.say(th.watch, 0, "▲ "+x.Text, min(w, 88))
		}
	}
	p.otherFeed(&b, th, s, w)
	if len(sp.Figures) == 0 {
		b.skip()
		b.addAll(s.finding(th, []report.Block{report.Remedies{List: sp.Remedies, Rhythm: true}}, w, false))
		return b
	}
	b.addAll(p.bar(th, w))
	if w >= wideWidth {
		left := w * 3 / 5
		plot := p.plot(th, left-2, h-len(b))
		side := p.facts(th, s, w-left-2)
		side.skip()
		side.addAll(timedLimits(th, sp, s, w-left-2))
		b.addAll(beside(plot.fit(h-len(b)), side.fit(min(len(side), h-len(b))), left, th.quiet, "│ "))
		return b
	}
	facts := p.facts(th, s, w)
	b.addAll(facts)
	if room := h - len(b); room >= 7 {
		b.addAll(p.plot(th, w, min(room, 12)))
	}
	if room := h - len(b); room > 1 {
		b.addAll(timedLimits(th, sp, s, w).fit(room))
	}
	return b
}

// otherFeed warns where the card has another wire feed than these times need.
func (p *beatPage) otherFeed(b *block, th *theme, s *session, w int) {
	now, f := &s.card, p.have.Card.Used.Feed.V
	if p.have.Good && now.Used.Mode != "timed" && math.Abs(now.Used.Feed.V/f-1) > 0.02 {
		b.say(th.watch, 0, "▲ the card is "+now.Used.Mode+" at another wire feed: these times need the feed below", w)
	}
}

// lowView is for a terminal of few lines: under the warnings the times themselves come before what explains them.
func (p *beatPage) lowView(th *theme, s *session, b block, w, h int) block {
	p.otherFeed(&b, th, s, w)
	b.addAll(p.bar(th, w))
	b.addAll(p.facts(th, s, w))
	if len(b) < h {
		b.say(th.plain, 0, p.have.Why, w)
	}
	return b.fit(h)
}

func (p *beatPage) heading(th *theme, w int) block {
	now := piece{}
	switch {
	case p.stop != nil:
		now = piece{0, th.quiet, fmt.Sprintf("following the heat, %.0f %% – esc gives up", 100*p.share())}
	case p.ok && p.old():
		now = piece{0, th.watch, "▲ of an earlier job"}
	case p.ok && w < narrowWidth && len(p.have.Figures) > 0:
		now = piece{0, th.quiet, "good to about a factor of two"}
	}
	return flow(newRow(w).put(th.bold, "timed arc"), []piece{now}, 0, w)
}

// stand is where the playing stands on a bar of a width: the cells of on, all cells, the one that is reached and the word
// for it.
func (p *beatPage) stand(w int) (on, all, at int, word string) {
	on, all = report.BeatBar(&p.have, max(10, w))
	spot, share, slower := p.phase()
	at = min(all-1, int(share*float64(all)))
	word = fmt.Sprintf("off %3d", spot)
	if at < on {
		word = fmt.Sprintf("ON  %3d", spot)
	}
	if slower > 1.01 {
		word += " slowed"
	}
	return on, all, at, word
}

// wordRoom is what the word beside a bar needs.
const wordRoom = 17

// bar is one beat to scale; while it plays a mark runs along it and the word says whether the arc burns.
func (p *beatPage) bar(th *theme, w int) block {
	var b block
	on, all, at, word := p.stand(w - wordRoom)
	style := th.quiet
	if p.playing() && at < on {
		style = th.bold
	}
	if _, _, slower := p.phase(); p.playing() && slower > 1.01 {
		b.say(th.quiet, 0, fmt.Sprintf("played %.1f times slower than the arc: faster would flash", slower), w)
	}
	if !p.playing() {
		at, word = -1, "█ on ─ off"
	}
	r := newRow(w)
	for i := range all {
		paint, mark := th.quiet, "─"
		if i < on {
			paint, mark = th.bold, "█"
		}
		if i == at {
			paint, mark = th.bold, "▲"
		}
		r.put(paint, mark)
	}
	r.blank(2).put(style, word)
	b.add(r.line())
	return b
}

// facts are the figures a hand needs.
func (p *beatPage) facts(th *theme, s *session, w int) block {
	var b block
	row := func(f calc.Figure) {
		x := report.RowOf(&p.have.Card, &f, report.OfTimed, s.units)
		parts := []piece{{15, th.bold, x.Value.String()}, {29, th.quiet, x.Value.Band()}, {42, th.plain, x.Other.String()}}
		if x.Other.Number == "" && w >= narrowWidth {
			parts[2] = piece{42, th.quiet, x.Beside(w-42, width)}
		}
		b.addAll(flow(newRow(w).put(th.quiet, x.Label), parts, 15, w))
	}
	if f, ok := p.have.Card.Figure("wire_feed"); ok {
		row(f)
	}
	for _, f := range p.have.Figures {
		switch f.Name {
		case "arc_on", "arc_off", "first_spot_on", "spot_step", "seam_time":
			row(f)
		}
	}
	return b
}

func (p *beatPage) plot(th *theme, w, h int) block {
	var b block
	for _, l := range report.TracePlot(&p.have, w, h) {
		r := newRow(w).put(th.quiet, l.Label)
		for _, mark := range l.Marks {
			r.put(tracePaint(th, mark), string(mark))
		}
		b.add(r.line())
	}
	return b
}

func tracePaint(th *theme, mark rune) paint {
	switch mark {
	case '*', '#':
		return th.bold
	case 'e', 'c':
		return th.bold
	}
	return th.quiet
}

// timedLimits says what ends each range and what a wider gap does.
func timedLimits(th *theme, sp *calc.Timed, s *session, w int) block {
	return s.finding(th, []report.Block{report.Limits{List: sp.Limits}, report.Wider{Wider: sp.Wider}}, w, false)
}

// stops says on top of a page what must not be done at all.
func stops(b *block, th *theme, s *session, c *calc.Card, w int) {
	b.addAll(s.finding(th, []report.Block{report.Stops{List: calc.Stops(c.Warnings)}}, w, false))
}
