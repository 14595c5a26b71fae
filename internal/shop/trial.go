package shop

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/correct"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/tables"
)

// The verdicts on a bead.
const (
	good       = "good"
	acceptable = "acceptable"
	bad        = "bad"
)

// SaveTrial keeps a test bead and says what it teaches of its power source. The job is completed, with the settings
// that its card suggests for what nobody chose; one that has no card is kept as it was laid. Without a verdict the
// look of the bead is one.
func (s *Shop) SaveTrial(ctx context.Context, t book.Trial) (Done, error) {
	return s.act(func(done *Done) (err error) {
		if err := judge(&t); err != nil {
			return err
		}
		if t.Job, err = calc.Complete(t.Job); err != nil {
			return err
		}
		card, err := calc.SolveContext(ctx, t.Job)
		switch {
		case ctx.Err() != nil:
			return err
		case err != nil:
			done.remark("it has no card and is kept as it was laid: " + plain.Line(err.Error(), 200))
		default:
			t.Job = calc.Laid(&card)
			done.stops(&card)
		}
		book.Clean(&t)
		first, err := s.source(ctx, done, &t.Source)
		if err != nil {
			return err
		}
		done.What = "test bead, " + t.Verdict
		if err := s.save(ctx, done, book.TrialKind, t, first...); err != nil || t.Source == "" {
			return err
		}
		s.after(ctx, done, func(b book.Book) error { return sayEfficiency(ctx, b, done, t.Source) })
		return nil
	})
}

// judge reads what a bead shows and holds the verdict against it.
func judge(t *book.Trial) error {
	if t.Seen != "" {
		ids, err := correct.SeenIDs(tables.SightsSaid(t.Seen))
		if err != nil {
			return err
		}
		t.Seen = ids
	}
	if t.Verdict == "" && t.Seen != "" {
		t.Verdict = bad
		if t.Seen == good {
			t.Verdict = good
		}
	}
	switch {
	case !slices.Contains([]string{good, acceptable, bad}, t.Verdict):
		return wrong("a trial needs a verdict", "type --verdict good, acceptable or bad")
	case t.Verdict == good && t.Seen != "" && t.Seen != good, t.Verdict == bad && t.Seen == good:
		return wrong("the verdict "+t.Verdict+" together with "+t.Seen,
			"say acceptable where a fault is tolerated, or what was seen otherwise")
	}
	return nil
}

// sayEfficiency says what a power source's trials teach of the heat, each with how much it was expected.
func sayEfficiency(ctx context.Context, b book.Book, done *Done, source string) error {
	list, err := verdictsAt(ctx, b, source)
	if err != nil {
		return err
	}
	e := calc.LearnEta(list)
	if e.Used == 0 {
		done.say(plain.Line(source, 60)+": no verdict tells of its heat yet", "")
		return nil
	}
	var said []string
	for _, x := range e.Evidence {
		said = append(said, fmt.Sprintf("%s (expected in %.0f of 100)", x.Heat, x.Expected))
	}
	done.say(fmt.Sprintf("%s: arc efficiency %.3f (± %.3f) by %d verdicts: %s",
		plain.Line(source, 60), e.Mean, 2*e.Sigma, e.Used, strings.Join(said, ", ")), "")
	return nil
}
