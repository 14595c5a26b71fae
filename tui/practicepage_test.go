package tui

import (
	"errors"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/exp/golden"

	"brazebooth/calc"
	"brazebooth/calc/practice"
)

// openPractised opens the page of practice with a book.
func openPractised(t *testing.T, d *drawer, w, h int) *terminal {
	t.Helper()
	return openBook(t, d, pagePractice, [2]int{w, h})
}

// The screens of practice: the levels, a job with a bad bead, a changed setting, the end, and why; and a timed one.
func TestGoldenPractice(t *testing.T) {
	if testing.Short() {
		t.Skip("compared without -short: nothing here runs side by side")
	}
	for _, x := range []struct{ name, keys string }{
		{"practice-levels", "2"},
		{"practice-job", "2 + + + + + + enter"},
		{"practice-turned", "2 + + + + + + enter right right down down"},
		{"practice-good", "2 + + + + + + enter right right down down down down down down down down down enter"},
		{"practice-why", "2 + + + + + + enter right right down down down down down down down down down enter *"},
		{"practice-end", "2 + + + + + + enter right right + + enter s s"},
		{"practice-typing", "2 + + + + + + enter . 1 4 . 5"},
		{"practice-timed", "5 + enter right right up enter"},
	} {
		var s *terminal // for all sizes, because a job takes long to compute
		for _, size := range [][2]int{{32, 10}, {40, 24}, {60, 20}, {80, 24}, {120, 40},
			{200, 60}} {
			t.Run(x.name+"/"+sizeName(size), func(t *testing.T) {
				if s == nil {
					s = openPractised(t, &drawer{}, size[0], size[1])
					s.press(strings.Fields(x.keys)...)
				}
				s.t = t
				s.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
				s.fits(size[0], size[1])
				golden.RequireEqual(t, s.text()+"\n")
			})
		}
	}
}

// A job can be set, laid and corrected with a keypad alone. The hidden values are shown only at its end, and the result
// is saved only by a key.
func TestPracticeOnTheScreens(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {60, 20}, {120, 40}, {40, 14}} {
		d := &drawer{}
		s := openPractised(t, d, size[0], size[1])
		before := s.root().session.card.Used
		s.press("2", "+", "+", "enter")
		s.fits(size[0], size[1])
		s.has("level 2, booth 3", "no licence")
		p := &s.root().drill
		p.now = p.job.Best
		s.press("*")
		s.has("what the booth hides")
		s.press("k")
		s.has("a job is kept")
		s.press("enter")
		s.fits(size[0], size[1])
		if !p.over || p.run == nil || len(p.beads) != 2 || len(d.practised) != 0 {
			t.Fatalf("after the best setting: over %v, %d beads, kept %v", p.over, len(p.beads), d.practised)
		}
		s.press("*")
		s.fits(size[0], size[1])
		if size[1] >= 24 {
			s.has("what this booth hid")
		}
		s.press("k", "k")
		s.has("kept already")
		want := p.job.Went(2, "good", p.run)
		if len(d.practised) != 1 || d.practised[0] != want {
			t.Errorf("kept %+v, want %+v", d.practised, want)
		}
		s.press("enter")
		s.has("[practice]", "booth 4")
		s.press("esc")
		if s.root().isOpen(&s.root().part) || s.root().session.card.Used != before {
			t.Error("practice touched the card, or esc does not lead back to it")
		}
	}
}

// A job that is left is found again as it was. Ending it asks once more, and any other key cancels that.
func TestPracticeCanBeLeftAndEnded(t *testing.T) {
	s := openPractised(t, &drawer{}, 80, 24)
	s.press("1", "enter", "+", "enter", "/")
	s.has("[practice]")
	s.press("enter")
	p := &s.root().drill
	if len(p.beads) != 2 {
		t.Fatalf("%d beads after coming back", len(p.beads))
	}
	s.press("s", "right", "s")
	s.has("once more ends")
	if p.over {
		t.Fatal("it ended without being asked twice")
	}
	s.press("s")
	s.has("took 3 beads to a", "the program's own beads")
	setting := p.now
	s.press("+", "s")
	s.has("this job is over")
	if p.now != setting || len(p.beads) != 2 {
		t.Error("a job that is over goes on")
	}
}

// On the smallest screen the picked row is visible, and the caution stays.
func TestPracticeListOnThePhone(t *testing.T) {
	s := openPractised(t, &drawer{}, 40, 14)
	for i, l := range practice.Levels() {
		s.press(string(rune('1' + i)))
		s.has(" "+string(rune('1'+i))+"  "+l.Name[:12], l.Name[strings.LastIndexByte(l.Name, ' '):], "no licence")
		s.press("pgdown")
		s.has("no licence")
	}
}

// What does not fit on a low screen can be scrolled to, and picking or changing a setting leads back to the dials. When
// a job is over there is nothing to set, and the cursor keys scroll.
func TestPracticeScrolls(t *testing.T) {
	s := openPractised(t, &drawer{}, 32, 10)
	s.press("2", "enter")
	s.has("target", "feed")
	s.press("pgdown")
	s.hasNot("target")
	s.has("meter:")
	s.press("right")
	s.has("target")
	s.press("pgdown", "+")
	s.has("target")
	s.press("s", "s")
	s.press("down", "down")
	s.hasNot("target")
	s.press("up", "up")
	s.has("target")
}

