package shop

import (
	"context"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/book"
)

// The acts for the screens and the questions (tui.Keeper, linear.Keeper): they take what the screen has and return the
// text to show.

// LooksOnly reports whether the user may read the book but not save.
func (s *Shop) LooksOnly() bool { return s.LookOnly }

// Keep saves a card under a name.
func (s *Shop) Keep(ctx context.Context, name string, card *calc.Card) (said string, err error) {
	return inWords(s.SaveCard(ctx, book.Card{Name: name}, card))
}

// Trial is SaveTrial of a bead that was just laid; verdict and source may be "".
func (s *Shop) Trial(ctx context.Context, job calc.Job, seen, verdict, source string) (said string, err error) {
	return inWords(s.SaveTrial(ctx, book.Trial{Job: job, Seen: seen, Verdict: verdict, Source: source}))
}

// Cut is SaveTrial of a bead that was cut and measured, mm.
func (s *Shop) Cut(ctx context.Context, job calc.Job, seen, verdict, source string,
	m struct{ Width, Leg, Throat, Zinc float64 }) (said string, err error) {
	return inWords(s.SaveTrial(ctx, book.Trial{Job: job, Seen: seen, Verdict: verdict, Source: source,
		Measured: book.Measured(m)}))
}

// Measure is SaveReading, with the travel (mm/s) if it was timed. It returns the job with what its power source taught.
// An error means that nothing was saved.
func (s *Shop) Measure(ctx context.Context, source string, r calc.Reading, travel float64, job calc.Job) (
	taughtJob calc.Job, said string, err error) {
	done, err := s.SaveReading(ctx, book.Reading{Source: source, Feed: r.Feed, StickOut: r.StickOut, Amps: r.Amps,
		Volts: r.Volts, Travel: travel, FeedDial: r.FeedDial, VoltsDial: r.VoltsDial}, job)
	if err != nil {
		return job, "", err
	}
	s.after(ctx, &done, func(b book.Book) error {
		with, err := taught(ctx, b, job, source)
		if err == nil {
			job = with
		}
		return err
	})
	return job, done.Said(), nil
}

// Practice is SavePractice.
func (s *Shop) Practice(ctx context.Context, how practice.Outcome) (said string, err error) {
	return inWords(s.SavePractice(ctx, how))
}

// Enter is SaveEntry.
func (s *Shop) Enter(ctx context.Context, kind string, given map[string]string) (said string, err error) {
	return inWords(s.SaveEntry(ctx, book.Kind(kind), given))
}

// Mark deletes or restores a record.
func (s *Shop) Mark(ctx context.Context, kind, id string, deleted bool) error {
	act := s.Restore
	if deleted {
		act = s.Delete
	}
	_, err := act(ctx, book.Kind(kind), id)
	return err
}

func inWords(done Done, err error) (string, error) {
	if err != nil {
		return "", err
	}
	return done.Said(), nil
}

// SavePractice saves the outcome of a practice job, from which nothing is learned.
func (s *Shop) SavePractice(ctx context.Context, how practice.Outcome) (Done, error) {
	return s.act(func(done *Done) error {
		done.What = "practice " + how.Line()
		return s.save(ctx, done, book.PracticeKind, how)
	})
}
