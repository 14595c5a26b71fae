package book

import (
	"context"
	"database/sql"
	"errors"
	"os"

	sqlite3 "modernc.org/sqlite/lib"

	"brazebooth/internal/newfile"
	"brazebooth/internal/plain"
)

func (s *store) Backup(ctx context.Context, file string) error {
	if s.name == sqlite.name {
		return s.copyFile(ctx, file)
	}
	return s.copyInto(ctx, file)
}

// copyFile copies a book's file as it is and checks the copy. If something is wrong with it, or the book cannot be read
// completely, it makes a new copy of what can be read; the error, a *Missing, then says what is not in it.
func (s *store) copyFile(ctx context.Context, file string) error {
	err := newfile.Make(file, func(temp string) error {
		if err := vacuum(ctx, s.read, temp); err != nil {
			return err
		}
		return proved(ctx, temp)
	})
	if unreadablePage(err) || sqliteCode(err) == sqlite3.SQLITE_ERROR {
		return s.copyInto(ctx, file)
	}
	return err
}

// proved checks a copy. A copy of a newer program's book cannot be checked.
func proved(ctx context.Context, file string) error {
	s, v, err := inspect(ctx, file)
	if err != nil {
		return err
	}
	if v < oldest || v > Version {
		return s.Close()
	}
	f := new(faults)
	_, err = s.check(ctx, f)
	if err == nil && f.N > f.gaps {
		err = &Unreadable{Place: plain.Line(file, 200), What: "is damaged: " + f.Lines[0], part: true}
	}
	return errors.Join(err, s.Close())
}

// vacuum writes a copy of a database into a file that must not exist yet.
func vacuum(ctx context.Context, db *sql.DB, file string) error {
	return newfile.Make(file, func(temp string) error {
		if _, err := db.ExecContext(ctx, "VACUUM INTO $1", plainName(temp)); err != nil {
			return err
		}
		return os.Chmod(temp, 0o600)
	})
}

// copyInto makes a new SQLite book of every revision that can be read; the error is a *Missing if some cannot.
func (s *store) copyInto(ctx context.Context, file string) error {
	var lost *Missing
	err := newfile.Make(file, func(temp string) error {
		to, err := OpenFile(ctx, temp)
		if err == nil {
			_, err = Merge(ctx, to, s)
			if errors.As(err, &lost) {
				err = nil // a partial copy is still useful
			}
			err = errors.Join(err, to.Close())
		}
		for _, own := range [...]string{"-wal", "-shm"} { // there only if the copy failed
			_ = os.Remove(temp + own)
		}
		return err
	})
	if err != nil || lost == nil {
		return err
	}
	return lost
}
