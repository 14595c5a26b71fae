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

// Failure is the error when an act failed although the request was right, with what to do about it.
type Failure struct {
	What, Hint string
	Cause      error
}

func (f *Failure) Error() string { return f.What }

// Unwrap returns the cause.
func (f *Failure) Unwrap() error { return f.Cause }

// ErrLookOnly is the error for a guest who may not change the book.
var ErrLookOnly = wrong("this key may look, not keep", "ask who runs the server to put it among the writers")

// Explain is an error's text and hint; use reports that the error is about what was typed.
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

// Told is an error in words for the user of this Shop.
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

// noBook is the error for a book in which nothing was saved yet.
func (s *Shop) noBook() error {
	what := "there is no book yet at " + plain.Line(s.Where, 200)
	hint := "save something first: brazebooth book save --name ...; or name another with --book"
	if s.Remote {
		what = "nothing is in " + serversBook + " yet"
		hint = "somebody with the right to save must save something first: book save --name ..."
	}
	return &mistake.Error{What: what, Hint: hint, Cause: book.ErrNone}
}

// besides says where a record is that was saved beside the book, and how it gets into the book; a guest sees no path of
// this machine.
func besides(file string, remote bool) string {
	if remote {
		return "the database of the book does not answer: kept in a file of the server, whose operator merges " +
			"it when the database is back"
	}
	text := "the server of the book does not answer: kept in " + file
	return plain.Line(text+"; when it is back: brazebooth book merge "+file, 400)
}

// PlaceError refuses an impossible place for a book: a malformed address, and a file whose name has invisible
// characters.
func PlaceError(where string) error {
	switch {
	case address.Check(where) != nil:
		return bookError(address.ErrBad)
	case where == "-":
		return wrong("a book cannot be a stream", "name a file: --book FILE")
	case plain.Line(where, len(where)) != where:
		return wrong("the book's name has characters that cannot be seen", "name another file: --book FILE")
	}
	return nil
}

// Hints about a book.
const (
	whichBook = "brazebooth doctor says which is used and why"
	soundBook = "brazebooth book check says what is wrong; brazebooth book backup NEW.db makes a sound book of what " +
		"can be read"
)

// bookError adds to an error of package book what to do about it.
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
	case errors.Is(err, address.ErrBad):
		return wrong(address.ErrBad.Error(), address.Hint)
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

// quote quotes what was typed, made safe for the terminal and short.
func quote(text string) string { return strconv.Quote(plain.Line(address.Shown(text), 40)) }
