package serve

import (
	"bytes"
	"context"
	"io"
	"sync"
)

// ahead reads a terminal's keys while a command is at work, as a local terminal does: what is typed meanwhile waits
// for a reader. Ctrl+c stops a command that is not reading; a command that reads gets it like any key.
type ahead struct {
	mu      sync.Mutex
	changed *sync.Cond
	kept    []byte
	err     error // what comes after the kept keys
	reading bool
}

const (
	ctrlC = 0x03
	// mostKept is how much is read ahead; more than that waits at the client.
	mostKept = 4 << 10
)

// newAhead reads from keys until they or ctx end.
func newAhead(ctx context.Context, keys io.Reader, stop func()) *ahead {
	a := new(ahead)
	a.changed = sync.NewCond(&a.mu)
	context.AfterFunc(ctx, func() { a.end(context.Cause(ctx)) })
	go func() {
		b := make([]byte, 256)
		for {
			n, err := keys.Read(b)
			if a.take(b[:n]) {
				stop()
			}
			if err != nil {
				a.end(err)
				return
			}
		}
	}()
	return a
}

// take keeps what was typed, and reports whether it has a ctrl+c while nobody reads.
func (a *ahead) take(keys []byte) (stop bool) {
	a.mu.Lock()
	defer a.mu.Unlock()
	stop = !a.reading && bytes.IndexByte(keys, ctrlC) >= 0
	a.kept = append(a.kept, keys...)
	a.changed.Broadcast()
	for len(a.kept) > mostKept && a.err == nil {
		a.changed.Wait()
	}
	return stop
}

func (a *ahead) end(err error) {
	a.mu.Lock()
	defer a.mu.Unlock()
	if a.err == nil {
		a.err = err
	}
	a.changed.Broadcast()
}

func (a *ahead) Read(p []byte) (int, error) {
	a.mu.Lock()
	defer a.mu.Unlock()
	a.reading = true
	for len(a.kept) == 0 && a.err == nil {
		a.changed.Wait()
	}
	a.reading = false
	if len(a.kept) == 0 {
		return 0, a.err
	}
	n := copy(p, a.kept)
	a.kept = a.kept[n:]
	a.changed.Broadcast()
	return n, nil
}
