package tui

import (
	"context"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tui/canvas"
)

var gapped = calc.Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: calc.Some(2), Mode: "timed"}

// A timed card takes its times from the computed heat, not from the estimate.
func TestTimedCardFollowsTheHeat(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: gapped})
	s.press("right") // the first key starts computing the heat
	want, err := calc.SolveTimed(context.Background(), gapped, nil)
	if err != nil {
		t.Fatal(err)
	}
	got, _ := s.root().session.card.Figure("arc_on")
	if f, _ := want.Card.Figure("arc_on"); got.Value != f.Value || got.Low != f.Low {
		t.Errorf("the card shows on %g (%g), the heat gives %g", got.Value, got.Low, f.Value)
	}
	s.has("arc on")
	if got := stateOf(&s.root().session.card); got != canvas.Good {
		t.Errorf("the verdict is %s", got.Word())
	}
}

func TestBeatPage(t *testing.T) {
	for _, size := range boothSizes {
		s := openAt(t, size[0], size[1], Options{Opening: gapped})
		s.press("t")
		s.fits(size[0], size[1])
		s.has("arc on", "arc off", "spot step", "factor of two")
		if m := s.root(); len(m.beat.dialled(m)) != len(beatDials) {
			t.Error("a dial is missing")
		}
		s.press("u")
		s.fits(size[0], size[1])
		s.press("esc")
		s.onCard()
	}
}

// While the heat is computed, the page shows an estimate in grey at the place of the times.
func TestBeatPageMeanwhile(t *testing.T) {
	place := func(s *terminal) [2]int {
		for y, l := range strings.Split(s.text(), "\n") {
			if x := strings.Index(l, "arc off"); x >= 0 && strings.Contains(l, "arc on") {
				return [2]int{x, y}
			}
		}
		t.Fatal("no times:\n" + s.text())
		return [2]int{}
	}
	s := openAt(t, 80, 24, Options{Opening: gapped})
	m, work := s.m.Update(keyPress("t"))
	s.m = m
	s.has("following the heat, 0 %")
	for _, d := range s.root().beat.dialled(s.root()) {
		if !d.Bar.Off {
			t.Errorf("%s looks final", d.Name)
		}
		if d.Number != toCome || d.Span != "" {
			t.Errorf("%s shows %s, %s before its heat was followed", d.Name, d.Number, d.Span)
		}
	}
	s.m, _ = s.m.Update(keyPress("up"))
	s.has(noTimesYet)
	was := place(s)
	s.send(work().(tea.BatchMsg)[0]())
	s.has("space plays it")
	s.hasNot(noTimesYet)
	if is := place(s); is != was {
		t.Errorf("the times moved from %v to %v", was, is)
	}
}

// Each time can be picked and changed with the arrows, and r restores the suggestion.
func TestBeatPageTurns(t *testing.T) {
	deep.Turn(t)
	s := openAt(t, 80, 24, Options{Opening: gapped})
	s.press("t")
	turned := deep.Of(t, []int{0, 1, 2}, 1) // the heat is computed again for each
	for i, set := range []func() bool{func() bool { return s.root().job.ArcOn.Set },
		func() bool { return s.root().job.ArcOff.Set },
		func() bool { return s.root().job.SpotStep.Set }} {
		if !slices.Contains(turned, i) {
			s.press("right")
			continue
		}
		was, _ := s.root().beat.figure(beatDials[i])
		s.press("up")
		if is, _ := s.root().beat.figure(beatDials[i]); !(is.Value > was.Value) || !set() {
			t.Errorf("%s %g, then %g", beatDials[i], was.Value, is.Value)
		}
		s.press("r")
		if set() {
			t.Error("the suggestion is not back")
		}
		s.press("right")
	}
}

// A changed time keeps the feed for which the times on the screen were found, on the page and on the card, also where
// the job was not timed before; undo leaves the feed open again.
func TestATimeKeepsTheFeed(t *testing.T) {
	deep.Turn(t)
	dip := gapped
	dip.Mode = "dip"
	for _, x := range []struct {
		job  calc.Job
		keys string
	}{{gapped, "t up"}, {dip, "t up"}, {gapped, "right right right up"}, {gapped, "right right right 0 . 2 1 enter"}} {
		s := openAt(t, 80, 24, Options{Opening: x.job})
		s.press("t")
		was := s.root().beat.have.Card.Used.Feed
		s.press("esc")
		s.press(strings.Fields(x.keys)...)
		if job := s.root().job; !job.ArcOn.Set || job.Feed != was {
			t.Errorf("%s: arc on %+v, feed %+v, was %+v", x.keys, job.ArcOn, job.Feed, was)
		}
		s.press("ctrl+z")
		if s.root().job != x.job {
			t.Errorf("%s: undo leaves %+v", x.keys, s.root().job)
		}
	}
}

// A kept card is opened as it was kept, also where only a time is another one than that on the screen.
func TestAKeptTimeIsOpenedAsKept(t *testing.T) {
	deep.Turn(t)
	kept := gapped
	kept.ArcOn = calc.Some(0.25)
	d := &drawer{cards: []Entry{{"1", "card", "gap lid", "2026-03-01", "mild-steel"}},
		jobs: map[string]calc.Job{"1": kept}}
	s := openAt(t, 80, 24, Options{Opening: gapped, Book: d})
	s.press("t", "esc", "k", "enter", "enter") // the book asks once: the card on the screen is not kept
	s.has("as it was kept")
	if job := s.root().job; job != kept {
		t.Errorf("%+v", job)
	}
}

