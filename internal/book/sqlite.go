package book

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"time"

	sqlite3 "modernc.org/sqlite/lib"

	"brazebooth/internal/plain"
)

var sqlite = engine{name: "SQLite",
	exists: "SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name = $1",
	own: strings.NewReplacer("{blob}", "BLOB", "{c}", "", "{counted}", "INTEGER PRIMARY KEY",
		"{keyed}", " WITHOUT ROWID"),
	spread: func(words, as string) string {
		return `json_each('["' || replace(` + words + `, ' ', '","') || '"]') ` + as
	}}

// onlyToRead is why nothing can be saved into a book that Read opened.
const onlyToRead = "it was opened only to be read"

const mostTogether = 256

// OpenFile opens a book in a file to read and write, and creates it if it does not exist. A book of a newer program is
// opened only to read; an older one is copied beside itself and updated. A file on a network share is refused, since
// its locks cannot be trusted and a book there would be damaged. Within a process all openings of the same file share
// one book.
func OpenFile(ctx context.Context, file string) (Book, error) {
	if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
		return nil, fmt.Errorf("no folder for the book: %w", err)
	}
	if kind := network(filepath.Dir(behind(file))); kind != "" {
		return nil, fmt.Errorf("%s is on a network share (%s), whose locks cannot be trusted: two programs would "+
			"damage the book. Keep it on this machine's own disk, or share one by PostgreSQL: --book "+
			"postgres://user@host/database", file, kind)
	}
	b, err := theShelf.hold(file, true)
	if err != nil {
		return nil, said(file, "cannot be used as a book", err)
	}
	s, err := b.toWrite(ctx)
	if err != nil {
		return nil, errors.Join(said(file, "cannot be used as a book", err), theShelf.leave(b))
	}
	return s, nil
}

// toWrite opens a book's writer and readers, unless they are open.
func (b *shelved) toWrite(ctx context.Context) (*store, error) {
	if err := b.take(ctx); err != nil {
		return nil, err
	}
	defer b.pass()
	if b.conns.alone != nil {
		return nil, errors.New(whyApart(b.lies))
	}
	if err := b.conns.openWrite(ctx, b.lies); err != nil {
		return nil, err
	}
	if err := b.conns.openRead(b.lies); err != nil {
		return nil, err
	}
	return b.store(b.conns.newer), nil
}

// ReadFile opens a book in a file only to read, and never creates one: the error is ErrNone if there is none.
func ReadFile(ctx context.Context, file string) (Book, error) {
	s, v, err := inspect(ctx, file)
	switch {
	case err != nil:
		return nil, err
	case v == 0:
		return nil, errors.Join(&Unreadable{Place: plain.Line(file, 200), What: "is not a book"}, s.Close())
	case v < oldest: // queries need newer tables: update it first
		_ = s.Close()
		return OpenFile(ctx, file)
	}
	return s, nil
}

// inspect opens a file to read and reads the version of its tables; 0 if they are another program's. The error is
// ErrNone if there is no file, or if nothing was saved in it yet.
func inspect(ctx context.Context, file string) (*store, int, error) {
	b, err := theShelf.hold(file, false)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, 0, fmt.Errorf("%w: %s does not exist yet", ErrNone, file)
	}
	if err != nil {
		return nil, 0, err
	}
	s, v, err := b.toRead(ctx)
	if err != nil {
		return nil, 0, errors.Join(said(file, "cannot be read as a book", err), theShelf.leave(b))
	}
	if v > 0 {
		if err := s.plainTables(ctx); err != nil && !Damaged(err) {
			return nil, 0, errors.Join(err, s.Close())
		}
		return s, v, nil
	}
	tables, err := s.tables(ctx, s.read)
	if err == nil && tables == 0 {
		err = fmt.Errorf("%w: nothing was saved in %s yet", ErrNone, file)
	}
	if err != nil {
		return nil, 0, errors.Join(err, s.Close())
	}
	return s, 0, nil
}

