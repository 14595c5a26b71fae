package tui

import (
	"context"
	"sync"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/calc/correct"
	"brazebooth/calc/practice"
	"brazebooth/internal/choice"
	"brazebooth/internal/mistake"
	"brazebooth/internal/report"
)

// session is what one user has chosen, and the results for it.
type session struct {
	Options // Units are those on the screen, and the job is in chosen

	chosen
	card     calc.Card
	past     []chosen // the jobs that ctrl+z restores, the last one last
	followed bool     // card has the times that were computed from the heat
	fault    *fault   // why the present job has no card, so that card is an earlier job's; nil if it has one

	pages answers // of the pages beside the card

	look *calc.Card // of the job with the choice under the cursor tried out; nil for none
}

// fault is why a job has no card, or why typed text was refused: what is wrong, and what to do instead.
type fault struct{ what, hint string }

// faultOf turns an error into a fault, with the error's hint if it has one.
func faultOf(err error) *fault {
	if m := mistake.Of(err); m != nil {
		return &fault{m.Error(), m.Hint}
	}
	return &fault{err.Error(), "change one of the choices"}
}

// bookFault is a failure of the book, with the error's hint, or another one if it has none.
func bookFault(before string, err error, otherwise string) *fault {
	if m := mistake.Of(err); m != nil && m.Hint != "" {
		otherwise = m.Hint
	}
	return &fault{before + err.Error(), otherwise}
}

func newSession(o Options) session {
	s := session{Options: o, chosen: chosen{job: o.Opening}, pages: answers{}}
	if o.Opening == (calc.Job{}) {
		s.job, s.example = ExampleJob(), true
	}
	s.compute()
	if s.fault != nil { // there is no last good card yet
		s.card, _ = s.Solve(ExampleJob())
	}
	return s
}

// compute finds the card of the present job. If there is none, the last card stays.
func (s *session) compute() {
	s.fault, s.followed = nil, false
	card, err := s.try(s.job)
	if err != nil {
		s.fault = faultOf(err)
	} else {
		s.card, s.pages = card, answers{}
	}
}

// base is the job that a choice is put on. The example's own choices do not count as the user's: the first choice of
// metal, joint or the like drops them, and open choices are then assumed and marked so. A change of a dial refers to
// the card as shown, so it is put on the job as it is, and drops nothing.
func (s *session) base() calc.Job {
	if s.example {
		return calc.Job{}
	}
	return s.job
}

// chosen is a job as the user put it together.
type chosen struct {
	job     calc.Job // open choices are assumed by Solve
	example bool     // job is the example's own, and the user has chosen nothing yet
}

// undos is how many changes can be undone.
const undos = 100

func (s *session) choose(job calc.Job) {
	if job != s.job {
		s.past = append(s.past[max(0, len(s.past)+1-undos):], s.chosen)
	}
	s.job, s.example = job, false
	s.compute()
}

// try solves a job without choosing it, and remembers the answer.
func (s *session) try(job calc.Job) (calc.Card, error) {
	if s.look != nil && s.look.Job == job {
		return *s.look, nil
	}
	card, err := s.Solve(job)
	if err == nil {
		s.look = &card
	}
	return card, err
}

// set is the action that puts a typed value on the job, and then shows done. After a fault the typed text stays.
func (s *session) set(c *choice.Choice, f *field, done string, then func()) action {
	job := s.job
	if err := c.Set(&job, f.String()); err != nil {
		return faultOf(err).said
	}
	return func(m *root) tea.Cmd {
		if m.changed(job, done); m.notice == nil {
			then()
		}
		return nil
	}
}

// answers are the findings of the pages beside the present card. Each is computed when its page is first opened.
type answers map[string]func() ([]report.Block, error)

// said is the finding of a page.
func (s *session) said(name string) ([]report.Block, error) {
	if s.pages[name] == nil {
		s.pages[name] = sync.OnceValues(func() ([]report.Block, error) { return s.answer(name) })
	}
	return s.pages[name]()
}

func (s *session) answer(name string) ([]report.Block, error) {
	if page, ok := advice.EntryByName(name); ok {
		p, err := s.page(context.Background(), page, &s.card)
		return report.Page(&p, nil), err
	}
	list, err := advice.Pages(context.Background(), &s.card, nil)
	if err != nil {
		return nil, err
	}
	return report.Whole(&s.card, list), nil // the sheet
}

// computing holds the functions for results beside the card that take long. The tests, which ask for the same results
// many times, put a memory in front of each.
type computing struct {
	page   func(context.Context, *advice.Entry, *calc.Card) (advice.Page, error)
	next   func(context.Context, []correct.Try) (advice.Page, error)
	drills func(context.Context, *practice.Booth, practiceAsk) (practiceAnswer, error)
	spans  func(context.Context, *calc.Card) spans
}

// whenAsked computes each result whenever it is asked for.
var whenAsked = computing{
	page: func(ctx context.Context, e *advice.Entry, c *calc.Card) (advice.Page, error) { return e.Answer(ctx, c) },
	next: correct.Next, drills: drill, spans: spansOf,
}
