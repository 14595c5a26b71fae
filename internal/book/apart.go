package book

import (
	"context"
	"errors"
	"fmt"
	"os"
	"sync"

	"brazebooth/internal/plain"
)

// mayReadApart reports an error that comes of SQLite not being able to lay its own files beside a book: in a folder that
// cannot be written to, or on a full disk.
func mayReadApart(err error) bool {
	switch sqliteCode(err) {
	case notAllowed, readOnlyFile, ioError, fullDisk, cannotOpen:
		return true
	}
	return false
}

// readApart reads a book beside which SQLite can lay nothing. Where nothing is left beside it either, the file alone is
// the book. What a program left in the file's log when it was stopped belongs to the book: it is read with it where the
// file itself may be opened to write, and else the book is refused, since without the log it would look whole and lack
// what was kept last.
func readApart(ctx context.Context, file string, cause error) (*store, int, error) {
	how := "&immutable=1"
	mode := "ro"
	log := file + "-wal"
	if left, err := os.Stat(log); err == nil && left.Size() > 0 {
		if !accessible(file) || !accessible(log) {
			return nil, 0, &Unreadable{plain.Line(file, 200), fmt.Sprintf("cannot be read whole: what was kept last lies in %s, and nothing may be written beside it. Copy both files into a folder of your own and name the copy: --book COPY", plain.Line(log, 200)), cause}
		}
		how, mode = "&_pragma=locking_mode(EXCLUSIVE)", "rw" // then SQLite keeps in memory what it would lay beside
	}
	was, err := os.Stat(file)
	if err != nil {
		return nil, 0, err
	}
	db, err := open(file, mode, false, how)
	if err != nil {
		return nil, 0, err
	}
	db.SetMaxOpenConns(1)
	s := &store{engine: sqlite, read: db, place: file, readOnly: whyApart(file)}
	s.backup = s.copyFile
	s.closing = sync.OnceValue(func() error { return errors.Join(db.Close(), unchanged(file, was, mode)) })
	v, err := s.version(ctx, s.read)
	if err != nil {
		return nil, 0, errors.Join(cause, s.Close())
	}
	return s, v, nil
}

// whyApart says why nothing can be saved into a book that is read apart.
func whyApart(file string) string {
	if full(file) {
		return "the disk is full: make room on it"
	}
	return "its folder cannot be written to"
}

// unchanged is an error where a file that was read without locks was written meanwhile: what was read may be of both.
func unchanged(file string, was os.FileInfo, mode string) error {
	if mode != "ro" {
		return nil // it was locked
	}
	now, err := os.Stat(file)
	left, failed := os.Stat(file + "-wal")
	if err == nil && os.SameFile(now, was) && now.Size() == was.Size() && now.ModTime().Equal(was.ModTime()) && (failed != nil || left.Size() == 0) {
		return nil
	}
	return errors.New("the book was written while it was read without locks: what was shown may be mixed, ask again")
}
