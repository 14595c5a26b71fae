package serve

import (
	"bufio"
	"context"
	"errors"
	"io"

	"charm.land/ssh"

	"brazebooth/internal/crew"
)

// command answers one command and returns its exit code.
func (s *server) command(x *session) int {
	args, whole := split(x.RawCommand())
	if !whole {
		x.tell(errors.New("a quotation mark is open: close it"))
		return 2
	}
	return s.answer(x, args)
}

// answer runs a command. At a terminal keys become lines, and each line feed gets a carriage return.
func (s *server) answer(x *session, args []string) int {
	in := crew.Reader(x.life.asked, heard{x}) // a command that waits for input ends when its guest is asked to leave
	var below io.Writer = heard{x}
	if _, _, terminal := x.Pty(); terminal {
		below = ssh.NewPtyWriter(below)
		keys := newInput(x.life, heard{x}, &s.Settings)
		in = newLineInput(newAhead(x.life.asked, keys, func() { x.life.leave(errStopped) }), below)
	}
	out := bufio.NewWriterSize(below, 32<<10)
	code := s.deps.Command(x.life.asked, x.guest, s.book, args, in, out, x.Stderr())
	if out.Flush() != nil && code == 0 {
		return 1
	}
	cause := context.Cause(x.life.asked)
	if cause == nil || code == 0 && !x.talk { // it finished although its guest was asked to leave
		return code
	}
	if !errors.Is(cause, errGone) && !errors.Is(cause, errStopped) {
		x.tell(cause)
	}
	return max(code, 1)
}

// heard is a session's input and output; every byte restarts its idle time.
type heard struct{ x *session }

func (h heard) Read(p []byte) (int, error) {
	n, err := h.x.Read(p)
	if n > 0 {
		h.x.idle.heard()
	}
	return n, err
}

func (h heard) Write(p []byte) (int, error) {
	n, err := h.x.Write(p)
	h.x.idle.heard()
	return n, err
}
