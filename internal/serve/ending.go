package serve

import (
	"context"
	"errors"
	"fmt"
	"io"
	"time"
)

// errOver is the error that the screens read at the end of their input.
var errOver = errors.New("the input is over")

// tap passes keys to the screens and ends them. The library's key reader passes on every key that it has read, even
// when nobody takes keys any more; it then blocks for ever and keeps the session's memory. So the screens are ended
// only by the end of their input, after which the reader has nothing to pass on.
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

// end ends the input, and with it the screens.
func (t *tap) end() { _ = t.in.CloseWithError(errOver) }

// patiently is the context of screens that end by their input: it ends a moment after ctx, in case the screens hang.
func patiently(ctx context.Context) (context.Context, context.CancelFunc) {
	late, cancel := context.WithCancel(context.WithoutCancel(ctx))
	stop := context.AfterFunc(ctx, func() { time.AfterFunc(graceful, cancel) })
	return late, func() { stop(); cancel() }
}

// hurry ends a session that was asked to leave and does not, because its client may no longer read. A client that still
// answers the end of a channel keeps its other sessions.
func (x *session) hurry() {
	time.AfterFunc(graceful, func() {
		x.life.end(context.Cause(x.life.asked))
		x.life.mustEnd()
		if x.life.out.waits() {
			_ = x.life.wire.Close() // no exit code, which might be wrong about what was saved
		}
	})
}

// tell sends a last line to the guest. At a terminal it goes through the screens' output, so that it comes after them.
func (x *session) tell(why error) {
	var to io.Writer = x.Stderr()
	if _, _, terminal := x.Pty(); terminal {
		to = x
	}
	inTime(graceful, func() { _, _ = fmt.Fprintf(to, "brazebooth: %v\n", why) }) // the client may not read
}

// heardOut waits a moment until the client has closed its side too: then it has the exit code. Closing earlier may lose
// the last output.
func (x *session) heardOut() {
	select {
	case <-x.life.over:
	case <-time.After(graceful):
	}
}
