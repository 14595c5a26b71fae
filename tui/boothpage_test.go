package tui

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tables"
	"brazebooth/tui/canvas"
)

var boothSizes = [][2]int{{80, 24}, {60, 20}, {120, 40}, {200, 60}, {40, 14}, {32, 10}}

// The view has the card's own five figures, each with its unit, for every job, system of units and size.
func TestBoothFigures(t *testing.T) {
	for _, size := range boothSizes {
		for _, job := range []calc.Job{{Metal: "galvanized", Gauge: 18}, gapped, {Metal: "brass"}} {
			for _, sys := range systems() {
				s := openAt(t, size[0], size[1], Options{Opening: job, Units: sys})
				s.press("b")
				s.fits(size[0], size[1])
				m := s.root()
				list, rows := m.boothDials(0), m.boothRows()
				if len(list) != 5 {
					t.Fatalf("%d figures", len(list))
				}
				for i, d := range list {
					if d.Number != rows[i].fig.Value.Number {
						t.Errorf("%s: %s, the card has %s", rows[i].name, d.Number, rows[i].fig.Value.Number)
					}
					s.has(d.Unit)
				}
			}
		}
	}
}

// From 60 columns and 20 lines up every figure has big digits, at a place of its own that a change does not move.
func TestBoothDigitsDoNotMove(t *testing.T) {
	for _, size := range boothSizes[:4] {
		s := openAt(t, size[0], size[1], Options{Opening: calc.Job{Metal: "galvanized", Gauge: 18}})
		s.press("b")
		units := func() (at []int) {
			for y, l := range strings.Split(s.text(), "\n") {
				for _, unit := range []string{"m/min", " V ", "mm/s", "L/min", " mm "} {
					if strings.Contains(l+" ", unit) {
						at = append(at, y)
					}
				}
			}
			return at
		}
		before := units()
		s.press("up", "right", "down", "right", "up", "up")
		if after := units(); fmt.Sprint(after) != fmt.Sprint(before) {
			t.Errorf("%v: the units stood on lines %v and stand on %v", size, before, after)
		}
		if strings.Contains(s.text(), " "+s.root().boothDials(0)[0].Number+" ") {
			t.Errorf("%v: the feed is not in big digits:\n%s", size, s.text())
		}
	}
}

// The arrows pick and change, up to the first figure, and a change can be undone.
func TestBoothChanges(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "galvanized", Gauge: 18}})
	s.press("b")
	m := s.root()
	was := m.session.job
	for i, name := range []string{"wire_feed", "volts", "travel", "gas_flow", "stickout"} {
		f, _ := m.session.card.Figure(name)
		s.press("up")
		g, _ := m.session.card.Figure(name)
		if g.Value <= f.Value {
			t.Errorf("%d, %s: %v after %v", i, name, g.Value, f.Value)
		}
		s.press("ctrl+z")
		if m.session.job != was {
			t.Errorf("%s: it is not taken back", name)
		}
		s.press("right")
	}
	if m.booth.at != 0 {
		t.Error("behind the last figure is not the first")
	}
}

// A key without a function in the view says which keys have one, and changes nothing.
func TestBoothSaysItsKeys(t *testing.T) {
	for _, k := range []string{"a", "z", "5", "m", "home"} {
		s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "galvanized", Gauge: 18}})
		s.press("b")
		was := s.root().session.job
		s.press(k)
		if k != "5" { // 5 opens the view, and so also leaves it
			s.has("does nothing here", "esc goes back")
		}
		if s.root().session.job != was {
			t.Errorf("%s changes the job", k)
		}
	}
}

// boothJobs together have every verdict that a card may have, and every hazard.
func boothJobs() []calc.Job {
	jobs := []calc.Job{{Metal: "galvanized", Gauge: 18}, {Metal: "brass"}, gapped, {Metal: "galvanized", Gauge: 18,
		Hazard: "tank,sealed"},
		{Metal: "galvanized", Metal2: "stainless-304", Gauge: 18, Filler: "cumn13al8"}, {Metal: "dp1000", Gauge: 11},
		{Metal: "grey-iron", Thickness: calc.Some(8)},
		{Metal: "boron-steel", Gauge: 16, Hazard: "crash"}, {Metal: "mild-steel", Gauge: 18, Feed: calc.Some(3),
			Travel: calc.Some(10)},
		{Metal: "copper", Gauge: 11, Mode: "pulsed"}, {Metal: "aluminium-bronze", Gauge: 24, Feed: calc.Some(3)},
		{Metal: "mild-steel", Gauge: 24, Feed: calc.Some(12)},
		{Metal: "stainless-316", Gauge: 24, Mode: "pulsed"}, {Metal: "silicon-bronze", Gauge: 18, Joint: "plug"},
		{Metal: "galvanized", Gauge: 18, Travel: calc.Some(20)}}
	for _, h := range tables.Hazards {
		jobs = append(jobs, calc.Job{Metal: "galvanized", Gauge: 18, Hazard: h.ID})
	}
	return jobs
}

