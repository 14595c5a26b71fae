package shop

import (
	"errors"
	"io/fs"
	"strconv"
	"strings"

	"brazebooth/internal/address"
	"brazebooth/internal/book"
	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
)

// Failure is what could not be done though it was rightly asked, with what to do about it.
type Failure struct {
	What, Hint string
	Cause      error
}

func (f *Failure) Error() string { return f.What }

// Unwrap returns the cause.
func (f *Failure) Unwrap() error { return f.Cause }

// ErrLookOnly is said to who may not change the book.
var ErrLookOnly = wrong("this key may look, not keep", "ask who runs the server to put it among the writers")

// Explain is an error's words and what to do about it; use reports that it is about what was typed.
func Explain(err error) (what, hint string, use bool) {
	if m := mistake.Of(err); m != nil {
		return plain.Line(m.Error(), 400), plain.Line(m.Hint, 800), true
	}
	var could *Failure
	if errors.As(err, &could) {
		return could.What, could.Hint, false
	}
	return plain.Line(err.Error(), 200), "", false
}

// Told is an error as who asks is told of it.
func (s *Shop) Told(err error) error {
	err = bookError(err)
	if s.Remote {
		err = ToldGuest(err, s.Where, s.Fault)
	}
	var could *Failure
	if err == nil || mistake.Of(err) != nil || errors.As(err, &could) {
		return err
	}
	return &Failure{What: plain.Line(err.Error(), 400), Cause: err}
}

// noBook says that nothing was kept here yet.
func (s *Shop) noBook() error {
	what := "there is no book yet at " + plain.Line(s.Where, 200)
	hint := "save something first: brazebooth book save --name ...; or name another with --book"
	if s.Remote {
		what = "nothing is in " + serversBook + " yet"
		hint = "who may keep saves something first: book save --name ..."
	}
	return &mistake.Error{What: what, Hint: hint, Cause: book.ErrNone}
}

// besides says of what was kept beside the book what becomes of it; a guest is told no path of this machine.
func besides(file string, remote bool) string {
	if remote {
		return "the database of the book does not answer: kept beside it on the server; who runs the server merges it " +
			"when the database is back"
	}
	text := "the server of the book does not answer: kept in " + file
	return plain.Line(text+"; when it is back: brazebooth book merge "+file, 400)
}

// PlaceError refuses what is no place for a book: an address that is none, and a file whose name nobody could read or
// type again.
func PlaceError(where string) error {
	switch {
	case address.Check(where) != nil:
		return bookError(book.ErrAddress)
	case where == "-":
		return wrong("a book cannot be a stream", "name a file: --book FILE")
	case plain.Line(where, len(where)) != where:
		return wrong("the book's name has characters that cannot be seen", "name another file: --book FILE")
	}
	return nil
}

// What to do about a book.
const (
	whichBook = "brazebooth doctor says which is used and why"
	soundBook = "brazebooth book check says what is wrong; brazebooth book backup NEW.db makes a sound book of what " +
		"can be read"
)

// bookError adds to what a book says what to do about it.
func bookError(err error) error {
	var several *book.Several
	var bad *book.Unreadable
	var path *fs.PathError
	var told *Failure
	switch {
	case err == nil, mistake.Of(err) != nil, errors.As(err, &told):
		return err
	case book.Damaged(err):
		return &Failure{plain.Line(err.Error(), 300), soundBook, err}
	case errors.As(err, &bad):
		return &Failure{plain.Line(bad.Error(), 300), "name another book with --book; " + whichBook, err}
	case errors.As(err, &several):
		ids := strings.Join(several.IDs[:min(len(several.IDs), 8)], ", ")
		list := "brazebooth book list --kind " + string(several.Kind) + " shows them"
		return wrong(several.Error(), "type one of their ids: "+ids+"; "+list)
	case errors.Is(err, book.ErrAddress):
		return wrong(book.ErrAddress.Error(), address.Hint)
	case errors.Is(err, book.ErrNone):
		what := plain.Line(err.Error(), 200)
		return &mistake.Error{What: what, Hint: "brazebooth book list shows what is there", Cause: err}
	case errors.Is(err, book.ErrReadOnly):
		what := plain.Line(err.Error(), 200)
		return &mistake.Error{What: what, Hint: "use the newer program, or another book with --book", Cause: err}
	case errors.As(err, &path):
		what := plain.Line(path.Path, 200) + ": " + path.Err.Error()
		return &Failure{what, "name another book with --book, or repair that; " + whichBook, err}
	}
	return err
}

// quote repeats what was typed, safe and short.
func quote(text string) string { return strconv.Quote(plain.Line(address.Shown(text), 40)) }
