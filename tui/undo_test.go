package tui

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// Ctrl-Z undoes every change that a key makes to the job, one by one, back to the first job.
func TestUndoTakesBackEveryChange(t *testing.T) {
	r := deep.Rand(t)
	keys := []string{"up", "down", "+", "-", "r", "R", "left", "right", "tab", "shift+tab", ". 3", ". 5", ". 9",
		"4 . 5 enter", "enter 6 enter", "enter down enter", "m up m", "u", "esc", "enter"}
	for range deep.Many(1, 60) {
		s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "galvanized", Gauge: 18}, Gap: nil})
		m := s.root()
		var jobs []calc.Job
		for range 25 {
			if before := m.job; true {
				s.press(strings.Fields(keys[r.IntN(len(keys))])...)
				if n := len(m.past); m.job != before && (n == 0 || m.past[n-1].job == m.job) {
					t.Fatalf("a change cannot be taken back: %+v", m.job)
				}
			}
		}
		for _, p := range m.past {
			jobs = append(jobs, p.job)
		}
		for i := len(jobs) - 1; i >= 0; i-- {
			m.act(undo)
			if m.job != jobs[i] {
				t.Fatalf("undone, the job is\n%+v, not\n%+v", m.job, jobs[i])
			}
		}
		if m.act(undo); m.notice == nil || m.job.Gauge != 18 || m.job.Metal != "galvanized" {
			t.Errorf("before the first change lies %+v", m.job)
		}
	}
}

// The row with ✓ in a list is the card's own, also after a change was undone in the list.
func TestUndoneInAList(t *testing.T) {
	s := toCard(t, 80, 24)
	s.press(".", "5", "+", "enter")
	s.has("butt ✓")
	s.press("ctrl+z")
	s.has("lap ✓")
	s.hasNot("butt ✓")
}

// The usual tasks take few keys, from the program's start or from the card.
func TestKeysOfTasks(t *testing.T) {
	for _, x := range []struct {
		task, keys string
		most       int
		done       func(m *root) bool
	}{
		{"card of galvanized 20 ga", "enter 2 0 enter enter enter", 6, func(m *root) bool {
			return m.onCard() &&
				m.job.Metal == "galvanized" && m.job.Gauge == 20
		}},
		{"a butt with a gap", ". 5 + . 6 2 enter", 8, func(m *root) bool {
			return m.onCard() && m.job.Joint == "butt" &&
				m.job.Gap == calc.Some(2)
		}},
		{"a second plate", ". 9 1 4 enter", 6, func(m *root) bool { return m.onCard() && m.job.Gauge2 == 14 }},
		{"a feed of one's own", "4 . 5 enter", 4, func(m *root) bool { return m.job.Feed == calc.Some(4.5) }},
		{"the step back", "+ ctrl+z", 2, func(m *root) bool { return !m.job.Feed.Set }},
		{"keep, but for the name", "k enter", 2, func(m *root) bool {
			return m.isOpen(&m.part) &&
				m.part.name() == pageBook
		}},
	} {
		for _, size := range [][2]int{{32, 10}, {80, 24}} {
			s := openAt(t, size[0], size[1], Options{Book: &drawer{}})
			if !strings.HasPrefix(x.task, "card of") {
				s.press("enter", "enter", "enter", "enter")
			}
			keys := strings.Fields(x.keys)
			s.press(keys...)
			if len(keys) > x.most || !x.done(s.root()) {
				t.Errorf("%s at %v: %d keys, and\n%s", x.task, size, len(keys), s.text())
			}
		}
	}
}
