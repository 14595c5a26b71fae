package serve

import (
	"io"
	"sync"
	"sync/atomic"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

// outlet writes a session's output to its client. A client may not read its output: its SSH window stays closed, or
// opens by a byte at a time, or its connection accepts nothing. A writer would then wait for ever, holding a seat, an
// answer and perhaps a query. So the writes of a session, on both streams together, may be late only by a limit.
type outlet struct {
	gossh.Channel
	limit   time.Duration
	stalled func() // called when a write is too late; may be called again

	waiting atomic.Int32 // how many writes wait for the client
	mu      sync.Mutex
	late    time.Duration // how far behind the slowest allowed rate, at the last finished write
}

const (
	// slowest is the least bytes a second that a client must read; every line that people work on is faster.
	slowest = 500
	// piece is how many bytes are timed at once: so few that even the slowest client reads them well within any
	// sensible limit.
	piece = 4 << 10
)

func (o *outlet) Write(p []byte) (int, error) { return o.pass(o.Channel, p) }

// Stderr is the second stream, under the same limit.
func (o *outlet) Stderr() io.ReadWriter {
	side := o.Channel.Stderr()
	return struct {
		io.Reader
		io.Writer
	}{side, writes(func(p []byte) (int, error) { return o.pass(side, p) })}
}

func (o *outlet) SendRequest(name string, wantReply bool, payload []byte) (ok bool, err error) {
	err = o.timed(0, func() error {
		ok, err = o.Channel.SendRequest(name, wantReply, payload)
		return err
	})
	return ok, err
}

func (o *outlet) Close() error { return o.timed(0, o.Channel.Close) }

func (o *outlet) CloseWrite() error { return o.timed(0, o.Channel.CloseWrite) }

func (o *outlet) pass(to io.Writer, p []byte) (n int, err error) {
	for len(p) > 0 && err == nil {
		next := p[:min(len(p), piece)]
		err = o.timed(len(next), func() error {
			sent, err := to.Write(next)
			n += sent
			return err
		})
		p = p[len(next):]
	}
	return n, err
}

// timed calls do, which sends n bytes and may wait for the client, and measures how late it is. A client at the slowest
// rate or above is not late.
func (o *outlet) timed(n int, do func() error) error {
	o.mu.Lock()
	left := o.limit - o.late
	o.mu.Unlock()
	o.waiting.Add(1)
	defer o.waiting.Add(-1)
	alarm := time.AfterFunc(left, o.stalled)
	begin := time.Now()
	err := do()
	alarm.Stop()
	o.mu.Lock()
	defer o.mu.Unlock()
	o.late = max(0, o.late+time.Since(begin)-time.Duration(n)*time.Second/slowest)
	return err
}

// waits reports whether a write waits for the client now.
func (o *outlet) waits() bool { return o.waiting.Load() > 0 }

type writes func(p []byte) (int, error)

func (w writes) Write(p []byte) (int, error) { return w(p) }
