package tui

import (
	"context"
	"math"
	"time"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/report"
	"brazebooth/tui/canvas"
)

// gapFunc computes the times of a timed arc.
type gapFunc func(ctx context.Context, job calc.Job, progress func(float64)) (calc.Timed, error)

// beatPage is the page of the timed arc: on time, off time and step, with the heat from which they follow. It can play
// the beat, so that a welder can learn the rhythm.
type beatPage struct {
	slow[calc.Job, calc.Timed]
	plays bool          // the beat is played
	began time.Time     // when the playback began, by its first tick
	at    time.Duration // since began
	run   int           // counts the playbacks, so that ticks of an earlier one are ignored

	cursor int // among the dials
	dials  canvas.Cached[canvas.Dials]
	trace  canvas.Cached[*canvas.Chart]
	chart  *canvas.Chart // of the answer in trace
}

// timedJob is the job with which the times of its timed arc are computed.
func timedJob(j calc.Job) calc.Job {
	j.Mode = "timed"
	return j
}

// openBeat opens the page of the timed arc and starts computing its heat. Until that is done the page shows no times.
func openBeat(m *root) tea.Cmd {
	m.push(&m.beat)
	m.beat.cancelled = false // opening the page again restarts a computation that was given up
	if !m.beat.ok {
		m.beat.have.Card, _ = m.Solve(timedJob(m.job)) // without figures if the job has no card
	}
	return m.beat.want(m.Context, timedJob(m.job), m.Gap)
}

// beatFound takes over the times that were computed from the heat.
func beatFound(m *root, f slowFound[calc.Timed]) tea.Cmd {
	m.beat.found(f)
	if m.notice != nil && m.notice.what == noTimesYet && m.beat.stop == nil {
		m.notice = nil
	}
	m.beat.chart = heatChart(&m.beat.have, m.Units, m.th.look.comma)
	return tea.Batch(m.follow(), m.playInBooth())
}

func (p *beatPage) about(m *root) about {
	keys := "←→ pick  ↑↓ change  space play, stop  r suggestion  b booth  u units  esc card"
	if p.old() || !p.have.Good { // there are no times to change yet
		keys = "esc card  space play, stop  b booth  u units"
	}
	return about{help: "on the timed arc's page", term: "timed arc", keys: m.withPicture(keys)}
}

func (p *beatPage) back(*root) bool {
	played := p.plays
	p.halt()
	return played
}

func (p *beatPage) left(*root) {
	p.halt()
	p.cancel()
}

func (p *beatPage) press(m *root, press tea.KeyPressMsg) action {
	s := &m.session
	switch pick, turn := settingKey(press); {
	case key.Matches(press, bound.Play), press.Text == " ":
		return startBeat
	case pick != 0:
		p.cursor = (p.cursor + pick + len(beatDials)) % len(beatDials)
		return nil
	case turn != 0:
		return p.turn(s, beatDials[p.cursor], turn)
	case key.Matches(press, bound.Booth) && m.timed():
		return func(m *root) tea.Cmd { m.pop(); return openBooth(m) }
	case key.Matches(press, bound.Booth):
		return refuse("the booth view shows the card, and that is not timed", "change a time here, then b")
	case key.Matches(press, bound.Reset), key.Matches(press, bound.ResetAll):
		job := s.job
		job.ArcOn, job.ArcOff, job.SpotStep = calc.Opt{}, calc.Opt{}, calc.Opt{}
		return change(job, "suggestion back")
	case key.Matches(press, bound.Picture) && p.ok && !p.old():
		return asPicture("the heat of the timed arc", heatPicture(p.have))
	case key.Matches(press, bound.On), key.Matches(press, bound.Back), key.Matches(press, bound.Beat):
		return goBack
	}
	return everywhere(press)
}

// beatDials are the settings of a timed arc.
var beatDials = [...]string{"arc_on", "arc_off", "spot_step", "wire_feed"}

const noTimesYet = "there are no times to change yet"

var tooEarly = refuse(noTimesYet, "a moment, then the key once more")

// turn changes a figure by a step. A change makes the job's mode timed.
func (p *beatPage) turn(s *session, name string, by int) action {
	f, ok := p.figure(name)
	if p.old() || !p.have.Good || !ok {
		return tooEarly
	}
	return change(choice.SettingOf(name).Turned(timedJob(s.job), f.Value, by, s.Units), "")
}

// figure is one of the times, or a figure of their card.
func (p *beatPage) figure(name string) (calc.Figure, bool) {
	for _, f := range p.have.Figures {
		if f.Name == name {
			return f, true
		}
	}
	return p.have.Card.Figure(name)
}

// beatTick is a tick of the playback.
type beatTick struct {
	at  time.Time
	run int
}

func (t beatTick) tell(m *root) (tea.Cmd, bool) {
	cmd := m.beat.play(t)
	return cmd, cmd != nil
}

const beatFrame = 50 * time.Millisecond

func (p *beatPage) next() tea.Cmd {
	run := p.run
	return tea.Tick(beatFrame, func(at time.Time) tea.Msg { return beatTick{at, run} })
}

func startBeat(m *root) tea.Cmd { return m.beat.start() }

// start starts the playback, or stops it.
func (p *beatPage) start() tea.Cmd {
	if p.plays {
		p.halt()
		return nil
	}
	if len(p.have.Figures) == 0 {
		return nil
	}
	p.plays = true
	p.run++
	return p.next()
}

func (p *beatPage) halt() { p.plays, p.began, p.at = false, time.Time{}, 0 }

func (p *beatPage) play(t beatTick) tea.Cmd {
	if !p.plays || t.run != p.run {
		return nil
	}
	if p.began.IsZero() {
		p.began = t.at
	}
	p.at = t.at.Sub(p.began)
	return p.next()
}

// fastestFlash is how many times per second the screen may change between on and off at most.
const fastestFlash = 3.0

// phase is the position of the playback: in which spot, how far in it as a share of the beat, and how many times slower
// than the arc it plays, so that the screen never flashes faster than is safe to look at.
func (p *beatPage) phase() (spot int, share, slower float64) {
	on, off := report.BeatOf(&p.have)
	beat := on + off
	if !(beat > 0) {
		return 0, 0, 1
	}
	slower = max(1, 1/(fastestFlash*beat))
	n := p.at.Seconds() / (beat * slower)
	return int(n) + 1, n - math.Floor(n), slower
}
