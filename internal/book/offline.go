package book

import (
	"context"
	"errors"
	"fmt"
)

// SaveOr runs a saving on a book; where that is on a server that is away, before it or in the middle of it, the saving is
// done again in a file beside, which merges later: a revision that did reach the server is then there once. It returns
// the file, "" where the book itself took it. What cannot be saved anywhere is an error.
func SaveOr(ctx context.Context, where, beside string, save func(Book) error) (kept string, err error) {
	b, err := Open(ctx, where)
	if err == nil {
		err = errors.Join(save(b), b.Close())
	}
	if err == nil || !IsServer(where) || beside == "" || errors.Is(err, ErrReadOnly) || errors.Is(err, ErrNone) || !away(ctx, where) {
		return "", err
	}
	local, openErr := OpenFile(ctx, beside)
	if openErr != nil {
		return "", errors.Join(err, openErr)
	}
	if err := errors.Join(save(local), local.Close()); err != nil {
		return "", err
	}
	return beside, nil
}

// away reports whether a server does not answer now.
func away(ctx context.Context, where string) bool {
	b, err := Read(ctx, where)
	if err != nil {
		return true
	}
	_ = b.Close()
	return false
}

// Told says of what was kept beside what to do when the server is back.
func Told(kept string) string {
	if kept == "" {
		return ""
	}
	return fmt.Sprintf("the server of the book does not answer: kept in %s; when it is back: brazebooth book merge %s", kept, kept)
}
