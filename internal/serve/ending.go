package serve

import (
	"context"
	"errors"
	"io"
	"time"
)

// errOver is what screens read when their input is at its end.
var errOver = errors.New("the input is over")

// tap brings keys to the screens and is what ends them. The library's reader of keys hands over every key that it read, also
// when nobody takes any more, and then waits for ever with all of the session's memory in its hand. So the screens end by
// the end of their input, never before it: what is at its end has nothing to hand over.
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
