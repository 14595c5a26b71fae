package program

import (
	"context"
	"errors"
	"io/fs"
	"net"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"syscall"

	"brazebooth/internal/book"
	"brazebooth/internal/quantity"
)

// Words for a guest of the server, who is told what is wrong and not what this machine's folders, users and hosts are called.
const (
	serversBook = "the server's book"
	notNow      = "the server's book or its machine cannot do that now; who runs the server finds the reason in its log"
	noRoom      = "the disk under the server's book is full, and nothing was kept; who runs the server is to make room"
)

// guestWords is what guests of the book at where are told of errors; fault takes an error whole that was told in other words.
type guestWords struct {
	where string
	fault func(error)
}

// told is what and hint in words for a guest; typed where they are about what the guest typed.
func (g guestWords) told(err error, what, hint string, typed bool) (string, string) {
	safe, ok := g.safe(err, what, typed)
	safeHint, okHint := g.safe(err, hint, typed)
	if safe == what && safeHint == hint && ok {
		return what, hint
	}
	if g.fault != nil && !errors.Is(err, context.Canceled) {
		g.fault(err)
	}
	if !ok || !okHint {
		return general(err), ""
	}
	return safe, safeHint
}

// err is told for an error of the screens.
func (g guestWords) err(err error) error {
	var typed *quantity.Error
	switch {
	case err == nil, errors.As(err, &typed):
		return err
	case errors.Is(err, book.ErrNone) && strings.Contains(err.Error(), g.where):
		return book.ErrNone
	}
	if what, _ := g.told(err, err.Error(), "", false); what != err.Error() {
		return errors.New(what)
	}
	return err
}

func general(err error) string {
	if errors.Is(err, syscall.ENOSPC) || strings.Contains(err.Error(), "disk is full") {
		return noRoom
	}
	return notNow
}

var serverAddress = regexp.MustCompile(`(?i)postgres(ql)?://\S*`)

// safe is a text with the book called by what it is to a guest; not ok where it says more of this machine.
func (g guestWords) safe(err error, text string, typed bool) (string, bool) {
	if ofTheMachine(err) {
		return "", false
	}
	var bad *book.Unreadable
	if errors.As(err, &bad) {
		text = strings.ReplaceAll(text, bad.Place, serversBook)
	}
	if !typed || errors.Unwrap(err) != nil {
		text = strings.ReplaceAll(serverAddress.ReplaceAllString(text, serversBook), g.where, serversBook)
	}
	for _, folder := range g.folders() {
		if !typed && strings.Contains(text, folder) {
			return "", false
		}
	}
	return text, true
}

// folders are those that no guest is to hear of.
func (g guestWords) folders() (list []string) {
	home, _ := os.UserHomeDir()
	for _, f := range [...]string{filepath.Dir(g.where), inData(""), os.TempDir(), home} {
		if len(f) > 1 {
			list = append(list, f)
		}
	}
	return list
}

// ofTheMachine reports an error of the system, the network or a database's server: these say where and who in words of their own.
func ofTheMachine(err error) bool {
	if errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded) && errors.Unwrap(err) == nil {
		return false
	}
	var path *fs.PathError
	var link *os.LinkError
	var call *os.SyscallError
	var number syscall.Errno
	var network net.Error
	var server interface{ SQLState() string }
	return errors.As(err, &path) || errors.As(err, &link) || errors.As(err, &call) || errors.As(err, &number) || errors.As(err, &network) || errors.As(err, &server)
}
