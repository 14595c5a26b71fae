package serve

import (
	"bytes"
	"cmp"
	"context"
	"io"
	"sync/atomic"
)

// ahead reads a terminal's keys while a command runs, as a local terminal does: keys typed meanwhile wait for a reader.
// Ctrl+c stops a command that is not reading; a command that reads gets it like any other key.
type ahead struct {
	ctx     context.Context
	keys    chan byte
	err     error // the reading error after the last key
	reading atomic.Bool
}

const (
	ctrlC = 0x03
	// mostKept is how many bytes are read ahead; more than that waits at the client.
	mostKept = 4 << 10
)

// newAhead reads until the input or ctx ends.
func newAhead(ctx context.Context, from io.Reader, stop func()) *ahead {
	a := &ahead{ctx: ctx, keys: make(chan byte, mostKept)}
	go a.fill(from, stop)
	return a
}

func (a *ahead) fill(from io.Reader, stop func()) {
	defer close(a.keys)
	b := make([]byte, 256)
	for a.err == nil {
		var n int
		n, a.err = from.Read(b)
		if !a.reading.Load() && bytes.IndexByte(b[:n], ctrlC) >= 0 {
			stop()
		}
		for _, key := range b[:n] {
			select {
			case a.keys <- key:
			case <-a.ctx.Done():
				return
			}
		}
	}
}

func (a *ahead) Read(p []byte) (n int, err error) {
	a.reading.Store(true)
	defer a.reading.Store(false)
	there := true
	select {
	case p[0], there = <-a.keys:
	default:
		select {
		case p[0], there = <-a.keys:
		case <-a.ctx.Done():
			return 0, context.Cause(a.ctx)
		}
	}
	if !there {
		return 0, cmp.Or(a.err, context.Cause(a.ctx))
	}
	for n = 1; n < len(p) && len(a.keys) > 0; n++ {
		p[n] = <-a.keys
	}
	return n, nil
}
