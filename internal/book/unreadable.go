package book

import (
	"database/sql"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"syscall"

	sqlite3 "modernc.org/sqlite/lib"

	"brazebooth/internal/address"
	"brazebooth/internal/plain"
)

// Unreadable is the error of opening something that is not a book, or a damaged book.
type Unreadable struct {
	Place, What string
	cause       error
	part        bool // only this part of the book cannot be read
}

func (u *Unreadable) Error() string { return u.Place + " " + u.What }

func (u *Unreadable) Unwrap() error { return u.cause }

// Damaged reports whether an error means that parts of a book cannot be read, while others may be.
func Damaged(err error) bool {
	var bad *Unreadable
	return sqliteCode(err) == sqlite3.SQLITE_CORRUPT || errors.As(err, &bad) && bad.part
}

// said makes an *Unreadable that says what cannot be done with a file, and why; an error that already has such words
// stays as it is.
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
	case code == sqlite3.SQLITE_NOTADB:
		return "it is not an SQLite file"
	case errors.Is(err, sql.ErrNoRows), errors.Is(err, strconv.ErrSyntax), code == sqlite3.SQLITE_ERROR:
		return "its tables are another program's, or damaged"
	case code == sqlite3.SQLITE_CORRUPT:
		return "it is damaged (" + err.Error() + ")"
	case code == sqlite3.SQLITE_FULL, (code == sqlite3.SQLITE_IOERR || code == sqlite3.SQLITE_CANTOPEN) && full(file):
		return "the disk is full: make room on it (" + err.Error() + ")"
	case code != sqlite3.SQLITE_READONLY && code != sqlite3.SQLITE_CANTOPEN && code != sqlite3.SQLITE_PERM:
	case !accessible(behind(file)) || !accessible(filepath.Dir(behind(file))):
		return "this user may not write the file or its folder (" + err.Error() + ")"
	case undone(behind(file)):
		return "another program was stopped in the middle of a change. Save something into the book: that undoes the " +
			"half change"
	}
	return err.Error()
}

// Hindrance says why a book cannot be used, in words that name no file, user or host.
func Hindrance(err error) string {
	switch code := sqliteCode(err); {
	case code == sqlite3.SQLITE_FULL, errors.Is(err, syscall.ENOSPC):
		return "its disk is full"
	case crowded(err):
		return "somebody else is using it; try again"
	case code == sqlite3.SQLITE_READONLY, errors.Is(err, syscall.EACCES), errors.Is(err, syscall.EROFS):
		return "it cannot be written to"
	case code == sqlite3.SQLITE_ERROR, code == sqlite3.SQLITE_CORRUPT, code == sqlite3.SQLITE_NOTADB:
		return "it is damaged, or not a book"
	case code > 0, errors.Is(err, syscall.EIO), errors.Is(err, syscall.ENOENT), errors.Is(err, syscall.ENOTDIR):
		return "its disk cannot be read or written"
	}
	return "its database does not answer, or refuses"
}

// plainFile refuses a text that reads like a server's address but is not a valid one, without repeating it, since it
// may contain a password. It also refuses a folder, and a device or pipe, which may never end; a missing file is
// accepted.
func plainFile(where string) error {
	if address.Looks(where) {
		return address.ErrBad
	}
	info, err := os.Stat(where)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case info.IsDir():
		return &Unreadable{Place: plain.Line(where, 200), What: "is not a book but a folder"}
	case !info.Mode().IsRegular():
		return &Unreadable{Place: plain.Line(where, 200), What: "is not a book but a pipe or a device"}
	}
	return nil
}
