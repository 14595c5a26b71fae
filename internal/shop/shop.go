// Package shop is what a shop does with its book: it saves cards, test beads, readings and what is entered by hand,
// changes, deletes and brings back, finds, compares and learns. Each act has its rules and its hints here, once,
// whoever asks: a command, the screens or the questions line by line. Package book below it only stores.
//
// Errors of the acts are safe for a terminal. One about what was asked is a *mistake.Error with what to type instead;
// one about the book is a *Failure with what to do about it. A guest at another machine is told nothing of this one.
package shop

import (
	"context"
	"errors"
	"strings"
	"sync"

	"brazebooth/internal/book"
	"brazebooth/internal/mistake"
)

// Shop is a book as one person uses it. The book is opened for each act and closed again, so that a booth that is
// left running holds nothing. It is safe for use by several goroutines.
type Shop struct {
	Where    string      // the book: a file, or the address of a server
	Beside   string      // the file that takes what a server cannot while it is away; "" for none
	Author   book.Author // who saves
	LookOnly bool        // nothing may be kept
	Remote   bool        // who asks sits at another machine
	Fault    func(error) // takes an error whole of which a guest is told in other words; nil: nobody does

	saving sync.WaitGroup
}

// Wait returns when everything that is being saved is saved, or is known not to be. It ends by itself: a server that
// does not answer is given up.
func (s *Shop) Wait() { s.saving.Wait() }

// Done is what became of an act.
type Done struct {
	Verb, ID, What string   // "saved", the record's id, what it is; without Verb and ID nothing was to be changed
	Remarks        []string // what goes otherwise than one expects; every medium says it
	Lines          []string // what the book says to it at length, for who gave a command

	short  []string // the same for the screens
	inBook bool     // the book has it; else the file beside it
}

// Line is the act in a line, with the record's id.
func (d *Done) Line() string { return strings.TrimSpace(d.Verb + " " + d.ID + " " + d.What) }

// Said is all that a screen or a voice says of the act.
func (d *Done) Said() string {
	what := d.What
	switch d.Verb {
	case "":
	case "saved":
		what = "kept: " + what
	default:
		what = d.Verb + ": " + what
	}
	return strings.Join(append(append([]string{what}, d.Remarks...), d.short...), "; ")
}

func (d *Done) remark(text string) { d.Remarks = append(d.Remarks, text) }

// say adds a line, and a shorter one for the screens, "" for none.
func (d *Done) say(line, short string) {
	d.Lines = append(d.Lines, line)
	if short != "" {
		d.short = append(d.short, short)
	}
}

// act does something of which one is told.
func (s *Shop) act(do func(*Done) error) (Done, error) {
	s.saving.Add(1)
	defer s.saving.Done()
	var done Done
	if err := do(&done); err != nil {
		return Done{}, s.Told(err)
	}
	return done, nil
}

// Open opens the book, to write or to read only.
func (s *Shop) Open(ctx context.Context, writes bool) (book.Book, error) {
	b, err := s.open(ctx, writes)
	return b, s.Told(err)
}

func (s *Shop) open(ctx context.Context, writes bool) (book.Book, error) {
	open := book.Read
	if writes {
		open = book.Open
	}
	if writes && s.LookOnly {
		return nil, ErrLookOnly
	}
	b, err := open(ctx, s.Where)
	if errors.Is(err, book.ErrNone) {
		return nil, s.noBook()
	}
	return b, err
}

// With opens the book, does something with it and closes it.
func (s *Shop) With(ctx context.Context, writes bool, do func(book.Book) error) error {
	return s.Told(s.with(ctx, writes, do))
}

func (s *Shop) with(ctx context.Context, writes bool, do func(book.Book) error) error {
	b, err := s.open(ctx, writes)
	if err != nil {
		return err
	}
	return errors.Join(do(b), b.Close())
}

// save keeps a new record, behind what has to be there first: in the book; beside it while its server is away; or
// else, for who sits here, in a file that can be taken in later.
func (s *Shop) save(ctx context.Context, done *Done, kind book.Kind, body any, first ...book.Revision) error {
	if s.LookOnly {
		return ErrLookOnly
	}
	r, err := s.Author.New(kind, body)
	if err != nil {
		return err
	}
	list := append(first, r)
	beside, err := book.SaveOr(ctx, s.Where, s.Beside, list...)
	if err != nil {
		return s.rescued(ctx, err, list)
	}
	if beside != "" {
		done.remark(besides(beside, s.Remote))
	}
	done.Verb, done.ID, done.inBook = "saved", r.ID, beside == ""
	return nil
}

// rescued writes what no book took into a file, and says so beside what went wrong. A guest could not fetch the file,
// and who asked for an end did not want it.
func (s *Shop) rescued(ctx context.Context, err error, list []book.Revision) error {
	if s.Remote || ctx.Err() != nil {
		return err
	}
	file, failed := book.Rescue(list...)
	if failed != nil {
		return err
	}
	what, hint, _ := Explain(bookError(err))
	return &Failure{what + "; it was saved in " + file + ": take it in with brazebooth book import " + file, hint, err}
}

// after looks into the book for what is said beside something that was kept just now. That is kept whatever comes of
// the look: an end that was asked for meanwhile, or a book that cannot be read, is no failure of the act, or it would
// be done twice.
func (s *Shop) after(ctx context.Context, done *Done, look func(book.Book) error) {
	if !done.inBook {
		return
	}
	if err := s.With(ctx, false, look); err != nil && ctx.Err() == nil {
		done.remark("it is kept; the book could not be read again to say more about it")
	}
}

// change saves the next state of the record that is found; where next says that there is none the record stays as it
// is. Where somebody else changes the record meanwhile it begins again. A change wants the book itself.
func (s *Shop) change(ctx context.Context, verb string, find finder, next step) (Done, error) {
	return s.act(func(done *Done) error {
		b, err := s.open(ctx, true)
		if err != nil {
			return err
		}
		defer b.Close() // what is kept is kept, however the book closes
		for {
			r, err := find(b)
			if err != nil {
				return err
			}
			state, err := next(&r, done)
			if errors.Is(err, errSame) {
				return nil
			}
			if err == nil {
				err = b.SaveOn(ctx, state)
			}
			if err == nil {
				done.Verb, done.ID, done.inBook = verb, r.ID, true
			}
			if !errors.Is(err, book.ErrStale) || ctx.Err() != nil {
				return err
			}
		}
	})
}

// A finder finds the record that is meant.
type finder func(book.Book) (book.Revision, error)

// A step makes a record's next state, and says in the Done what that is.
type step func(now *book.Revision, done *Done) (book.Revision, error)

// errSame is of a change that changes nothing.
var errSame = errors.New("nothing to change")

func wrong(what, hint string) error { return mistake.New(what, hint) }
