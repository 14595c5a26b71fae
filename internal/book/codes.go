package book

import (
	"context"
	"errors"
	"math/rand/v2"
	"time"

	sqlite3 "modernc.org/sqlite/lib"
)

// sqliteCode is the primary result code of an error of SQLite (sqlite.org/rescode.html), 0 for any other error.
func sqliteCode(err error) int {
	var coded interface{ Code() int }
	if errors.As(err, &coded) {
		return coded.Code() & 0xff
	}
	return 0
}

// unwritable reports whether an error comes from a file or a disk that cannot be written.
func unwritable(err error) bool {
	switch sqliteCode(err) {
	case sqlite3.SQLITE_PERM, sqlite3.SQLITE_READONLY, sqlite3.SQLITE_IOERR, sqlite3.SQLITE_FULL,
		sqlite3.SQLITE_CANTOPEN:
		return true
	}
	return false
}

// unreadablePage reports whether an error comes from damage on the disk, so that the undamaged rest may still be
// readable.
func unreadablePage(err error) bool {
	switch sqliteCode(err) {
	case sqlite3.SQLITE_IOERR, sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB:
		return true
	}
	var damaged *Unreadable
	return errors.As(err, &damaged)
}

// crowded reports whether an error is a lock of somebody else, which will pass. SQLite itself waits for most locks, but
// not for those of a book that is being created.
func crowded(err error) bool {
	code := sqliteCode(err)
	return code == sqlite3.SQLITE_BUSY || code == sqlite3.SQLITE_LOCKED
}

// longestTurn is how long to retry while others hold locks; SQLite itself waits up to 5 s at a time.
const longestTurn = 15 * time.Second

// patiently retries while others hold locks.
func patiently(ctx context.Context, do func() error) error {
	begin := time.Now()
	for n := 1; ; n++ {
		err := do()
		if err == nil || !crowded(err) || time.Since(begin) > longestTurn {
			return err
		}
		select {
		case <-time.After(time.Duration(5+rand.IntN(min(20*n, 200))) * time.Millisecond):
		case <-ctx.Done():
			return ctx.Err()
		}
	}
}

// leastRoom is how many bytes a disk must have left not to count as full: SQLite's shared memory takes 32 kB, and a
// save several pages more.
const leastRoom = 64 << 10
