package book

import (
	"context"
	"errors"
	"net"
	"os"
	"strings"

	"github.com/jackc/pgx/v5/pgconn"

	"brazebooth/internal/address"
)

// SaveOr saves revisions into a book. If the book's server cannot be reached, before the save or during it, the same
// revisions go into the local file named by beside, to be merged later: a revision that did reach the server is not
// doubled then. kept is that file, or "" if the book itself saved them; the error means that they were saved nowhere.
func SaveOr(ctx context.Context, where, beside string, list ...Revision) (kept string, err error) {
	err = saveInto(ctx, where, list)
	if err == nil || !address.Server(where) || beside == "" || errors.Is(err, ErrReadOnly) || !Away(ctx, where) {
		return "", err
	}
	if localErr := saveInto(ctx, beside, list); localErr != nil {
		return "", errors.Join(err, localErr)
	}
	return beside, nil
}

func saveInto(ctx context.Context, where string, list []Revision) error {
	b, err := Open(ctx, where)
	if err != nil {
		return err
	}
	err = b.Save(ctx, list...)
	if closing := b.Close(); err != nil {
		err = errors.Join(err, closing)
	}
	return err // a failure to close does not undo a save
}

// Away reports whether a server does not answer now.
func Away(ctx context.Context, where string) bool {
	b, err := Read(ctx, where)
	if err != nil {
		return silent(err)
	}
	_ = b.Close()
	return false
}

// silent reports whether an error means that a server cannot be reached, or cannot serve now. A server that refuses a
// password or lacks a database can be reached.
func silent(err error) bool {
	var refused *pgconn.PgError
	if errors.As(err, &refused) {
		return strings.HasPrefix(refused.Code, "57P") || refused.Code == "53300"
	}
	var connect *pgconn.ConnectError
	var network net.Error
	return errors.As(err, &connect) || errors.As(err, &network) || errors.Is(err, context.DeadlineExceeded)
}

// Rescue writes revisions that could not be saved, such as on a full disk, into a new file in the temporary folder. It
// is an export that Import can read.
func Rescue(list ...Revision) (file string, err error) {
	f, err := os.CreateTemp("", "brazebooth-unsaved-*.jsonl")
	if err != nil {
		return "", err
	}
	defer func() {
		if err != nil {
			_ = os.Remove(f.Name())
		}
	}()
	for _, r := range list {
		if err := writeLine(f, r); err != nil {
			return "", errors.Join(err, f.Close())
		}
	}
	return f.Name(), errors.Join(f.Sync(), f.Close())
}
