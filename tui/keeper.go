package tui

import (
	"context"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/quantity"
)

// Keeper is the shop's record as the screens need it; nil where there is none. Its texts are safe for a terminal; an
// error about what was asked is a *mistake.Error with what to type instead.
type Keeper interface {
	// Keep saves a card under a name and says where.
	Keep(ctx context.Context, name string, card *calc.Card) (said string, err error)
	// Find lists kept cards by the beginnings of words, newest first.
	Find(ctx context.Context, text string) ([]Entry, error)
	// Load is the job of a kept card.
	Load(ctx context.Context, id string) (calc.Job, error)
	// Records lists whatever is kept, of every kind, by the beginnings of words, newest first.
	Records(ctx context.Context, text string) ([]Entry, error)
	// Record is all there is of one record: lines of at most 80 columns.
	Record(ctx context.Context, id string, units quantity.System) ([]string, error)
	// Mark marks a record as deleted, or takes that back; its history stays.
	Mark(ctx context.Context, kind, id string, deleted bool) error
	// Trial keeps a test bead: how it was laid (a whole job), what it showed (ids, with commas), the verdict (good,
	// acceptable or bad; "" for what it showed) and the power source's name, "" where nobody named it; it says where.
	Trial(ctx context.Context, job calc.Job, seen, verdict, source string) (said string, err error)
	// Cut keeps a test bead that was measured, as Trial does with what it showed and the verdict, either of which may
	// be "".
	Cut(ctx context.Context, job calc.Job, seen, verdict, source string, m Measured) (said string, err error)
	// Recall returns the job with what a power source's readings and verdicts taught.
	Recall(ctx context.Context, source string, job calc.Job) (calc.Job, error)
	// Enter keeps a record that is entered by hand, of kind source, spool or person, or what is given of one that is
	// known; the names of what is given are those of the command's flags. An error says what to type instead.
	Enter(ctx context.Context, kind string, given map[string]string) (said string, err error)
	// Sources names the power sources that are known.
	Sources(ctx context.Context) ([]string, error)
	// Practice keeps how a job in a simulated booth went, and says where; nothing is ever learned from it.
	Practice(ctx context.Context, how practice.Outcome) (said string, err error)
	// Measure keeps a reading of a power source, with the travel (mm/s) where it was timed, and returns the job with
	// what it and those before teach. An error means that nothing was kept.
	Measure(ctx context.Context, source string, r calc.Reading, travel float64, job calc.Job) (taught calc.Job,
		said string, err error)
}

// Entry is one record in a list. It has no name of its own, so that whoever keeps the record need not know this
// package.
type Entry = struct{ ID, Kind, Name, At, Line string }

// Measured is what a bead measured, mm; 0 where it was not: from toe to toe, from the joint to the toe on the second
// member, the least that carries load, from the joint to where the first member's zinc is left. It has no name of its
// own, as Entry.
type Measured = struct{ Width, Leg, Throat, Zinc float64 }
