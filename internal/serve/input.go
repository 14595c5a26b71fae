package serve

import (
	"context"
	"io"
	"time"

	"golang.org/x/time/rate"
)

// input is a terminal's input: no faster than allowed, and without what the key reader would have to store (guard.go).
// No key is lost, only the excess of a paste.
type input struct {
	ctx   context.Context
	from  io.Reader
	speed *rate.Limiter
	guard guard

	raw   [1024]byte
	ready []byte // filtered and not yet read
	err   error  // the reading error after ready
}

const (
	burst = 8 << 10                // bytes that may come at once before the rate counts
	light = 64                     // so many dropped bytes count as one
	pause = 250 * time.Millisecond // how long to wait for the rest of a sequence; the key reader waits 50 ms
)

func newInput(ctx context.Context, from io.Reader, s *Settings) *input {
	return &input{ctx: ctx, from: from, speed: rate.NewLimiter(rate.Limit(s.InputRate), burst),
		guard: guard{most: s.Paste}}
}

func (i *input) Read(p []byte) (int, error) {
	for len(i.ready) == 0 {
		if i.err != nil {
			return 0, i.err
		}
		begin := time.Now()
		n, err := i.from.Read(i.raw[:])
		i.err = err
		if n == 0 {
			continue
		}
		if time.Since(begin) > pause {
			i.guard.rest()
		}
		i.ready = i.guard.sift(i.ready[:0], i.raw[:n])
		if late := i.speed.WaitN(i.ctx, len(i.ready)+(n+light-1)/light); late != nil {
			return 0, io.EOF
		}
	}
	n := copy(p, i.ready)
	i.ready = i.ready[n:]
	return n, nil
}
