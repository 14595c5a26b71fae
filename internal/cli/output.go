package cli

import (
	"errors"
	"io"
	"io/fs"
	"syscall"

	"brazebooth/internal/plain"
)

// outlet is standard output that remembers what went wrong with it: help and completion scripts are printed by a library that
// does not ask. Behind a fault nothing more is written, so that no piece is missing from the middle.
type outlet struct {
	w   io.Writer
	err error
}

func (o *outlet) Write(p []byte) (int, error) {
	if o.err != nil {
		return 0, o.err
	}
	n, err := o.w.Write(p)
	if err == nil && n < len(p) {
		err = io.ErrShortWrite
	}
	o.err = err
	return n, err
}

// unwritten says of an answer that could not be written, or not whole, why. A reader that has read enough and left, as head
// does, is told nothing.
func unwritten(err error) error {
	if errors.Is(err, syscall.EPIPE) || errors.Is(err, io.ErrClosedPipe) {
		return errUnread
	}
	var at *fs.PathError
	if errors.As(err, &at) {
		err = at.Err
	}
	return failed("the answer could not be written whole: "+plain.Line(err.Error(), 100), "lead it into a file on a disk with room, or to a reader that stays until its end", err)
}

// errUnread is an answer whose reader left: the exit code alone tells.
var errUnread = errors.New("nobody reads the answer")
