package book

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"sync"

	"brazebooth/internal/address"
)

// shelf holds the books in files that this process has open, each once: a second opening shares the first, and the
// last holder closes it. SQLite's locks belong to the process, not to the connection that took them. So a process
// must not touch the file of a book, or what lies beside it, except through SQLite: closing any descriptor of the
// file drops the locks of all connections (sqlite.org/howtocorrupt.html, 2.2), and another program then believes that
// it is the last one.
type shelf struct {
	mu    sync.Mutex
	books []*shelved
}

var theShelf shelf

// shelved is a book that is open or being opened.
type shelved struct {
	file    string      // as it was named first, to be shown
	lies    string      // the file itself, where a link was named
	is      os.FileInfo // which file it is, under any name
	holders int         // guarded by the shelf
	turn    chan struct{}

	// The rest belongs to the holder of the turn, and does not change once it is set.
	conns connections
}

// hold is a file's book on the shelf; it is put there if it is not there yet. With makes a missing file is made.
func (h *shelf) hold(file string, makes bool) (*shelved, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	is, err := os.Stat(file)
	if errors.Is(err, fs.ErrNotExist) && makes {
		if err = create(file); err == nil {
			is, err = os.Stat(file)
		}
	}
	if err != nil {
		return nil, err
	}
	for _, b := range h.books {
		if os.SameFile(b.is, is) {
			b.holders++
			return b, nil
		}
	}
	b := &shelved{file: file, lies: behind(file), is: is, holders: 1, turn: make(chan struct{}, 1)}
	b.pass()
	h.books = append(h.books, b)
	return b, nil
}

// behind is the file that a name leads to: SQLite keeps its own files beside that file, not beside a link.
func behind(file string) string {
	if real, err := filepath.EvalSymlinks(file); err == nil {
		return real
	}
	return file
}

// create makes an empty file, which only its owner can read, for SQLite to turn into a book. It is called under the
// shelf's lock and fails where a file exists, so the descriptor that it closes is never one of a file that is open
// here.
func create(file string) error {
	f, err := os.OpenFile(file, os.O_CREATE|os.O_EXCL|os.O_RDWR, 0o600)
	if errors.Is(err, fs.ErrExist) { // another process was faster
		return nil
	}
	if err != nil {
		return err
	}
	return f.Close()
}

// leave gives a book back; the last holder closes it.
func (h *shelf) leave(b *shelved) error {
	h.mu.Lock()
	b.holders--
	last := b.holders == 0
	if last {
		h.books = slices.DeleteFunc(h.books, func(x *shelved) bool { return x == b })
	}
	h.mu.Unlock()
	if !last {
		return nil
	}
	return b.conns.close()
}

// holds reports whether this process has a file open as a book.
func (h *shelf) holds(is os.FileInfo) bool {
	h.mu.Lock()
	defer h.mu.Unlock()
	return slices.ContainsFunc(h.books, func(b *shelved) bool { return os.SameFile(b.is, is) })
}

// take waits for the turn to open a book's connections.
func (b *shelved) take(ctx context.Context) error {
	select {
	case <-b.turn:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

func (b *shelved) pass() { b.turn <- struct{}{} }

// store is one holder's view of the book; closing it gives the book back, once.
func (b *shelved) store(readOnly string) *store {
	c := &b.conns
	s := &store{engine: sqlite, read: c.read, place: b.file, readOnly: readOnly}
	if readOnly == "" {
		s.write, s.writer = c.write, c.writer
	}
	s.closing = sync.OnceValue(func() error { return theShelf.leave(b) })
	return s
}

// IsPart reports whether a file is a book, or one of the files that SQLite keeps beside it, whether it exists yet or
// not. Code that reads or writes files that a user names asks this first, since only SQLite may open one of these.
func IsPart(where, file string) bool {
	is, err := os.Stat(file)
	if err == nil && theShelf.holds(is) {
		return true
	}
	if where == "" || address.Server(where) {
		return false
	}
	for _, ending := range [...]string{"", "-wal", "-shm", "-journal"} {
		part := behind(where) + ending
		if filepath.Clean(part) == filepath.Clean(file) || filepath.Clean(where+ending) == filepath.Clean(file) {
			return true
		}
		if own, failed := os.Stat(part); err == nil && failed == nil && os.SameFile(own, is) {
			return true
		}
	}
	return false
}