// toRead opens a book's readers, unless they are open, and reads its version.
func (b *shelved) toRead(ctx context.Context) (s *store, version int, err error) {
	if err := b.take(ctx); err != nil {
		return nil, 0, err
	}
	defer b.pass()
	if b.conns.alone != nil {
		return b.readApart(ctx, nil)
	}
	others := b.conns.read != nil
	s, version, err = b.asked(ctx)
	switch {
	case err == nil:
		return s, version, nil
	case others: // the other holders use the readers, so they cannot be closed
		return nil, 0, err
	case unwritable(err) && (full(b.lies) || !accessible(filepath.Dir(b.lies))): // no files can be made beside it
		b.conns.shutRead() // they would block a reader that needs an exclusive lock
		return b.readApart(ctx, err)
	case sqliteCode(err) == sqlite3.SQLITE_CORRUPT:
		b.conns.shutRead()
		if s, version, again := b.asked(ctx, cutShort); again == nil {
			return s, version, nil
		}
		b.conns.shutRead()
	}
	return nil, 0, err
}

// asked opens a book's readers and reads its version. If the page with the version is damaged, it assumes this
// program's version, provided that the table of revisions exists.
func (b *shelved) asked(ctx context.Context, how ...string) (s *store, version int, err error) {
	if err := b.conns.openRead(b.lies, how...); err != nil {
		return nil, 0, err
	}
	s = b.store(onlyToRead)
	err = patiently(ctx, func() (err error) { version, err = s.version(ctx, s.read); return err })
	if unreadablePage(err) && some(ctx, s.read, s.exists, "revisions") {
		return s, Version, nil
	}
	return s, version, err
}

// plainTables refuses a file with a book's version whose tables are views or have computed columns: somebody may have
// made them so that reading never ends.
func (s *store) plainTables(ctx context.Context) error {
	var stored, made int
	err := s.read.QueryRowContext(ctx, `SELECT COALESCE(sum(rootpage > 0 AND name IN ('revisions', 'heads')), 0),
		COALESCE(sum(rootpage = 0 OR EXISTS (SELECT 1 FROM pragma_table_xinfo(t.name) WHERE hidden <> 0)), 0)
		FROM sqlite_master t WHERE name IN ('meta', 'revisions', 'heads', 'words')`).Scan(&stored, &made)
	if err == nil && (stored != 2 || made > 0) {
		err = &Unreadable{Place: plain.Line(s.place, 200), What: "is not a book: its tables are not this program's"}
	}
	return err
}

// tables counts a file's tables; it is 0 for a server, which may hold other tables beside a book's.
func (e *engine) tables(ctx context.Context, q querier) (n int, err error) {
	if e.name != sqlite.name {
		return 0, nil
	}
	err = q.QueryRowContext(ctx,
		"SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'").Scan(&n)
	return n, err
}

// dsn is the driver's name for a file, with the options for opening it.
func dsn(file, mode string, writes bool) string {
	q := url.Values{"mode": {mode}, "_pragma": {"busy_timeout(5000)", "foreign_keys(1)", "trusted_schema(0)"}}
	if writes {
		q["_pragma"] = append(q["_pragma"], "journal_mode(WAL)", "synchronous(FULL)", "cache_size(-32000)",
			"temp_store(MEMORY)", "wal_autocheckpoint(4000)")
		q.Set("_txlock", "immediate")
	}
	return "file:" + (&url.URL{Path: plainName(file)}).EscapedPath() + "?" + q.Encode()
}

// plainName is a file's name in a form that SQLite takes as nothing but a file's name: to SQLite :memory: is no file,
// file:x is an address, and // in an address begins a host.
func plainName(file string) string {
	switch {
	case strings.HasPrefix(file, "//"):
		return "/" + strings.TrimLeft(file, "/")
	case filepath.IsAbs(file):
		return file
	}
	return "." + string(filepath.Separator) + file
}

// prepare updates the file's tables to this program's version; an older book is copied first.
func (s *store) prepare(ctx context.Context, file string) error {
	v, err := s.version(ctx, s.write)
	if err != nil {
		return err
	}
	if v > 0 && v < Version {
		copy := fmt.Sprintf("%s.before-version-%d.%s", file, v+1, time.Now().UTC().Format("20060102T150405"))
		// another program may make it at the same time
		if err := vacuum(ctx, s.write, copy); err != nil && !errors.Is(err, fs.ErrExist) {
			return fmt.Errorf("no copy of the book before it is brought up to date: %w", err)
		}
	}
	if v < Version {
		v, err = s.migrate(ctx)
	}
	s.readOnly = newer(v)
	return err
}
