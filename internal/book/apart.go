package book

import (
	"context"
	"errors"
	"fmt"
	"os"
	"sync"

	"brazebooth/internal/plain"
)

// readApart reads a book beside which SQLite cannot create files. Without a log beside it, the file alone is the book.
// A log that a stopped program left belongs to the book: it is read too if the file may be opened to write; otherwise
// the book is refused, since without its log it would look complete but lack the last saves.
func (b *shelved) readApart(ctx context.Context, cause error) (s *store, version int, err error) {
	log := b.lies + "-wal"
	left, err := os.Stat(log)
	switch {
	case b.conns.alone != nil:
		s, err = b.alone()
	case undone(b.lies):
		return nil, 0, &Unreadable{Place: plain.Line(b.file, 200),
			What: fmt.Sprintf("cannot be read whole: another program was stopped in the middle of a change, and what "+
				"undoes it is in %s. Copy both files into a folder of your own, save something into the copy, "+
				"and name it: --book COPY", plain.Line(b.lies+"-journal", 200)), cause: cause}
	case err != nil || left.Size() == 0:
		s, err = b.unlocked()
	case !accessible(b.lies) || !accessible(log):
		return nil, 0, &Unreadable{Place: plain.Line(b.file, 200),
			What: fmt.Sprintf("cannot be read whole: what was saved last is in %s, and nothing can be written beside "+
				"it. Copy both files into a folder of your own and name the copy: --book COPY", plain.Line(log, 200)),
			cause: cause}
	default:
		s, err = b.alone()
	}
	if err != nil {
		return nil, 0, err
	}
	if version, err = s.version(ctx, s.read); err != nil {
		if s.read != b.conns.alone {
			err = errors.Join(err, s.read.Close())
		}
		return nil, 0, errors.Join(cause, err)
	}
	return s, version, nil
}

// undone reports whether another program left a rollback journal beside a book, which is needed to undo half a change.
func undone(file string) bool {
	left, err := os.Stat(file + "-journal")
	return err == nil && left.Size() > 0
}

// unlocked reads the file without locks, assuming that nobody writes it; if somebody did write, Close returns an error.
func (b *shelved) unlocked() (*store, error) {
	was, err := os.Stat(b.lies)
	if err != nil {
		return nil, err
	}
	db, err := open(b.lies, "ro", false, "&immutable=1")
	if err != nil {
		return nil, err
	}
	s := b.store(whyApart(b.lies))
	s.read = db
	given := s.closing
	s.closing = sync.OnceValue(func() error { return errors.Join(db.Close(), given(), unchanged(b.lies, was)) })
	return s, nil
}

// alone reads the file and its log under an exclusive lock, with which SQLite needs no shared-memory file. All holders
// in this process share this connection.
func (b *shelved) alone() (*store, error) {
	if b.conns.alone == nil {
		db, err := open(b.lies, "rw", false, "&_pragma=locking_mode(EXCLUSIVE)")
		if err != nil {
			return nil, err
		}
		db.SetMaxOpenConns(1)
		b.conns.alone = db
	}
	s := b.store(whyApart(b.lies))
	s.read = b.conns.alone
	return s, nil
}

// whyApart says why nothing can be saved into a book that is read apart.
func whyApart(file string) string {
	if full(file) {
		return "the disk is full: make room on it"
	}
	return "its folder cannot be written to"
}

// unchanged returns an error if a file was written while it was read without locks: old and new pages may be mixed.
func unchanged(file string, was os.FileInfo) error {
	now, err := os.Stat(file)
	left, failed := os.Stat(file + "-wal")
	if err == nil && os.SameFile(now, was) && now.Size() == was.Size() && now.ModTime().Equal(was.ModTime()) &&
		(failed != nil || left.Size() == 0) {
		return nil
	}
	return errors.New("the book was written while it was read without locks: read it again, old and new may be mixed")
}
