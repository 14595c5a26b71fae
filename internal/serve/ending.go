package serve

import (
	"context"
	"errors"
	"fmt"
	"io"
	"time"
)

// errOver is what screens read at the end of their input.
var errOver = errors.New("the input is over")

// tap brings keys to the screens and ends them. The library's reader of keys hands over every key that it read, also
// when nobody takes any more, and then waits for ever while it holds all of the session's memory. So the screens are
// ended by the end of their input, never before it: a reader at the end of its input has nothing to hand over.
type tap struct {
	*io.PipeReader
	in *io.PipeWriter
}

func newTap(from io.Reader) *tap {
	r, w := io.Pipe()
	go func() {
		_, _ = io.CopyBuffer(struct{ io.Writer }{w}, struct{ io.Reader }{from}, make([]byte, 512))
		_ = w.CloseWithError(errOver)
	}()
	return &tap{r, w}
}

// end lets the screens end, whether somebody types or not.
func (t *tap) end() { _ = t.in.CloseWithError(errOver) }

// patiently is the context of screens that end by their input: it ends a moment after ctx, for screens that hang.
func patiently(ctx context.Context) (context.Context, context.CancelFunc) {
	late, cancel := context.WithCancel(context.WithoutCancel(ctx))
	stop := context.AfterFunc(ctx, func() { time.AfterFunc(graceful, cancel) })
	return late, func() { stop(); cancel() }
}

// hurry ends a session that was asked to leave and does not: the guest's client may no longer read. A client that
// still answers the end of a channel keeps its other sessions.
func (x *session) hurry() {
	time.AfterFunc(graceful, func() {
		x.life.end(context.Cause(x.asked))
		x.life.mustEnd()
		if x.life.out.waits() {
			_ = x.life.wire.Close() // no exit code: it might say that nothing was kept where something was
		}
	})
}

// tell sends a last line to the guest. At a terminal it goes through the screens' output, so that it comes after them.
func (x *session) tell(why error) {
	var to io.Writer = x.Stderr()
	if _, _, terminal := x.Pty(); terminal {
		to = x
	}
	inTime(graceful, func() { _, _ = fmt.Fprintf(to, "brazebooth: %v\n", why) }) // a client may take nothing
}

// heardOut waits a moment until the client has closed its side too: then it has the exit code. Closing before that
// may lose what was sent last.
func (x *session) heardOut() {
	select {
	case <-x.life.over:
	case <-time.After(graceful):
	}
}
