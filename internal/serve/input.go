package serve

import (
	"context"
	"io"
	"time"

	"golang.org/x/time/rate"
)

// input is what a terminal sends: not faster than it may, and nothing that the reader of keys behind it would have to hoard
// (guard.go). A key is never lost, only what is too much of a paste.
type input struct {
	ctx   context.Context
	from  io.Reader
	speed *rate.Limiter
	guard guard
	heard func() // called for whatever comes

	raw   [1024]byte
	ready []byte // sifted and not yet taken
	err   error  // what comes after that
}

const (
	burst = 8 << 10                // how many bytes may come at once before the rate counts
	light = 64                     // so many bytes that are left out count as one that stays
	pause = 250 * time.Millisecond // after so long nobody waits for the rest of a sequence; the reader of keys waits 50 ms
)

func newInput(ctx context.Context, from io.Reader, s *Settings, heard func()) *input {
	return &input{ctx: ctx, from: from, speed: rate.NewLimiter(rate.Limit(s.InputRate), burst), guard: guard{most: s.Paste}, heard: heard}
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
		i.heard()
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
