package tui

import (
	"context"
	"fmt"
	"math"
	"sync/atomic"
	"time"

	tea "charm.land/bubbletea/v2"
)

// slow is an answer that takes longer than a key: computed beside the screen, with its progress, given up
// when another one is wanted. The last answer stays until the new one is there.
type slow[K comparable, V any] struct {
	job  K // whose answer is wanted
	of   K // whose answer have is
	have V
	ok   bool // there is one
	err  error
	done *atomic.Uint64
	stop context.CancelFunc                // nil where nothing is being computed
	gave bool                              // somebody gave the wanted one up
	take func(*root, slowFound[V]) tea.Cmd // what its screen does with a finished answer; nil keeps it
	// which computation is the wanted one: a job may be asked for, left, and asked for again
	run int
}

// slowFound is a finished answer, or why there is none.
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

// want makes the answer of a job come: nil where it is there already, on its way or given up.
func (p *slow[K, V]) want(ctx context.Context, job K, solve func(context.Context, K, func(float64)) (V,
	error)) tea.Cmd {
	if p.ready(job) {
		p.cancel()
		p.job, p.err, p.gave = job, nil, false
		return nil
	}
	if p.job == job && (p.stop != nil || p.gave || p.err != nil) {
		return nil
	}
	p.cancel()
	ctx, stop := context.WithCancel(ctx)
	done := new(atomic.Uint64)
	p.job, p.stop, p.done, p.err, p.gave = job, stop, done, nil, false
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

// heading says over a screen that its answer is still computed, or that the one it shows is of another job.
func (p *slow[K, V]) heading(th *theme, what, doing string, w int) (b block) {
	switch {
	case p.stop != nil:
		b.say(th.quiet, 0, fmt.Sprintf("%s: %s, %.0f %% – esc gives up", what, doing, 100*p.share()), w)
	case p.ok && p.old():
		b.say(th.watch, 0, "▲ "+what+" of an earlier job", w)
	}
	return b
}

// cancel gives up what is being computed.
func (p *slow[K, V]) cancel() {
	if p.stop != nil {
		p.stop()
		p.stop, p.gave = nil, true
	}
}

// found takes a finished answer, unless another one is wanted by now.
func (p *slow[K, V]) found(f slowFound[V]) {
	if p.stop == nil || f.run != p.run {
		return
	}
	p.stop()
	p.stop = nil
	if f.err != nil {
		p.err = f.err
		return
	}
	p.have, p.of, p.ok, p.err = f.v, p.job, true, nil
}

// ready reports whether the answer of a job is there.
func (p *slow[K, V]) ready(job K) bool { return p.ok && p.of == job }

// old reports whether the answer shown is another job's.
func (p *slow[K, V]) old() bool { return p.of != p.job }

// share is how much is done, from 0 to 1.
func (p *slow[K, V]) share() float64 { return math.Float64frombits(p.done.Load()) }
