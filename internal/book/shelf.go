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
	"brazebooth/internal/newfile"
)

// shelf has the book files that this process has open, each once: a second opening shares the first, and the last
// holder closes it. SQLite's locks belong to the process, not to the connection that took them. So a process must not
// open the file of a book, or the files beside it, except through SQLite: closing any descriptor of the file releases
// the locks of all connections (sqlite.org/howtocorrupt.html, 2.2), and another program then believes that it is the
// only user.
type shelf struct {
	mu    sync.Mutex
	books []*shelved
}

var theShelf shelf

// shelved is a book that is open or being opened.
type shelved struct {
	file    string      // its name as first given, for messages
	lies    string      // the file's path with links resolved
	is      os.FileInfo // identifies the file under any name
	holders int         // guarded by the shelf
	turn    chan struct{}

	// Only the holder of the turn may set these; once set they do not change.
	conns connections
}

// hold finds or adds a file's book on the shelf. With makes a missing file is created.
func (h *shelf) hold(file string, makes bool) (*shelved, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	is, err := os.Stat(file)
	if errors.Is(err, fs.ErrNotExist) && makes { // SQLite turns an empty file into a book
		if err = newfile.Reserve(file); err == nil || errors.Is(err, fs.ErrExist) { // another process was faster
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

// behind resolves symbolic links: SQLite keeps its own files beside the real file, not beside a link.
func behind(file string) string {
	if real, err := filepath.EvalSymlinks(file); err == nil {
		return real
	}
	return file
}

// leave ends one holder's use; the last one closes the book.
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

// take waits for the turn, which one opener of connections has at a time.
func (b *shelved) take(ctx context.Context) error {
	select {
	case <-b.turn:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

func (b *shelved) pass() { b.turn <- struct{}{} }

// store is one holder's view of the book; its first Close leaves the book.
func (b *shelved) store(readOnly string) *store {
	return &store{engine: sqlite, connections: b.conns, place: b.file, readOnly: readOnly,
		closing: sync.OnceValue(func() error { return theShelf.leave(b) })}
}

// IsPart reports whether a file is the book at where, one of the files that SQLite keeps beside it (even if it does not
// exist yet), or any open book. Code that reads or writes files that a user names asks this first, since only SQLite
// may open these.
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
