package shop

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/correct"
	"brazebooth/calc/practice"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// SaveTrial saves a test bead and says what it teaches about its power source. The job is completed, with its card's
// suggestions for settings that were not chosen; a job without a card is saved as it is. Without a verdict, what was
// seen decides it.
func (s *Shop) SaveTrial(ctx context.Context, t book.Trial) (Done, error) {
	return s.act(func(done *Done) (err error) {
		if err := judge(&t); err != nil {
			return err
		}
		if t.Job, err = calc.Complete(t.Job); err != nil {
			return err
		}
		card, err := calc.Answer(ctx, t.Job, nil)
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
		done.What = "test bead, " + t.Verdict
		return s.saveAt(ctx, done, book.TrialKind, &t, &t.Source, func(b book.Book) error {
			if t.Job.Mode == "timed" {
				return sayRhythm(ctx, b, done, &t)
			}
			return sayEfficiency(ctx, b, done, t.Source)
		})
	})
}

// judge reads what was seen on a bead and checks the verdict against it.
func judge(t *book.Trial) error {
	if t.Seen != "" {
		ids, err := correct.SeenIDs(tables.SightsSaid(t.Seen))
		if err != nil {
			return err
		}
		if err := correct.Possible(ids, cmp.Or(t.Job.Mode, "dip")); err != nil {
			return err
		}
		t.Seen = ids
	}
	if t.Seen == "" && t.Verdict == practice.BeadGood && t.Job.Mode == "timed" {
		t.Seen = practice.BeadGood // for a timed arc, good means washed through
	}
	if t.Verdict == "" && t.Seen != "" {
		t.Verdict = practice.BeadBad
		if t.Seen == practice.BeadGood {
			t.Verdict = practice.BeadGood
		}
	}
	switch {
	case !slices.Contains([]string{practice.BeadGood, practice.BeadAcceptable, practice.BeadBad}, t.Verdict):
		return wrong("a trial needs a verdict", "type --verdict good, acceptable or bad")
	case t.Verdict == practice.BeadGood && t.Seen != "" && t.Seen != practice.BeadGood,
		t.Verdict == practice.BeadBad && t.Seen == practice.BeadGood:
		return wrong("the verdict "+t.Verdict+" together with "+t.Seen,
			"say acceptable where a fault is tolerated, or what was seen otherwise")
	}
	return nil
}

// sayEfficiency says what a power source's trials teach about its heat, each with how likely it was expected.
func sayEfficiency(ctx context.Context, b book.Book, done *Done, source string) error {
	list, err := verdictsAt(ctx, b, source)
	if err != nil {
		return err
	}
	e := calc.LearnEta(list)
	if e.Used == 0 {
		done.say(plain.Line(source, 60)+": no verdict says anything about its heat yet", "")
		return nil
	}
	var said []string
	for _, x := range e.Evidence {
		said = append(said, fmt.Sprintf("%s (expected in %.0f of 100)", x.Heat, x.Expected))
	}
	done.say(fmt.Sprintf("%s: arc efficiency %.3f (± %.3f) by %s: %s",
		plain.Line(source, 60), e.Mean, 2*e.Sigma, quantity.Count(e.Used, "verdict"), strings.Join(said, ", ")), "")
	return nil
}

// sayRhythm says what a power source's trials of timed arcs with a trial's filler and wire teach.
func sayRhythm(ctx context.Context, b book.Book, done *Done, t *book.Trial) error {
	job, err := taught(ctx, b, t.Job, t.Source)
	if err != nil {
		return err
	}
	r, name := &job.Rhythm, plain.Line(t.Source, 60)
	if r.Trials == 0 {
		done.say(name+": no trial of a timed arc says anything about its times yet", "")
		return nil
	}
	low, high := r.Ends95()
	done.say(fmt.Sprintf("%s, timed, by %s: stirring %.1f (%.1f to %.1f), arc's spread %.2f mm (%.2f to %.2f), power "+
		"%.2f of what is computed (%.2f to %.2f); its cards of this wire have their range from it", name,
		quantity.Count(r.Trials, "trial"), r.Stir, low[0], high[0], r.Spread, low[1], high[1], r.Power, low[2],
		high[2]), "")
	return nil
}
