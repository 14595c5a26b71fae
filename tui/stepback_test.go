package tui

import (
	"math/rand/v2"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// Stepping back from the card along the path and on again changes no choice and no figure, whatever was chosen: sizes
// that are no row of a list, coatings, wires, assumed values.
func TestSteppingBackChangesNothing(t *testing.T) {
	r := deep.Rand(t)
	jobs := []calc.Job{
		{}, {Metal: "mild-steel", Thickness: calc.Some(1)}, {Metal: "galvanized", Gauge: 20, Coating: "G90",
			Wire: calc.Some(0.8)},
		{Metal: "stainless-304", Thickness: calc.Some(1.37), Filler: "cual8", Wire: calc.Some(1.13), Mode: "pulsed",
			Joint: "tee"},
		{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: calc.Some(2), Mode: "timed"},
		{Metal: "galvanized", Gauge: 18, Metal2: "copper", Gauge2: 14, Feed: calc.Some(4.5), Travel: calc.Some(6)},
	}
	for range deep.Many(1, 200) {
		jobs = append(jobs, calc.Job{Metal: []string{"mild-steel", "galvanized", "copper"}[r.IntN(3)],
			Thickness: calc.Some(0.5 + 2.5*r.Float64()), Wire: calc.Some(0.6 + r.Float64())})
	}
	for _, job := range deep.Of(t, jobs, 5) {
		if _, err := calc.Solve(job); err != nil {
			continue
		}
		s := openAt(t, 80, 24, Options{Opening: job})
		if job == (calc.Job{}) {
			s.press("enter", "enter", "enter", "enter")
		}
		stepsBack(t, s, 1+r.IntN(4))
	}
}

// stepsBack presses esc on the card this many times, and enter as often.
func stepsBack(t *testing.T, s *terminal, steps int) {
	t.Helper()
	m := s.root()
	if !m.onCard() || m.card.typing || m.fault != nil || m.beat.stop != nil || m.example {
		return
	}
	choices := func() calc.Job { // without the times, which change when the heat is computed
		j := m.session.card.Used
		if j.Mode == "timed" {
			j.ArcOn, j.ArcOff, j.SpotStep, j.Travel = calc.Opt{}, calc.Opt{}, calc.Opt{}, calc.Opt{}
		}
		return j
	}
	job, used := m.job, choices()
	for range steps {
		s.press("esc")
	}
	if m.job != job {
		t.Errorf("%d times esc turns\n%+v into\n%+v", steps, job, m.job)
	}
	for range steps {
		s.press("enter")
	}
	if p := pickOf(m); !m.onCard() && p.ask != nil && p != &m.path { // a further question of a timed arc
		s.press("esc")
	}
	if !m.onCard() || choices() != used {
		t.Errorf("%d times esc, and enter again, turn\n%+v into\n%+v", steps, used, choices())
	}
}

// randomStep is a step back and on again, for the test with random keys.
func randomStep(t *testing.T, s *terminal, r *rand.Rand) {
	t.Helper()
	for range 12 {
		if s.root().onCard() {
			break
		}
		s.press("ctrl+u", "esc")
	}
	stepsBack(t, s, 1+r.IntN(4))
}
