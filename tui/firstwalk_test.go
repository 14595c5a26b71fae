package tui

import (
	"fmt"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/exp/golden"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

var walkSizes = [][2]int{{40, 14}, {60, 20}, {80, 24}, {120, 40}}

// openWalk is the very first start of the program, some steps into the walk.
func openWalk(t testing.TB, size [2]int, steps int) *terminal {
	s := openAt(t, size[0], size[1], Options{Walk: true, Book: &drawer{}})
	if cmd := s.walk().to(s.root(), steps); cmd != nil {
		msg := cmd()
		if both, ok := msg.(tea.BatchMsg); ok { // the work is first, the progress clock second
			msg = both[0]()
		}
		s.send(msg)
	}
	s.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
	return s
}

// Every step of the walk at every size.
func TestGoldenWalk(t *testing.T) {
	if testing.Short() {
		t.Skip("compared without -short: nothing here runs side by side")
	}
	for i := range walkSteps {
		for _, size := range [][2]int{{40, 14}, {80, 24}} {
			t.Run(fmt.Sprintf("walk-%02d/%s", i+1, sizeName(size)), func(t *testing.T) {
				s := openWalk(t, size, i)
				s.fits(size[0], size[1])
				golden.RequireEqual(t, s.text()+"\n")
			})
		}
	}
}

// At every step and size the text is shown in full above its keys, with or without colours, and the line that it is
// about is marked.
func TestWalkShowsItsWholeText(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("compared without -short: nothing here runs side by side")
	}
	for _, size := range walkSizes {
		for i, step := range walkSteps {
			s := openWalk(t, size, i)
			flat := strings.Join(strings.Fields(s.text()), " ")
			if !strings.Contains(flat, step.says) {
				t.Errorf("%v, step %d: the text is cut:\n%s", size, i+1, s.text())
			}
			if size[0] >= 60 && step.at != "" && !strings.Contains(s.text(), " ◂") {
				t.Errorf("%v, step %d: nothing is marked:\n%s", size, i+1, s.text())
			}
			if size[0] == 40 && len(wrap(step.says, 40)) > 4 {
				t.Errorf("step %d takes %d lines of a phone", i+1, len(wrap(step.says, 40)))
			}
		}
		bare := openAt(t, size[0], size[1], Options{Walk: true, Profile: colorprofile.ASCII, Book: &drawer{}})
		if got, want := bare.text(), openWalk(t, size, 0).text(); got != want {
			t.Errorf("%v: without colours it shows\n%s\nnot\n%s", size, got, want)
		}
	}
}

// The walk can be left at any step. Its example never becomes the user's job, and it returns only when asked for.
func TestWalkIsLeft(t *testing.T) {
	fresh := openAt(t, 80, 24, Options{Book: &drawer{}}).text()
	for i := range walkSteps {
		for k, out := range []string{"esc", "/", "q"} {
			if !deep.Run() && (i+k+int(deep.Seed()))%3 != 0 {
				continue // each key at other sizes
			}
			s := openWalk(t, [2]int{80, 24}, i)
			if s.press(out) {
				t.Fatalf("%s ends the program", out)
			}
			if s.text() != fresh || s.walk() != nil || !s.root().example {
				t.Errorf("%s at step %d leads to\n%s", out, i+1, s.text())
			}
		}
	}
	s := openWalk(t, [2]int{80, 24}, 3)
	if !s.press("ctrl+c") {
		t.Error("ctrl+c does not end the program")
	}
}

// Keys that the walk does not use do nothing in it. It can go back, and its end leads to the first screen.
func TestWalkKeys(t *testing.T) {
	deep.Turn(t)
	s := openWalk(t, [2]int{80, 24}, 0)
	s.has("1 of 16")
	first := s.text()
	s.press("a", "x", "tab", "f1", "f2", "f3", "left", "p", "9")
	s.send(tea.PasteMsg{Content: "tank"})
	if s.text() != first {
		t.Errorf("a key that is none changes the walk:\n%s", s.text())
	}
	for _, on := range []string{"enter", "space", "right", "6", "+", "down", "2"} {
		at := s.walk().at
		s.press(on)
		if s.walk().at != at+1 {
			t.Errorf("%s goes to step %d from %d", on, s.walk().at, at)
		}
	}
	for range walkSteps {
		s.press("4")
	}
	if s.text() != first {
		t.Errorf("back at the beginning it shows\n%s", s.text())
	}
	for range walkSteps {
		s.press("enter")
	}
	s.has("Which metal?", "example")
	if s.walk() != nil {
		t.Error("it has no end")
	}
}

// At the end of the walk a key leads to practice. The walk can be started again from the pages, without touching the
// job.
func TestWalkFromThePages(t *testing.T) {
	s := openWalk(t, [2]int{80, 24}, len(walkSteps)-1)
	s.press("1")
	s.has("[practice]", "enter opens the job")
	s.press("left")
	s.has("[walk]", "enter begins")
	s = openBook(t, &drawer{}, pageWalk, [2]int{80, 24})
	job := s.root().job
	s.press("enter")
	s.has("1 of 16", "example")
	for range 5 {
		s.press("enter")
	}
	s.has("yours")
	s.press("esc")
	s.has("[walk]")
	if s.root().job != job {
		t.Errorf("the job was %+v and is %+v", job, s.root().job)
	}
}

// An answer for a step that was left is dropped, and its computation is cancelled.
func TestWalkDropsOldAnswers(t *testing.T) {
	s := openAt(t, 80, 24, Options{Walk: true})
	s.press("enter", "enter", "enter", "enter", "enter", "enter", "enter")
	m := s.root()
	cmd := s.walk().to(m, 8) // the map, still being computed
	left := s.walk().screens
	s.press("enter")
	if left.Context.Err() == nil {
		t.Error("the map that was left is computed on")
	}
	before := s.text()
	for _, c := range cmd().(tea.BatchMsg)[:1] {
		if msg, ok := c().(walked); !ok || msg.of != left {
			t.Fatalf("its answer is %#v", msg)
		} else {
			s.send(msg)
		}
	}
	if s.text() != before {
		t.Errorf("it changed\n%s\ninto\n%s", before, s.text())
	}
}

// The walk's text about a range matches the row that it is about: only for a suggested setting does the range say how
// far the setting may go.
func TestWalkSaysWhatARangeIs(t *testing.T) {
	card, err := calc.Solve(ExampleJob())
	if err != nil {
		t.Fatal(err)
	}
	told := 0
	for i, step := range walkSteps {
		f, ok := card.Figure(strings.ReplaceAll(step.at, " ", "_"))
		if !ok || !strings.Contains(step.says, "range") {
			continue
		}
		told++
		if doubt := strings.Contains(step.says, "This range is the doubt"); doubt == f.Suggested() {
			t.Errorf("step %d points at %s, whose range is suggested: %v, and says %q", i+1, step.at, f.Suggested(),
				step.says)
		}
	}
	if told == 0 {
		t.Error("no step tells of a range")
	}
}
