package serve

import (
	"bufio"
	"errors"

	"context"
)

// command answers one command and returns its exit code.
func (s *server) command(x *session) int {
	_, resized, terminal := x.Pty()
	if terminal {
		go func() { // the library holds its requests until these are taken
			for range resized {
			}
		}()
	}
	args, whole := split(x.RawCommand())
	if !whole {
		x.tell(errors.New("a quotation mark is open: close it"))
		return 2
	}
	out := bufio.NewWriterSize(heardWriter{x}, 32<<10)
	code := s.deps.Command(x.asked, x.guest, s.book, args, heardReader{x}, out, x.Stderr())
	if out.Flush() != nil && code == 0 {
		return 1
	}
	if cause := context.Cause(x.asked); cause != nil && !errors.Is(cause, errGone) {
		x.tell(cause)
		return 1
	}
	return code
}

// heardReader and heardWriter keep a command's session awake while something moves.
type heardReader struct{ x *session }

func (r heardReader) Read(p []byte) (int, error) {
	n, err := r.x.Read(p)
	r.x.heard()
	return n, err
}

type heardWriter struct{ x *session }

func (w heardWriter) Write(p []byte) (int, error) {
	n, err := w.x.Write(p)
	w.x.heard()
	return n, err
}
