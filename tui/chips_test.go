package tui

import (
	"strconv"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/choice"
)

// Every choice of the card can be reached with two keys, changed in place or in its list, kept, and undone.
func TestChips(t *testing.T) {
	for i, q := range chipChoices() {
		s := toCard(t, 80, 24)
		s.press(".", strconv.Itoa(i+1))
		if r := s.root().card.row(); r.ask != q {
			t.Fatalf("chip %d is not %s", i+1, q.Name)
		}
		was, before := q.Now(&s.root().session.card), s.root().job
		s.press("enter")
		s.has(q.Ask)
		s.press("down", "enter")
		s.onCard()
		if got := q.Now(&s.root().session.card); got == was {
			t.Errorf("%s is still %s", q.Name, was)
		}
		s.press("ctrl+z")
		if got := s.root().job; got != before {
			t.Errorf("%s: undone, the job is %+v, not %+v", q.Name, got, before)
		}
		s.press("+")
		if s.root().job == before {
			s.press("-")
		}
		if got := q.Now(&s.root().session.card); got == was {
			t.Errorf("%s is still %s after + and -", q.Name, was)
		}
		s.press("r")
		if q.Given(&s.root().job) {
			t.Errorf("r left %s given", q.Name)
		}
	}
}

// A choice without a chip can be reached in the list of the rest.
func TestTheRest(t *testing.T) {
	for i, q := range otherChoices() {
		s := toCard(t, 80, 24)
		if !q.Applies(&s.root().session.card) { // a backing
			s = openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "butt"}})
		}
		s.press(".", "0")
		n := 0
		for _, r := range s.root().front().(*restPage).rows {
			if r.ask == q {
				break
			}
			n++
		}
		for range n {
			s.press("down")
		}
		s.press("enter")
		if q.Ask != "" {
			s.has(q.Ask)
		} else {
			s.has("set "+q.Label(), q.Words())
		}
		s.press("esc", "esc")
		s.onCard()
		if i > 20 {
			t.Fatal("many")
		}
	}
}

// * on a chip says what the list of the choice says about the value, with its sources.
func TestWhyAChoice(t *testing.T) {
	for i, q := range chipChoices() {
		s := openAt(t, 200, 60, Options{Opening: calc.Job{Metal: "galvanized", Gauge: 18, Gauge2: 16,
			Metal2: "mild-steel", Joint: "tee", Position: "overhead"}})
		s.press(".", strconv.Itoa(i+1), "*")
		p := s.root().front().(*whyPage)
		if p.chosen == nil || p.chosen.ID != q.Now(&s.root().session.card) {
			t.Errorf("%s: %+v is explained", q.Name, p.chosen)
			continue
		}
		text := flat(s.text())
		for _, want := range append(q.Reasons(s.root().present(), p.chosen.ID),
			choice.Reason{Label: rowSentence(p.chosen)}) {
			if !strings.Contains(text, flat(want.Label)) || !strings.Contains(text, flat(want.Source)) {
				t.Errorf("%s: %+v is not in\n%s", q.Name, want, s.text())
			}
		}
	}
}

// The list of the rest shows what was just chosen or typed in it, and what r opened again.
func TestTheRestFollows(t *testing.T) {
	for keys, want := range map[string]string{
		"down down enter down enter":                            "aluminium bronze CuAl8",
		"down down down down down down enter 1 5 0 enter esc":   "150 °C",
		"down down enter down enter r":                          "~silicon bronze CuSi3",
		"down down enter down enter ctrl+z":                     "~silicon bronze CuSi3",
		"down down down down down down enter 1 5 0 enter esc r": "~20 °C",
		"down down down down down enter 2 5 0 enter esc":        "250 mm",
		"down down down down down enter 2 5 0 enter esc u":      "9.84 in",
	} {
		s := toCard(t, 80, 24)
		s.press(".", "0")
		s.press(strings.Fields(keys)...)
		rest := s.root().front().(*restPage)
		row := rest.rows[rest.list.at()]
		if row.value != want {
			t.Errorf("%s: %s is %q, want %q", keys, row.label, row.value, want)
		}
		s.has(row.label, want)
	}
}