// A value can be typed for the picked setting. The page says how it reads the value; a bad one is refused and stays to
// be corrected; esc cancels.
func TestPracticeIsTyped(t *testing.T) {
	s := openPractised(t, &drawer{}, 80, 24)
	s.press("2", "enter")
	p := &s.root().drill
	was := p.now
	s.press("3", "0", "0")
	s.has("in/min")
	s.press("enter")
	if got := p.now.Feed.V; got < 7.61 || got > 7.63 || p.typing {
		t.Errorf("300 in/min is %g m/min", got)
	}
	s.press(".", "9", "9", "9", "enter")
	s.has("voltage")
	if !p.typing || p.now.Volts != was.Volts {
		t.Error("a bad value is set, or gone")
	}
	s.press("esc")
	if p.typing || s.root().front() != screen(p) {
		t.Error("esc leaves more than the value")
	}
}

// Target and bead are shown beside each other at one scale, with their differences in words.
func TestPracticeComparesWithTheTarget(t *testing.T) {
	s := openPractised(t, &drawer{}, 80, 24)
	s.press("2", "enter")
	p := &s.root().drill
	a, _ := beadJoint(&p.target)
	b, _ := beadJoint(p.last())
	left, right := twoBeads(&s.root().th, &p.target, p.last(), 38, 6)
	if len(left) != len(right) || len(left) < 3 {
		t.Fatalf("%d and %d lines", len(left), len(right))
	}
	scale := max(a.Scale(38, 6), b.Scale(38, 6))
	for _, l := range append(left, right...) {
		if l.Width > 38 {
			t.Errorf("%d columns", l.Width)
		}
	}
	a.Least, b.Least = scale, scale
	if a.Scale(38, 6) != b.Scale(38, 6) {
		t.Error("two scales")
	}
	own := p.target
	if got := p.differs(&own, "metric"); len(got) != 1 || !strings.Contains(got[0], "as the target") {
		t.Errorf("the target differs from itself: %q", got)
	}
	own.Section.Wet[0] += 1.24
	if got := p.differs(&own, "metric"); got[0] != "1.2 mm wider" {
		t.Errorf("a wider bead: %q", got)
	}
	own.Section.Wet[0] -= 2.48
	if got := p.differs(&own, "inch"); !strings.HasSuffix(got[0], " in narrower") {
		t.Errorf("a narrower bead: %q", got)
	}
}

// A setting that is impossible by hand is refused, and 0 restores the setting of the last bead.
func TestPracticeRefusesOnTheScreens(t *testing.T) {
	s := openPractised(t, &drawer{}, 80, 24)
	s.press("1", "enter")
	p := &s.root().drill
	was := p.now
	p.now.Travel = calc.Some(40)
	s.press("enter")
	s.has("travel: 40 mm/s is out of range", "what a hand")
	s.press("r")
	if p.now != was || len(p.beads) != 1 {
		t.Errorf("%+v, %d beads", p.now, len(p.beads))
	}
	s.press("+", "enter")
	if len(p.beads) != 2 {
		t.Errorf("%d beads after the fault", len(p.beads))
	}
}

// If the book fails, the page says so, and saving can be tried again. Without a book, saving is not offered.
func TestPracticeThatIsNotKept(t *testing.T) {
	d := &drawer{}
	s := openPractised(t, d, 80, 24)
	s.press("1", "enter", "s", "s")
	d.fail = errors.New("disk full")
	s.press("k")
	s.has("not kept: disk full")
	d.fail = nil
	s.press("k")
	if len(d.practised) != 1 {
		t.Errorf("kept %v", d.practised)
	}
	alone := openAt(t, 80, 24, Options{})
	alone.press("tab", "tab", "tab", "tab", "p")
	for !strings.Contains(alone.text(), "["+pagePractice+"]") {
		alone.press("right")
	}
	alone.press("enter", "s", "s")
	alone.hasNot("k: keep")
	alone.press("k")
	alone.has("no book here")
}

// An answer that arrives after its page was left changes nothing.
func TestPracticeGivenUp(t *testing.T) {
	s := openPractised(t, &drawer{}, 80, 24)
	s.press("1", "enter")
	p := &s.root().drill
	cmd := p.lay(s.root())
	if cmd == nil {
		t.Fatal("nothing is laid")
	}
	run := p.slow.run
	s.press("esc")
	s.m, _ = s.m.Update(slowFound[practiceAnswer]{run: run, to: p.took})
	if len(p.beads) != 1 {
		t.Errorf("%d beads", len(p.beads))
	}
	s.press("enter", "enter")
	s.has("the same setting", "change something first")
	if len(p.beads) != 1 {
		t.Errorf("the last welder's setting laid again: %d beads", len(p.beads))
	}
	s.press("up", "enter")
	if len(p.beads) != 2 {
		t.Fatalf("laid again: %d beads", len(p.beads))
	}
	if s.press("enter"); !p.over && len(p.beads) != 2 {
		t.Errorf("the same bead counts twice: %d beads", len(p.beads))
	}
}

// Keys that are pressed while a booth is being set up are meant for its job, so they have no effect on the screen
// behind it. Keys that work everywhere still do, and esc cancels.
func TestPracticeWaitsForTheBooth(t *testing.T) {
	s := openPractised(t, &drawer{}, 80, 24)
	p := &s.root().drill
	given := false
	p.stop = func() { given = true }
	for _, k := range []string{"right", "3", "+", "down", "enter", "p"} {
		s.press(k)
		s.has("the booth is being set up")
	}
	if l := &s.root().levels; l.list.at() != 0 || l.seed != 1 || s.root().isOpen(p) {
		t.Errorf("level %d, booth %d, open %v", l.list.at(), l.seed, s.root().isOpen(p))
	}
	s.press("f1")
	s.has("on a practice job")
	s.press("esc")
	if s.press("esc"); !given {
		t.Error("esc does not give it up")
	}
}
