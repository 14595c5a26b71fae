package tui

import (
	"context"
	"fmt"
	"math"
	"slices"
	"sync/atomic"
	"time"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tui/canvas"
)

// slow is a result that takes too long to compute between two key presses. It is computed in the background, shows its
// progress, and is cancelled when another one is wanted. The last result stays until the new one is there.
type slow[K comparable, V any] struct {
	job       K // whose result is wanted
	of        K // whose result have is
	have      V
	ok        bool // there is a result
	err       error
	done      *atomic.Uint64
	stop      context.CancelFunc                // nil if nothing is being computed
	cancelled bool                              // the wanted one was cancelled
	take      func(*root, slowFound[V]) tea.Cmd // how its screen handles a finished result; nil only stores it
	// number of the wanted computation: a job may be asked for, left, and asked for again
	run int
}

// slowFound is a finished result, or why there is none.
type slowFound[V any] struct {
	run int
	v   V
	err error
	to  func(*root, slowFound[V]) tea.Cmd
}

func (f slowFound[V]) tell(m *root) (tea.Cmd, bool) { return f.to(m, f), true }

// slowTick asks to look at the progress again.
type slowTick struct{ again func() tea.Cmd }

func (t slowTick) tell(*root) (tea.Cmd, bool) {
	cmd := t.again()
	return cmd, cmd != nil
}

// want starts computing the result of a job. It returns nil if the result is there already, is being computed, or was
// cancelled.
func (p *slow[K, V]) want(ctx context.Context, job K, solve func(context.Context, K, func(float64)) (V,
	error)) tea.Cmd {
	if p.ready(job) {
		p.cancel()
		p.job, p.err, p.cancelled = job, nil, false
		return nil
	}
	if p.job == job && (p.stop != nil || p.cancelled || p.err != nil) {
		return nil
	}
	p.cancel()
	ctx, stop := context.WithCancel(ctx)
	done := new(atomic.Uint64)
	p.job, p.stop, p.done, p.err, p.cancelled = job, stop, done, nil, false
	p.run++
	run, take := p.run, p.take
	if take == nil {
		take = func(_ *root, f slowFound[V]) tea.Cmd { p.found(f); return nil }
	}
	work := func() tea.Msg {
		v, err := solve(ctx, job, func(share float64) { done.Store(math.Float64bits(share)) })
		return slowFound[V]{run, v, err, take}
	}
	return tea.Batch(work, p.tick())
}

func (p *slow[K, V]) tick() tea.Cmd {
	run := p.run
	again := func() tea.Cmd {
		if p.stop == nil || p.run != run {
			return nil
		}
		return p.tick()
	}
	return tea.Tick(150*time.Millisecond, func(time.Time) tea.Msg { return slowTick{again} })
}

func (p *slow[K, V]) cancel() {
	if p.stop != nil {
		p.stop()
		p.stop, p.cancelled = nil, true
	}
}

// left gives up what the screen waits for when it is left.
func (p *slow[K, V]) left(*root) { p.cancel() }

// found stores a finished result, unless another one is wanted by now, and reports whether it did.
func (p *slow[K, V]) found(f slowFound[V]) bool {
	if p.stop == nil || f.run != p.run {
		return false
	}
	p.stop()
	if p.stop, p.err = nil, f.err; f.err == nil {
		p.have, p.of, p.ok = f.v, p.job, true
	}
	return true
}

func (p *slow[K, V]) ready(job K) bool { return p.ok && p.of == job }

// old reports whether the result shown is another job's.
func (p *slow[K, V]) old() bool { return p.of != p.job }

func (p *slow[K, V]) share() float64 { return math.Float64frombits(p.done.Load()) }

// spans are the good spans of a card's wire feed and travel, also of typed ones; nil if none are computed.
type spans map[string]calc.GoodSpan

// spansOf computes them. A card whose feed and travel are both suggested has them already.
func spansOf(ctx context.Context, c *calc.Card) spans {
	feed, travel, ok := calc.GoodSpans(ctx, c)
	if !ok {
		return nil
	}
	return spans{"wire_feed": feed, "travel": travel}
}

// followSpans starts computing the good spans of a card with a typed feed or travel, which take about as long as the
// card.
func (m *root) followSpans() tea.Cmd {
	c := &m.session.card
	set := c.Job.Feed.Set || c.Job.Amps.Set || c.Job.Travel.Set
	if m.fault != nil || !set || m.timed() || stateOf(c) == canvas.NotJudged {
		m.good.cancel()
		return nil
	}
	card := *c
	return m.good.want(m.Context, c.Used, func(ctx context.Context, _ calc.Job, _ func(float64)) (spans, error) {
		return m.spans(ctx, &card), nil
	})
}

// spanned puts the good span of a typed setting below its dial.
func (m *root) spanned(d *canvas.Dial, r *report.Row) {
	c := &m.session.card
	f := r.Figure
	if !m.good.ready(c.Used) || d.Bar.Kind == canvas.GoodSpan {
		return
	}
	span := m.good.have[f.Name]
	if span.High == 0 {
		return
	}
	_, from, to := quantity.Dialed(f.Name, f.Value, span.Low, span.High, f.Unit, true, m.Units.Lead())
	d.Span = m.th.look.number(from + "–" + to)
	d.Bar.Kind, d.Bar.Span = canvas.GoodSpan, [2]float64{span.Low, span.High}
	d.Bar.Low, d.Bar.High = track(f.Name, min(f.Value, span.Low), max(f.Value, span.High))
}

// toCome replaces a figure that is still being computed.
const toCome = "--"

// fromHeat are the figures of a timed arc that are computed from its heat. Until then there is only an estimate, which
// may be several times too short, and whose range may not contain the result.
var fromHeat = []string{"arc_on", "arc_off", "spot_step", "travel"}

// unsettled reports whether a figure of the present card is only an estimate.
func (m *root) unsettled(name string) bool {
	return m.timed() && !m.followed && slices.Contains(fromHeat, name) &&
		!choice.SettingOf(name).Given(&m.session.card.Job)
}

// estimated shows no figure on a dial while the heat is being computed, and an estimate without its range if that was
// cancelled.
func (p *beatPage) estimated(d *canvas.Dial) {
	d.Bar.Kind, d.Span = canvas.NoSpan, "rough"
	if p.stop != nil {
		d.Number, d.Also, d.Span = toCome, "", ""
		d.Bar.Empty, d.Bar.Off = true, true
	}
}

// rough is shown with the times of the card while their heat is being computed.
func (p *beatPage) rough() string {
	return fmt.Sprintf("on, off and travel come when their heat is followed: %.0f %%", 100*p.share())
}
