package cli

import (
	"errors"
	"io/fs"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/address"
	"brazebooth/internal/book"
	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
)

// place is the book that is meant.
func (d *Deps) place(cmd *cobra.Command) (string, error) {
	where, err := cmd.Flags().GetString("book")
	if d.Remote && where != "" {
		return "", wrong("no other book can be named here", "leave --book out: the server has one book for all")
	}
	if err != nil || where == "" {
		where = d.Book
	}
	if where == hidden {
		where = d.hidden
	}
	if where == "" {
		return "", d.bookless()
	}
	if err = PlaceError(where); err != nil && d.Remote {
		return "", &failure{serversBook + " cannot be used", askServer, err}
	}
	return where, err
}

// PlaceError refuses what is no place for a book: an address that is none, and a file whose name nobody could read or type again.
func PlaceError(where string) error {
	switch {
	case address.Check(where) != nil:
		return bookError(book.ErrAddress)
	case where == "-":
		return wrong("a book is no stream", "name a file: --book FILE")
	case plain.Line(where, len(where)) != where:
		return wrong("the book's name has signs that show nothing", "name another file: --book FILE")
	}
	return nil
}

// bookless says that there is no place for a book, and how to get one.
func (d *Deps) bookless() error {
	if d.Remote {
		return wrong("the server has no book", "ask who runs it to start it with one: brazebooth serve --book FILE")
	}
	return wrong("no folder for a book was found", "name a book: --book FILE, or BRAZEBOOTH_BOOK; or set XDG_DATA_HOME, or HOME, to a folder that is there")
}

// placeOrNone is the book that is meant, "" where there is none: what can do without one says so itself.
func (d *Deps) placeOrNone(cmd *cobra.Command) (string, error) {
	where, err := d.place(cmd)
	if named, _ := cmd.Flags().GetString("book"); err != nil && named == "" && d.Book == "" {
		return "", nil
	}
	return where, err
}

// shown is a book as it is named to who types; a guest is told no path of this machine.
func (d *Deps) shown(where string) string {
	if d.Remote {
		return serversBook
	}
	return plain.Line(where, 200)
}

func (d *Deps) noBook(where string) error {
	if d.Remote {
		return wrong("nothing is in "+serversBook+" yet", "who may keep saves something first: book save --name ...")
	}
	return wrong("there is no book yet at "+plain.Line(where, 200), "save something first: brazebooth book save --name ...; or name another with --book")
}

// bookError turns what a book says into what to type.
func bookError(err error) error {
	var several *book.Several
	var bad *book.Unreadable
	var path *fs.PathError
	var told *failure
	switch {
	case err == nil:
		return nil
	case book.Damaged(err):
		return &failure{plain.Line(err.Error(), 300), "brazebooth book check says what is wrong; brazebooth book backup NEW.db makes a sound book of what can be read", err}
	case errors.As(err, &bad):
		return &failure{plain.Line(bad.Error(), 300), "name another book with --book; brazebooth doctor says which is used and why", err}
	case errors.As(err, &several):
		return wrong(several.Error(), "type one of their ids: "+strings.Join(several.IDs[:min(len(several.IDs), 8)], ", ")+"; brazebooth book list --kind "+string(several.Kind)+" shows them")
	case errors.Is(err, book.ErrAddress):
		return wrong(book.ErrAddress.Error(), address.Hint)
	case errors.Is(err, book.ErrStale):
		return wrong(book.ErrStale.Error(), "look at it again: brazebooth book history; then say it once more")
	case errors.Is(err, book.ErrNone):
		return &mistake.Error{What: plain.Line(err.Error(), 200), Hint: "brazebooth book list shows what is there", Cause: err}
	case errors.Is(err, book.ErrReadOnly):
		return &mistake.Error{What: plain.Line(err.Error(), 200), Hint: "use the newer program, or another book with --book", Cause: err}
	case errors.As(err, &path) && !errors.As(err, &told):
		return &failure{plain.Line(path.Path, 200) + ": " + path.Err.Error(), "name another book with --book, or mend that; brazebooth doctor says which is used and why", err}
	}
	return err
}
