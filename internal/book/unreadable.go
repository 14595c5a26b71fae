package book

import (
	"database/sql"
	"errors"
	"io/fs"
	"os"
	"strconv"
	"strings"

	"brazebooth/internal/plain"
)

// Unreadable is what opening finds where something else lies than a book, or a book that is damaged.
type Unreadable struct {
	Place, What string
	cause       error
}

func (u *Unreadable) Error() string { return u.Place + " " + u.What }

func (u *Unreadable) Unwrap() error { return u.cause }

// unreadable says why something is no book; what says what was tried.
func unreadable(file, what string, cause error) error {
	return &Unreadable{plain.Line(file, 200), what + ": " + whyNot(cause), cause}
}

// How SQLite calls a file that is none of its own, and a statement that does not suit the tables.
const (
	notADatabase = 26
	otherTables  = 1
)

func whyNot(err error) string {
	var coded interface{ Code() int }
	switch {
	case errors.As(err, &coded) && coded.Code() == notADatabase:
		return "it is no SQLite file"
	case errors.Is(err, sql.ErrNoRows), errors.Is(err, strconv.ErrSyntax), coded != nil && coded.Code() == otherTables:
		return "its tables are another program's, or damaged"
	}
	return err.Error()
}

// plainFile refuses an address that is none of a file's and none of a PostgreSQL server's, without repeating it: it may
// hold a password. It refuses a folder too, and what is read and never ends; a file that is not there yet will do.
func plainFile(where string) error {
	if strings.Contains(where, "://") {
		return errors.New("a book is a file, or postgres://user@host/database: this address is neither")
	}
	info, err := os.Stat(where)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case info.IsDir():
		return &Unreadable{plain.Line(where, 200), "is no book: a folder stands there", nil}
	case !info.Mode().IsRegular():
		return &Unreadable{plain.Line(where, 200), "is no book: it is no file but a pipe or a device", nil}
	}
	return nil
}
