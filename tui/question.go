package tui

import (
	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// choice is one row of a list.
type choice struct {
	key  string // tells it from the other rows
	name string // as a hand says it
	fact string // its one figure, short
	line string // what it means, one plain sentence
	more string // said of the row under the cursor only
	also string // lower-case words it answers to besides name and line
	put  func(*calc.Job)
}

// question is one thing to choose: a step of the path, or one of the other choices on the card.
type question struct {
	name    string // the Job's JSON name
	title   string // on the path and the card
	ask     string // the question itself, one line
	list    func(*session) []choice
	now     func(*calc.Card) string                  // key of what the card has
	shown   func(*calc.Card, quantity.System) string // what the card has, in words
	open    func(*calc.Job)                          // leaves the field open again
	find    func(string) (string, error)             // loose typing to a key; names only
	parse   func(*session, string) (choice, error)   // typed size to a choice; sizes only
	reasons func(*session, string) []reason          // what the row of that key rests on
	about   func(*session) string                    // what holds for the whole list, "" for nothing
	applies func(*calc.Card) bool                    // nil: always
	brief   func(*calc.Card, quantity.System) string // for the line under the path
	rule    quantity.Field                           // how a bare number is read; sizes only
}

// sized reports whether typing is a size rather than a filter.
func (q *question) sized() bool { return q.parse != nil }

// because is what the row of a key rests on.
func (q *question) because(s *session, key string) []reason {
	if q.reasons == nil {
		return nil
	}
	return q.reasons(s, key)
}

// pathQuestions are the four choices that lead to a card, in their order.
func pathQuestions() [4]*question {
	return [4]*question{&askMetal, &askGauge, &askWire, &askMode}
}

// otherQuestions are the choices that wait on the card.
func otherQuestions() [10]*question {
	return [10]*question{&askJoint, &askGap, &askPosition, &askFiller, &askCoating,
		&askMetal2, &askGauge2, &askCoating2, &askGas, &askUse}
}

// neighbour returns the job with the choice before or after the present one, and whether there is one.
func (q *question) neighbour(s *session, by int) (calc.Job, bool) {
	rows, now := q.list(s), q.now(&s.card)
	for i := range rows {
		if rows[i].key != now {
			continue
		}
		if i+by < 0 || i+by >= len(rows) {
			return s.job, false
		}
		job := s.base()
		rows[i+by].put(&job)
		return job, true
	}
	return s.job, false
}
