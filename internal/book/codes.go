package book

import (
	"context"
	"errors"
	"math/rand/v2"
	"time"
)

// How SQLite calls what went wrong: the last byte of its result codes (sqlite.org/rescode.html).
const (
	otherTables  = 1 // a statement that does not suit the tables
	notAllowed   = 3
	busy         = 5
	locked       = 6
	readOnlyFile = 8
	ioError      = 10
	corrupt      = 11
	fullDisk     = 13
	cannotOpen   = 14
	notADatabase = 26
)

// sqliteCode is the primary result code of an error of SQLite, 0 for any other error.
func sqliteCode(err error) int {
	var coded interface{ Code() int }
	if errors.As(err, &coded) {
		return coded.Code() & 0xff
	}
	return 0
}

// unreadablePage reports an error that comes of what lies on the disk, so that what lies elsewhere may be had still.
func unreadablePage(err error) bool {
	switch sqliteCode(err) {
	case ioError, corrupt, notADatabase:
		return true
	}
	var damaged *Unreadable
	return errors.As(err, &damaged)
}

// errMeanwhile is what one of several finds who make or migrate a book at the same time.
var errMeanwhile = errors.New("another program makes or migrates this book just now: try again")

// crowded reports an error that is over when others have had their turn. SQLite waits by itself for most locks, but not
// for those of a book that is being made.
func crowded(err error) bool {
	code := sqliteCode(err)
	return code == busy || code == locked || errors.Is(err, errMeanwhile)
}

// longestTurn is how long somebody tries who waits for others; SQLite itself waits for 5 s of it at a time.
const longestTurn = 15 * time.Second

// patiently tries again what others stand in the way of.
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

// leastRoom is how many bytes a disk must have left not to be called full: SQLite's shared memory takes 32 kB, and a
// saving several pages more.
const leastRoom = 64 << 10
