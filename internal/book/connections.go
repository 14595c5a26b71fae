package book

import (
	"context"
	"database/sql"
	"errors"
	"strings"
	"sync"

	driver "modernc.org/sqlite" // registers itself as "sqlite"
)

// connections are a process's connections to one book: one for writing, and separate ones for reading a file.
type connections struct {
	read, write *sql.DB
	alone       *sql.DB // used for both where SQLite cannot create files beside the book
	writer      *writer
	newer       string // why nothing can be written, "" if it can
}

// ownLocks makes the locks on a book's file belong to the descriptor that took them instead of to the process, where
// the system has such locks: a second guard besides the rule that only SQLite opens the file. It must run before a file
// is first opened; SQLite falls back to the old locks on a disk that lacks the new ones.
var ownLocks = sync.OnceFunc(func() { _, _ = driver.OFDLocking(true) })

// open opens a file through SQLite with more options; it does not read it yet.
func open(file, mode string, writes bool, more ...string) (*sql.DB, error) {
	ownLocks()
	return sql.Open("sqlite", dsn(file, mode, writes)+strings.Join(more, ""))
}

// cutShort lets SQLite read a file that has fewer pages than its header says.
const cutShort = "&_pragma=writable_schema(1)"

func (c *connections) openRead(file string, more ...string) error {
	if c.read != nil {
		return nil
	}
	db, err := open(file, "ro", false, more...)
	if err != nil {
		return err
	}
	db.SetMaxOpenConns(mostReaders)
	c.read = db
	return nil
}

// shutRead closes the readers, so that they can be opened in another way.
func (c *connections) shutRead() {
	_ = c.read.Close() // nothing was written
	c.read = nil
}

// mostReaders is how many look-ups one process runs in a book at once; more wait.
const mostReaders = 4

// openWrite opens the writer, and updates the book's tables to this program's version.
func (c *connections) openWrite(ctx context.Context, file string) error {
	if c.write != nil {
		return nil
	}
	db, err := open(file, "rwc", true)
	if err != nil {
		return err
	}
	db.SetMaxOpenConns(1)
	s := &store{engine: sqlite, connections: connections{write: db}}
	if err := patiently(ctx, func() error { return s.prepare(ctx, file) }); err != nil {
		return errors.Join(err, db.Close())
	}
	c.write, c.newer = db, s.readOnly
	if c.newer == "" {
		c.writer = newWriter(&sqlite, db)
	}
	return nil
}

func (c *connections) close() error {
	if c.writer != nil {
		c.writer.stop()
	}
	var errs []error
	for _, db := range [...]*sql.DB{c.alone, c.read, c.write} {
		if db != nil {
			errs = append(errs, db.Close())
		}
	}
	return errors.Join(errs...)
}
