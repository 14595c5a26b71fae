package shop

import (
	"context"
	"errors"
	"path/filepath"
	"reflect"
	"slices"
	"strings"

	"brazebooth/internal/address"
	"brazebooth/internal/book"
	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
)

const (
	serversBook = "the server's book"
	askServer   = "ask who runs the server: brazebooth doctor and brazebooth book check say more there"
)

// Unusable tells a guest that the server's book cannot be used, without the reason.
func Unusable(err error) error { return &Failure{serversBook + " cannot be used", askServer, err} }

// GuestError is an error in words for a user at another machine, without paths, users and hosts of this one; where is
// the book's place. Of an error by the system or a library it tells only the kind.
func GuestError(err error, where string) error {
	var could *Failure
	var bad *book.Unreadable
	switch m := mistake.Of(err); {
	case err == nil:
		return nil
	case m != nil:
		hint := unplaced(m.Hint, where)
		if strings.HasPrefix(m.What, book.ErrReadOnly.Error()) {
			hint = askServer
		}
		return mistake.In(m.Field, unplaced(m.What, where), hint)
	case foreign(err):
		return &Failure{serversBook + " cannot be used now: " + book.Hindrance(err), askServer, err}
	case errors.As(err, &bad), errors.Is(err, address.ErrBad):
		return Unusable(err)
	case errors.As(err, &could):
		return &Failure{unplaced(could.What, where), unplaced(could.Hint, where), err}
	case errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded):
		return err
	}
	return errors.New(unplaced(err.Error(), where))
}

// ToldGuest is GuestError; fault receives the original error if its words are different, unless only the context was
// cancelled.
func ToldGuest(err error, where string, fault func(error)) error {
	told := GuestError(err, where)
	if err != nil && fault != nil && told.Error() != err.Error() && !errors.Is(err, context.Canceled) {
		fault(err)
	}
	return told
}

// foreign reports whether an error contains one that this program did not write, of the system or a database. Errors of
// the packages below only quote what was typed.
func foreign(err error) bool {
	switch many := err.(type) {
	case nil:
		return false
	case interface{ Unwrap() []error }:
		for _, e := range many.Unwrap() {
			if foreign(e) {
				return true
			}
		}
		return false
	}
	t := reflect.TypeOf(err)
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	room, _, _ := strings.Cut(t.PkgPath(), "/")
	if slices.Contains([]string{"errors", "fmt", "context", "encoding", "strconv", "brazebooth"}, room) {
		return foreign(errors.Unwrap(err))
	}
	return true
}

// unplaced replaces the book's place, its folder, and servers' addresses in a text.
func unplaced(text, where string) string {
	if !address.Looks(where) && where != "" {
		for _, place := range []string{where, filepath.Clean(where), plain.Line(where, 200)} {
			text = strings.ReplaceAll(text, place, serversBook)
		}
		if dir := filepath.Dir(where); len(dir) > 1 {
			text = strings.ReplaceAll(text, dir, "its folder")
		}
	}
	words := strings.Split(text, " ")
	for i, word := range words {
		if address.Server(strings.TrimLeft(word, "\"'`(")) && !strings.Contains(word, "user@host/") {
			words[i] = serversBook
		}
	}
	return strings.Join(words, " ")
}
