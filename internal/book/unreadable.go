package book

import (
	"database/sql"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"

	"brazebooth/internal/address"
	"brazebooth/internal/plain"
)

// Unreadable is the error of opening something that is not a book, or a damaged book.
type Unreadable struct {
	Place, What string
	cause       error
	part        bool // of a book that can be read elsewhere
}

func (u *Unreadable) Error() string { return u.Place + " " + u.What }

func (u *Unreadable) Unwrap() error { return u.cause }

// Damaged reports whether an error means that parts of a book cannot be read, while others may be.
func Damaged(err error) bool {
	var bad *Unreadable
	return sqliteCode(err) == corrupt || errors.As(err, &bad) && bad.part
}

// said says what cannot be done with a file, and why; an error that has its own words keeps them.
func said(file, what string, err error) error {
	var told *Unreadable
	if err == nil || errors.As(err, &told) || errors.Is(err, ErrNone) {
		return err
	}
	return &Unreadable{Place: plain.Line(file, 200), What: what + ": " + whyNot(file, err), cause: err}
}

func whyNot(file string, err error) string {
	code := sqliteCode(err)
	switch {
	case code == notADatabase:
		return "it is no SQLite file"
	case errors.Is(err, sql.ErrNoRows), errors.Is(err, strconv.ErrSyntax), code == otherTables:
		return "its tables are another program's, or damaged"
	case code == corrupt:
		return "it is damaged (" + err.Error() + ")"
	case code == fullDisk, (code == ioError || code == cannotOpen) && full(file):
		return "the disk is full: make room on it (" + err.Error() + ")"
	case (code == readOnlyFile || code == cannotOpen || code == notAllowed) && !(accessible(behind(file)) &&
		accessible(filepath.Dir(behind(file)))):
		return "this user may not write the file or its folder (" + err.Error() + ")"
	}
	return err.Error()
}

// plainFile refuses a text that is neither a file's name nor the address of a PostgreSQL server, without repeating
// it: it may hold a password. It also refuses a folder, and a device or pipe, which may never end; a missing file is
// accepted.
func plainFile(where string) error {
	if address.Looks(where) {
		return ErrAddress
	}
	info, err := os.Stat(where)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case info.IsDir():
		return &Unreadable{Place: plain.Line(where, 200), What: "is no book: a folder stands there"}
	case !info.Mode().IsRegular():
		return &Unreadable{Place: plain.Line(where, 200), What: "is no book: it is no file but a pipe or a device"}
	}
	return nil
}
