package serve

import (
	"bufio"
	"context"
	"errors"
	"io"

	"charm.land/ssh"
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

// plain asks and answers line by line, for a terminal that cannot place text.
func (s *server) plain(x *session) int {
	return s.answer(x, []string{"--plain"})
}

// answer carries out a command. At a terminal keys become lines, and each line feed gets a carriage return.
func (s *server) answer(x *session, args []string) int {
	var in io.Reader = heardReader{x}
	var below io.Writer = heardWriter{x}
	if _, _, terminal := x.Pty(); terminal {
		below = ssh.NewPtyWriter(below)
		in = newLineInput(newAhead(x.asked, newInput(x.life, x, &s.Settings, x.heard), func() { x.leave(errStopped) }), below)
	}
	out := bufio.NewWriterSize(below, 32<<10)
	code := s.deps.Command(x.asked, x.guest, s.book, args, in, out, x.Stderr())
	if out.Flush() != nil && code == 0 {
		return 1
	}
	cause := context.Cause(x.asked)
	if cause == nil || code == 0 && !x.talk { // it was done, though its guest was asked to leave
		return code
	}
	if !errors.Is(cause, errGone) && !errors.Is(cause, errStopped) {
		x.tell(cause)
	}
	return max(code, 1)
}

// heardReader and heardWriter keep a command's session awake while bytes move. When a guest is asked to leave,
// reading ends, so a command that waits for input ends too.
type heardReader struct{ x *session }

func (r heardReader) Read(p []byte) (int, error) {
	type piece struct {
		text []byte
		err  error
	}
	came := make(chan piece, 1)
	go func() {
		b := make([]byte, min(len(p), 32<<10))
		n, err := r.x.Read(b)
		came <- piece{b[:n], err}
	}()
	select {
	case c := <-came:
		r.x.heard()
		return copy(p, c.text), c.err
	case <-r.x.asked.Done():
		return 0, context.Cause(r.x.asked)
	}
}

type heardWriter struct{ x *session }

func (w heardWriter) Write(p []byte) (int, error) {
	n, err := w.x.Write(p)
	w.x.heard()
	return n, err
}