// The chart of the heat has the last beats, with the times that the arc burns.
func TestHeatChart(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: gapped})
	s.press("t")
	ch, sp := s.root().beat.chart, &s.root().beat.have
	on, off := report.BeatOf(&s.root().beat.have)
	if ch == nil || len(ch.On) < 2 || len(ch.Limits) != 3 || len(ch.Traces) != 2 {
		t.Fatalf("%+v", ch)
	}
	burnt := 0.0
	for _, x := range ch.On {
		burnt += x.To - x.From
	}
	last := ch.Traces[0].X[len(ch.Traces[0].X)-1]
	if share := burnt / last; math.Abs(share-on/(on+off)) > 0.1 {
		t.Errorf("the arc burns %.2f of the chart, %.2f of a beat", share, on/(on+off))
	}
	if heatChart(&calc.Timed{}, quantity.Metric, false) != nil || sp.BaseSolidus != ch.Limits[0].At {
		t.Error("a chart of nothing, or another limit")
	}
	s.press("u") // the axis follows the units of the page
	inch := s.root().beat.chart
	if at := 9*sp.BaseSolidus/5 + 32; inch.Y != "°F" || math.Abs(inch.Limits[0].At-at) > 1e-9 ||
		math.Abs(inch.Traces[0].Y[0]-(9*ch.Traces[0].Y[0]/5+32)) > 1e-9 {
		t.Errorf("%q, %+v", inch.Y, inch.Limits)
	}
}

// A job without a rhythm says why, and what was tried.
func TestBeatPageReasons(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: calc.Some(5),
		Mode: "timed"}})
	s.press("t")
	s.has("wider than the arc", "tried:", "untried")
	s.press("space")
	if s.root().beat.plays {
		t.Error("there is nothing to play")
	}
}

// The playback follows the given clock, never changes faster than three times a second, and can be stopped.
func TestBeatPlays(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: gapped})
	s.press("t")
	m := s.root()
	m.Update(keyPress("space"))
	at := time.Unix(0, 0)
	on, _ := m.beat.have.Card.Figure("arc_on")
	off, _ := m.beat.have.Card.Figure("arc_off")
	words := ""
	for ms := 0; ms < 3000; ms += 50 {
		m.Update(beatTick{at.Add(time.Duration(ms) * time.Millisecond), m.beat.run})
		burns := math.Mod(float64(ms)/1000, on.Value+off.Value) < on.Value*0.95
		shown := strings.Count(s.text(), " ON") > 1
		if burns && !shown {
			t.Fatalf("at %d ms the arc burns and the screen says off", ms)
		}
		if shown {
			words += "x"
		} else {
			words += " "
		}
	}
	if n := len(strings.Fields(words)); float64(n) > 3*3+1 || n < 2 {
		t.Errorf("%d times on in 3 s", n)
	}
	m.Update(keyPress("space"))
	if _, cmd := m.Update(beatTick{at.Add(4 * time.Second), m.beat.run}); cmd != nil {
		t.Error("it plays on")
	}
}

// A beat that would flash faster than three times a second is played slower.
func TestBeatDoesNotFlash(t *testing.T) {
	card := calc.Card{Figures: []calc.Figure{{Name: "arc_on", Value: 0.1}, {Name: "arc_off", Value: 0.05}}}
	p := beatPage{slow: slow[calc.Job, calc.Timed]{have: calc.Timed{Card: card}}}
	if _, _, slower := p.phase(); math.Abs(0.15*slower-1/fastestFlash) > 1e-9 {
		t.Errorf("a beat of .15 s lasts %g s on the screen", 0.15*slower)
	}
}

// Esc cancels the computation and leaves the estimate; nothing starts again by itself.
func TestBeatGivenUp(t *testing.T) {
	started := 0
	o := Options{Opening: gapped, Gap: func(ctx context.Context, _ calc.Job, _ func(float64)) (calc.Timed, error) {
		started++
		<-ctx.Done()
		return calc.Timed{}, ctx.Err()
	}}
	m := New(o)
	m.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	_, cmd := m.Update(keyPress("t"))
	work := cmd().(tea.BatchMsg)
	done := make(chan tea.Msg)
	go func() { done <- work[0]() }()
	m.Update(keyPress("esc"))
	msg := (<-done).(slowFound[calc.Timed])
	if !errors.Is(msg.err, context.Canceled) {
		t.Fatalf("%v", msg.err)
	}
	m.Update(msg)
	if _, cmd := m.Update(keyPress("right")); cmd != nil || started != 1 {
		t.Errorf("started %d times, command %v", started, cmd != nil)
	}
}

// A job that was left and opened again is not answered by its first, cancelled computation.
func TestSlowAnswersTheLastQuestion(t *testing.T) {
	wait := func(ctx context.Context, _ calc.Job, _ func(float64)) (int, error) { return 7, ctx.Err() }
	var p slow[calc.Job, int]
	a, b := calc.Job{Gauge: 16}, calc.Job{Gauge: 18}
	first := p.want(t.Context(), a, wait)
	p.want(t.Context(), b, wait)
	again := p.want(t.Context(), a, wait)
	p.found(first().(tea.BatchMsg)[0]().(slowFound[int]))
	if p.err != nil || p.ok || p.stop == nil {
		t.Fatalf("the cancelled one was taken: %v, %v", p.err, p.ok)
	}
	p.found(again().(tea.BatchMsg)[0]().(slowFound[int]))
	if !p.ready(a) || p.have != 7 {
		t.Fatalf("%+v", p)
	}
	running := p.want(t.Context(), b, wait)
	if p.want(t.Context(), a, wait) != nil || p.stop != nil {
		t.Error("going back to what is there must stop what is not")
	}
	p.found(running().(tea.BatchMsg)[0]().(slowFound[int]))
	if !p.ready(a) {
		t.Error("another job's answer took its place")
	}
}
