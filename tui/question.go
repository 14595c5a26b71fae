package tui

import (
	"fmt"
	"slices"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/choice"
)

// pathChoices lead to every card, in their order; a timed arc asks on.
func pathChoices() []*choice.Choice { return choice.Path(&calc.Job{}) }

// chipChoices are the choices that always stand on the card, in the order of their numbers.
func chipChoices() []*choice.Choice {
	return choice.Named("metal", "gauge", "wire", "mode", "joint", "gap", "metal2", "position", "gauge2")
}

// otherChoices are those that have no chip.
func otherChoices() []*choice.Choice {
	return choice.Named("backing", "coating", "coating2", "filler", "gas", "use", "length", "preheat", "part-width",
		"part-mass", "aim", "throat", "shaft-dia", "layer", "hole", "run-in")
}

// present is what a list goes by.
func (s *session) present() *choice.Present {
	return &choice.Present{Card: &s.card, Job: s.base(), Units: s.units, Solve: s.solve}
}

// neighbour returns the job with the value before or after the present one, and whether there is one.
func (s *session) neighbour(c *choice.Choice, by int) (calc.Job, bool) {
	rows, now := c.Rows(s.present()), c.Now(&s.card)
	at := slices.IndexFunc(rows, func(r choice.Row) bool { return r.ID == now })
	if at < 0 || at+by < 0 || at+by >= len(rows) {
		return s.job, false
	}
	return s.taken(c, rows[at+by].ID), true
}

// taken is the job with a row's value on it.
func (s *session) taken(c *choice.Choice, id string) calc.Job {
	job := s.base()
	if c.Given(&job) && c.Now(&s.card) == id && !s.old {
		return job // choosing what is chosen changes nothing: not the coating that goes with a metal either
	}
	_ = c.Take(&job, id) // a row's own id is always understood
	return job
}

func explain(ask *choice.Choice, row *choice.Row) action {
	if row == nil {
		return nil
	}
	c := *row
	return func(m *root) tea.Cmd {
		m.read(c.Name, func(th *theme, w int) block { return reasonPage(th, &c, ask.Reasons(m.present(), c.ID), w) })
		return nil
	}
}

// reasonPage is a choice in full: its sentence, then each figure with its source.
func reasonPage(th *theme, c *choice.Row, lines []choice.Reason, w int) (b block) {
	b.say(th.plain, 0, th.told(rowSentence(c)), w)
	col := 0
	for _, l := range lines {
		col = max(col, min(width(l.Label), w/2))
	}
	for i, l := range lines {
		if i == 0 || l.Source != "" {
			b.skip()
		}
		style := th.plain
		if l.Value == "" {
			style = th.bold
		}
		b.addAll(flow(newRow(w).put(style, l.Label), []piece{{col + 2, th.bold, l.Value}}, 2, w))
		if l.Source != "" {
			text := l.Source
			if words := calc.KnownWords(l.Known); words != text {
				text = fmt.Sprintf("%s; %s", text, words)
			}
			b.say(th.quiet, 2, text, w)
		}
	}
	return b
}
