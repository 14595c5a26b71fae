// Package shop is what a shop does with its book: it saves cards, test beads, readings and hand-entered records,
// changes, deletes and restores them, finds, compares and learns. Each of these acts has its rules and hints here, once
// for the commands, the screens and the questions line by line. Package book below it only stores.
//
// Errors of the acts are safe for a terminal. An error about the input is a *mistake.Error with what to type instead;
// one about the book is a *Failure with what to do about it. Errors for a guest at another machine tell nothing about
// this one.
package shop

import (
	"context"
	"errors"
	"strings"
	"sync"

	"brazebooth/internal/book"
	"brazebooth/internal/mistake"
)

// Shop is a book as one person uses it. The book is opened for each act and closed again, so that a booth that is left
// running keeps nothing open. It is safe for use by several goroutines.
type Shop struct {
	Where    string      // the book: a file, or the address of a server
	Beside   string      // the file for saves while a server cannot be reached; "" for none
	Author   book.Author // who saves
	LookOnly bool        // the user may not save
	Remote   bool        // the user is at another machine
	Fault    func(error) // receives the full error where a guest sees other words; nil drops it

	saving sync.WaitGroup
}

// Wait waits until all running saves have succeeded or failed. It always ends, since a server that does not answer is
// given up.
func (s *Shop) Wait() { s.saving.Wait() }

// Done is the outcome of an act.
type Done struct {
	Verb, ID, What string   // "saved", the record's id, what it is; no Verb and ID if nothing had to be changed
	Remarks        []string // what the user may not expect; every medium shows it
	Lines          []string // what the book says about it at length, for a command

	short  []string // the same for the screens
	inBook bool     // it is in the book, and not in the file beside it
}

// Line is the outcome in one line, with the record's id.
func (d *Done) Line() string { return strings.TrimSpace(d.Verb + " " + d.ID + " " + d.What) }

// Said is the outcome as a screen or a voice tells it.
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

// say adds a line for commands, and a shorter one for the screens, "" for none.
func (d *Done) say(line, short string) {
	d.Lines = append(d.Lines, line)
	if short != "" {
		d.short = append(d.short, short)
	}
}

// act runs do, which fills in the outcome; Wait waits for it.
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

// With opens the book, calls do and closes the book.
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

// save saves a new record after those in first: into the book; into the file s.Beside while its server cannot be
// reached; or else, for a user at this machine, into a file that can be imported later.
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

// rescued writes unsaved revisions into a file and adds its name to the error; not for a guest, who could not fetch the
// file, or for a caller who gave up.
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

// after reads the book again to say more about a record that was just saved. A failure of that is not an error of the
// act, since the user would then save the record twice.
func (s *Shop) after(ctx context.Context, done *Done, look func(book.Book) error) {
	if !done.inBook {
		return
	}
	if err := s.With(ctx, false, look); err != nil && ctx.Err() == nil {
		done.remark("it is kept; the book could not be read again to say more about it")
	}
}

// change saves the next state of the record that find finds by a word; errSame from next leaves it as it is. If
// somebody else changes the record meanwhile, change begins again. It needs the book itself, not a file beside it.
func (s *Shop) change(ctx context.Context, verb string, kind book.Kind, word string, find finder, next step) (
	Done, error) {
	return s.act(func(done *Done) error {
		b, err := s.open(ctx, true)
		if err != nil {
			return err
		}
		defer b.Close() // a failure to close does not undo a save
		for {
			r, err := find(ctx, b, kind, word)
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

// A finder is one of package book's functions that find the record that a word names.
type finder func(ctx context.Context, b book.Book, kind book.Kind, word string) (book.Revision, error)

// A step makes a record's next state, and describes it in the Done.
type step func(now *book.Revision, done *Done) (book.Revision, error)

// edited is the step that edits a record's body.
func edited[T any](s *Shop, edit func(body *T, done *Done) error) step {
	return func(r *book.Revision, done *Done) (book.Revision, error) {
		body, err := book.Body[T](r)
		if err == nil {
			err = edit(&body, done)
		}
		if err != nil {
			return *r, err
		}
		return s.Author.Change(r, body)
	}
}

// errSame is the error of a change that changes nothing.
var errSame = errors.New("nothing to change")

func wrong(what, hint string) error { return mistake.New(what, hint) }
