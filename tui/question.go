package tui

import (
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
)

// pathChoices lead to every card, in their order; a timed arc asks on.
func pathChoices() []*choice.Choice { return choice.Path(&calc.Job{}) }

// otherChoices wait on the card.
func otherChoices() []*choice.Choice {
	return choice.Named("joint", "gap", "backing", "position", "filler", "coating", "metal2", "gauge2", "coating2",
		"gas", "use")
}

// present is what a list goes by.
func (s *session) present() *choice.Present {
	return &choice.Present{Card: &s.card, Job: s.base(), Units: s.units, Solve: s.solve}
}

// neighbour returns the job with the value before or after the present one, and whether there is one.
func (s *session) neighbour(c *choice.Choice, by int) (calc.Job, bool) {
	rows, now := c.Rows(s.present()), c.Now(&s.card)
	for i := range rows {
		if rows[i].ID != now {
			continue
		}
		if i+by < 0 || i+by >= len(rows) {
			return s.job, false
		}
		return s.taken(c, rows[i+by].ID), true
	}
	return s.job, false
}

// taken is the job with a row's value on it.
func (s *session) taken(c *choice.Choice, id string) calc.Job {
	job := s.base()
	_ = c.Take(&job, id) // a row's own id is always understood
	return job
}

// brief is a choice as the line under the path has it, "" where there is nothing to say.
func brief(c *choice.Choice, card *calc.Card, sys quantity.System) string {
	text, follows := c.Shown(card, sys), c.Now(card) == choice.Same
	switch c.Name {
	case "gap":
		return strings.Replace("gap "+text, "gap none", "no gap", 1)
	case "coating":
		return strings.Replace(text, "none", "bare", 1)
	case "metal2":
		if follows {
			return ""
		}
		return "on " + text
	case "gauge2":
		if follows || text == choice.ByName("gauge").Shown(card, sys) {
			return ""
		}
		return "second " + text
	}
	return text
}
