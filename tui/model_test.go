package tui

import (
	"reflect"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

var modelKeys = append([]string{"p", "p", "t", "k", "x", "f3", "enter", "up", "down", "space", "5", "1 8",
	"b o o t h", "5 . 5"}, anyKeys...)

// modelWays are keys that lead somewhere: with random keys alone the test rarely leaves a list that it types into.
var modelWays = []string{"tab tab tab tab", "tab tab tab tab m", "tab tab tab tab t", "tab tab tab tab c",
	"tab tab tab tab p", "esc tab tab tab tab p right right right",
	"tab tab tab tab p right right right right right right right right", "right right right right",
	"tab tab tab tab . 0 down down enter", ". 0 end up", "ctrl+z",
	"right right right right right"}

// One long walk with random keys at random sizes, through every page, with a book: never a panic, never a frame larger
// than the terminal, always a way back and a way out, and always the card that the command prints for the same job.
func TestModelOfTheScreens(t *testing.T) {
	deep.Turn(t)
	steps, r := deep.Many(150, 500), deep.Rand(t)
	seen := map[string]bool{}
	var s *terminal
	w, h := 80, 24
	for step := range steps {
		if step%150 == 0 {
			s = anew(t, step)
			w, h = 80, 24
		}
		switch n := r.IntN(40); {
		case n == 0:
			w, h = 1+r.IntN(140), 1+r.IntN(50)
			s.send(tea.WindowSizeMsg{Width: w, Height: h})
		case n == 1:
			s.send(tea.PasteMsg{Content: string([]rune{rune(r.IntN(0x3000)), '\x1b', '[', '2', 'J', rune('a' +
				r.IntN(26))})})
		case n < 5:
			s.press(strings.Fields(modelWays[r.IntN(len(modelWays))])...)
		default:
			keys, job := modelKeys[r.IntN(len(modelKeys))], s.root().job
			if s.press(strings.Fields(keys)...); keys == "esc" && s.root().job != job {
				t.Errorf("esc changes the job at %s", place(s.root()))
			}
		}
		s.fits(w, h)
		currentLists(t, s.root())
		seen[place(s.root())] = true
		if step%50 == 49 {
			sameCard(t, s.root())
			randomStep(t, s, r)
			leadsBack(t, s)
		}
		if t.Failed() {
			t.Fatalf("after %d steps of seed %d, at %s", step, deep.Seed(), place(s.root()))
		}
	}
	for _, p := range []string{"path", "card", "page book", "page records", "page measure", "page practice",
		"page strength", "map", "words", "text", "walk"} {
		if !seen[p] && steps >= 3000 {
			t.Errorf("the walk never came to %s", p)
		}
	}
}

// currentLists checks that a list of choices shows the present card's values.
func currentLists(t *testing.T, m *root) {
	t.Helper()
	switch p := m.front().(type) {
	case *restPage:
		fresh := &restPage{}
		fresh.refresh(m)
		for i := range fresh.rows {
			if i >= len(p.rows) || p.rows[i].label != fresh.rows[i].label || p.rows[i].value != fresh.rows[i].value {
				t.Errorf("the list of the rest is old: %+v", fresh.rows[i])
			}
		}
	case *picker:
		if now := p.ask.Now(&m.session.card); p.before != now {
			t.Errorf("%s: ✓ is at %s, the card has %s", p.ask.Name, p.before, now)
		}
	}
}

// anew is a new session with a book of a few cards.
func anew(t *testing.T, n int) *terminal {
	t.Helper()
	gap := unfollowed
	if n%3 == 0 {
		gap = nil // now and then the heat is really computed
	}
	d := &drawer{cards: []Entry{{"0000000000000001", "card", "tank lid", "2026-03-01", "galvanized"}},
		jobs: map[string]calc.Job{"0000000000000001": {Metal: "galvanized", Gauge: 20}}}
	return openAt(t, 80, 24, Options{Window: coarse, Gap: gap, Book: d, Walk: n%450 == 150})
}

// place names where a session is, in a word.
func place(m *root) string {
	switch s := m.front().(type) {
	case *walk:
		return "walk"
	case *textPage:
		return "text"
	case *wordsPage:
		return "words"
	case *whyPage:
		return "why"
	case *marksPage:
		return "marks"
	case *recordForm:
		return "form"
	case *inputsPage:
		return "inputs"
	case *partPage:
		return "page " + s.name()
	case *mapPage:
		return "map"
	case *beatPage:
		return "beat"
	case *boothPage:
		return "booth"
	case *picker:
		return "path"
	}
	return "card"
}

// sameCard compares the card on the screen with the card that the command prints for the job.
func sameCard(t *testing.T, m *root) {
	t.Helper()
	if m.fault != nil || m.followed {
		return // the last job's card, marked as such; or its times come from Gap
	}
	want, err := calc.Solve(m.job)
	if err != nil {
		t.Errorf("the screen has a card of a job that has none: %v", err)
		return
	}
	if !reflect.DeepEqual(m.session.card.Figures, want.Figures) || !reflect.DeepEqual(m.session.card.Warnings,
		want.Warnings) {
		t.Error("the screen shows another card than the command")
	}
}

// leadsBack presses esc until the first step is reached, and checks that ctrl+c would have ended the program.
func leadsBack(t *testing.T, s *terminal) {
	t.Helper()
	for range 20 {
		s.press("esc")
	}
	if m := s.root(); m.step() != 0 || place(m) != "path" {
		t.Errorf("esc does not lead back: %s", place(m))
	}
	if !s.press("ctrl+c") {
		t.Error("ctrl+c does not end it")
	}
}
