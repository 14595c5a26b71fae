package book

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"time"

	_ "modernc.org/sqlite" // registers the driver "sqlite"

	"brazebooth/internal/newfile"
	"brazebooth/internal/plain"
)

var sqlite = engine{name: "SQLite", blob: "BLOB", exists: "SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name = ?",
	counted: "INTEGER PRIMARY KEY", keyed: " WITHOUT ROWID", spread: func(words, as string) string {
		return `json_each('["' || replace(` + words + `, ' ', '","') || '"]') ` + as
	}, keeps: true}

// mostTogether is how many savings one transaction takes.
const mostTogether = 256

// OpenFile opens a book in a file to read and write, and makes it where it is not there yet. A book that a newer
// program wrote is opened to be read only; an older one is copied beside itself and brought up to date. A file on a
// network share is refused: its locks cannot be trusted, and a book there gets damaged.
func OpenFile(ctx context.Context, file string) (Book, error) {
	if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
		return nil, fmt.Errorf("no folder for the book: %w", err)
	}
	if kind := network(filepath.Dir(file)); kind != "" {
		return nil, fmt.Errorf("%s lies on a network share (%s), whose locks cannot be trusted: two programs would damage the book. Keep it on this machine's own disk, or share one by PostgreSQL: --book postgres://user@host/database", file, kind)
	}
	if f, err := os.OpenFile(file, os.O_CREATE|os.O_RDWR, 0o600); err == nil { // what a shop knows is its own
		_ = f.Close()
	}
	s := &store{engine: sqlite, place: file}
	var err error
	if s.write, err = sql.Open("sqlite", dsn(file, "rwc", true)); err != nil {
		return nil, err
	}
	s.write.SetMaxOpenConns(1)
	if err := s.prepare(ctx, file); err != nil {
		return nil, errors.Join(err, s.Close())
	}
	if s.read, err = sql.Open("sqlite", dsn(file, "ro", false)); err != nil {
		return nil, errors.Join(err, s.Close())
	}
	s.read.SetMaxOpenConns(4)
	s.backup = s.vacuumInto
	if s.readOnly == "" {
		s.writer = newWriter(&s.engine, s.write, mostTogether)
	}
	return s, nil
}

// ReadFile opens a book in a file to be read only, and never makes one: the error is ErrNone where there is none.
func ReadFile(ctx context.Context, file string) (Book, error) {
	if _, err := os.Stat(file); err != nil {
		if errors.Is(err, fs.ErrNotExist) {
			return nil, fmt.Errorf("%w: %s is not there yet", ErrNone, file)
		}
		return nil, err
	}
	s := &store{engine: sqlite, place: file, readOnly: "it was opened to be read"}
	var err error
	if s.read, err = sql.Open("sqlite", dsn(file, "ro", false)); err != nil {
		return nil, err
	}
	s.read.SetMaxOpenConns(4)
	v, err := s.version(ctx, s.read)
	if err != nil && !writable(filepath.Dir(file)) { // a folder in which SQLite cannot lay its own files beside
		_ = s.read.Close()
		if s.read, err = sql.Open("sqlite", dsn(file, "ro", false)+"&immutable=1"); err != nil {
			return nil, err
		}
		v, err = s.version(ctx, s.read)
	}
	switch {
	case err != nil:
		return nil, errors.Join(unreadable(file, "cannot be read as a book", err), s.Close())
	case v == 0:
		return nil, errors.Join(&Unreadable{plain.Line(file, 200), "is no book", nil}, s.Close())
	case v < Version: // look-ups need its newer tables: bring it up to date first
		_ = s.Close()
		return OpenFile(ctx, file)
	}
	s.backup = s.vacuumInto
	return s, nil
}

func writable(dir string) bool {
	f, err := os.CreateTemp(dir, ".book-*")
	if err != nil {
		return false
	}
	_ = f.Close()
	return os.Remove(f.Name()) == nil
}

// dsn is how the driver is told to open a file.
func dsn(file, mode string, writes bool) string {
	q := url.Values{"mode": {mode}, "_pragma": {"busy_timeout(5000)", "foreign_keys(1)"}}
	if writes {
		q["_pragma"] = append(q["_pragma"], "journal_mode(WAL)", "synchronous(FULL)", "cache_size(-32000)", "temp_store(MEMORY)", "wal_autocheckpoint(4000)")
		q.Set("_txlock", "immediate")
	}
	return "file:" + (&url.URL{Path: file}).EscapedPath() + "?" + q.Encode()
}

// prepare brings the file's tables to this program's version.
func (s *store) prepare(ctx context.Context, file string) error {
	v, err := s.version(ctx, s.write)
	switch {
	case err != nil:
		return unreadable(file, "cannot be used as a book", err)
	case v > Version:
		s.readOnly = fmt.Sprintf("a newer program wrote it (version %d, this one knows %d)", v, Version)
		return nil
	case v == Version:
		return nil
	case v == 0:
		var others int
		if err := s.write.QueryRowContext(ctx, "SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'").Scan(&others); err != nil {
			return err
		}
		if others > 0 {
			if now, err := s.version(ctx, s.write); err == nil && now == Version { // another program made it a moment ago
				return nil
			}
			return &Unreadable{plain.Line(file, 200), "cannot be used as a book: it is another program's database", nil}
		}
	case v > 0:
		copy := fmt.Sprintf("%s.before-version-%d.%s", file, v+1, time.Now().UTC().Format("20060102T150405"))
		if err := vacuum(ctx, s.write, copy); err != nil {
			return fmt.Errorf("no copy of the book before it is brought up to date: %w", err)
		}
	}
	return s.migrate(ctx, v, Version)
}

func (s *store) vacuumInto(ctx context.Context, file string) error {
	return vacuum(ctx, s.read, file)
}

// vacuum writes a copy of a database into a file that must not exist yet.
func vacuum(ctx context.Context, db *sql.DB, file string) error {
	return newfile.Make(file, func(temp string) error {
		if _, err := db.ExecContext(ctx, "VACUUM INTO ?", temp); err != nil {
			return err
		}
		return os.Chmod(temp, 0o600)
	})
}