// From 60 columns and 20 lines up every stop is shown in full in the view; below that, its beginning.
func TestBoothSaysEveryStop(t *testing.T) {
	deep.Turn(t)
	for _, job := range boothJobs() {
		for _, size := range deep.Of(t, boothSizes, 3) {
			s := openAt(t, size[0], size[1], Options{Opening: job})
			s.press("b")
			s.fits(size[0], size[1])
			stops := calc.Stops(s.root().session.card.Warnings)
			if len(stops) == 0 {
				continue
			}
			first, _, _ := strings.Cut(stops[0].Text, ":")
			if words := flat(s.text()); stateOf(&s.root().session.card) != canvas.Stop || !strings.Contains(words,
				strings.Fields(first)[0]) {
				t.Errorf("%v, %s %s: the stop is not said:\n%s", size, job.Metal, job.Hazard, s.text())
			}
		}
	}
}

// c shows every caution in full, over the view.
func TestCautionsFromTheBooth(t *testing.T) {
	s := openAt(t, 80, 60, Options{Opening: calc.Job{Metal: "galvanized", Gauge: 18}})
	s.press("b", "c")
	text := flat(s.text())
	for _, x := range s.root().session.card.Warnings {
		if !strings.Contains(text, x.Text) {
			t.Errorf("no %q:\n%s", x.Text, s.text())
		}
	}
	s.press("esc")
	if m := s.root(); m.front() != screen(&m.booth) {
		t.Error("the view is not under the cautions")
	}
}

// With a decimal comma the big digits have one too.
func TestBoothDecimalComma(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "galvanized", Gauge: 18}, Comma: true,
		Units: quantity.Metric})
	for _, d := range s.root().boothDials(0) {
		if strings.Contains(d.Number, ".") {
			t.Errorf("%s in digits: %s", d.Name, d.Number)
		}
	}
}

// The place beside the figures is lit while the arc burns, and stops when the view is left.
func TestBoothBeat(t *testing.T) {
	for _, size := range boothSizes[:4] {
		s := openAt(t, size[0], size[1], Options{Opening: gapped})
		s.press("b")
		m := s.root()
		if !m.beat.plays {
			t.Fatal("the beat does not play")
		}
		on, off := report.BeatOf(&m.beat.have)
		_, _, slower := m.beat.phase()
		at := time.Unix(0, 0)
		look := func(seconds float64) string {
			m.Update(beatTick{at: at.Add(time.Duration(seconds * slower * float64(time.Second))), run: m.beat.run})
			s.fits(size[0], size[1])
			return s.text()
		}
		look(0)
		first, second := look(on/2), look(on+off/2)
		if !strings.Contains(first, "spot 1") || !strings.Contains(second, "spot 1") || first == second {
			t.Fatalf("on and off are not told apart:\n%s\n%s", first, second)
		}
		if text := look(on*1.5 + off); !strings.Contains(text, "spot 2") {
			t.Fatalf("in the second beat:\n%s", text)
		}
		s.press("esc")
		if _, cmd := m.Update(beatTick{at: at.Add(time.Minute), run: m.beat.run}); cmd != nil || m.beat.plays {
			t.Error("it plays on")
		}
	}
}

// Ticks of an earlier playback have no effect: together with the present ones they would double its speed.
func TestOneClockOnly(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: gapped})
	s.press("right", "b")
	m := s.root()
	old := m.beat.run
	s.press("esc", "b")
	if _, cmd := m.Update(beatTick{time.Unix(0, 0), old}); cmd != nil {
		t.Error("the clock of the first playing runs on")
	}
	if _, cmd := m.Update(beatTick{time.Unix(0, 0), m.beat.run}); cmd == nil {
		t.Error("the clock of the present playing stands")
	}
}

// While the heat is still being computed the view says so, and the beat starts when that is done.
func TestBoothWaitsForTheBeat(t *testing.T) {
	go1 := make(chan struct{})
	m := New(Options{Opening: gapped, Gap: func(ctx context.Context, job calc.Job, progress func(float64)) (calc.Timed,
		error) {
		<-go1
		return calc.SolveTimed(ctx, job, progress)
	}})
	m.Update(tea.WindowSizeMsg{Width: 60, Height: 20})
	_, cmd := m.Update(keyPress("right"))
	found := make(chan tea.Msg)
	work := cmd().(tea.BatchMsg)
	go func() { found <- work[0]() }()
	m.Update(keyPress("b"))
	s := &terminal{t, m}
	s.has("come when")
	close(go1)
	if _, cmd := m.Update(<-found); cmd == nil || !s.root().beat.plays {
		t.Error("the beat does not begin")
	}
}

// If a job has no card of its own, the view says so.
func TestBoothWithoutACard(t *testing.T) {
	s := openAt(t, 60, 20, Options{Opening: calc.Job{Metal: "galvanized", Gauge: 18}})
	m := s.root()
	m.session.Solve = func(calc.Job) (calc.Card, error) { return calc.Card{}, fmt.Errorf("no card") }
	m.session.choose(calc.Job{Metal: "copper"})
	s.press("b")
	s.has("no card")
}
