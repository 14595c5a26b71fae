package serve

import (
	"context"
	"io"
	"sync"
	"time"
)

// pace writes frames no faster than the line takes them. The buffers between a server and a terminal can hold a
// minute's data of a slow line; once they are full every key is shown a minute late. So now and then the client gets a
// request, which it answers after it has received everything sent before. While too many bytes are on their way the
// next frame waits. It is then drawn from the newest state of the screens: frames are skipped, keys are not.
type pace struct {
	ctx context.Context
	to  io.Writer
	ask func() error // returns when the client has answered

	limit   time.Duration // how long a frame may wait
	stalled func()        // called if it waits longer

	mu      sync.Mutex
	room    *sync.Cond
	sent    int64 // bytes
	arrived int64 // bytes that have certainly arrived
	asked   int64 // bytes sent before the last request
	asking  bool
	answers int
	speed   float64 // bytes a second, as last seen
	unasked bool    // the client does not answer: frames do not wait
	late    *time.Timer
}

const (
	leastAhead = 1 << 10  // most bytes on their way on the slowest line
	firstAhead = 6 << 10  // before the line's speed is known
	mostAhead  = 16 << 10 // on the fastest line
	quickAsk   = 4 << 10  // bytes between two requests on a fast line
	fast       = 200e3    // bytes a second above which a line counts as fast
	patience   = 10 * time.Second
)

func newPace(ctx context.Context, to io.Writer, ask func() error, limit time.Duration, stalled func()) *pace {
	p := &pace{ctx: ctx, to: to, ask: ask, limit: limit, stalled: stalled}
	p.room = sync.NewCond(&p.mu)
	context.AfterFunc(ctx, func() {
		p.mu.Lock()
		defer p.mu.Unlock()
		p.room.Broadcast()
		if p.late != nil {
			p.late.Stop() // a running timer keeps the session in memory
		}
	})
	return p
}

// Write waits until the line has room, and sends.
func (p *pace) Write(b []byte) (int, error) {
	if !p.await() {
		return 0, io.ErrClosedPipe
	}
	n, err := p.to.Write(b)
	p.mu.Lock()
	defer p.mu.Unlock()
	p.sent += int64(n)
	p.question()
	return n, err
}

// await waits until the line has room, and reports whether the client is still there.
func (p *pace) await() bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	full := func() bool { return !p.unasked && p.sent-p.arrived >= p.ahead() && p.ctx.Err() == nil }
	if full() {
		alarm := time.AfterFunc(p.limit, p.stalled)
		defer alarm.Stop()
	}
	for full() {
		p.room.Wait()
	}
	return p.ctx.Err() == nil
}

// ahead is how many bytes may be on their way: as many as the line carries in half a second.
func (p *pace) ahead() int64 {
	if p.answers == 0 {
		return firstAhead
	}
	return int64(max(leastAhead, min(mostAhead, p.speed/2)))
}

// question sends the client a request if none is unanswered; on a fast line only after quickAsk bytes. The caller holds
// the lock.
func (p *pace) question() {
	behind := p.sent - p.asked
	soon := p.answers > 0 && p.speed >= fast && behind < quickAsk
	if p.unasked || p.asking || behind == 0 || soon || p.ctx.Err() != nil {
		return
	}
	p.asking, p.asked = true, p.sent
	upTo, bytes, at := p.sent, p.sent-p.arrived, time.Now()
	if p.late == nil {
		p.late = time.AfterFunc(patience, p.giveUp)
	}
	go func() {
		err := p.ask()
		p.mu.Lock()
		defer p.mu.Unlock()
		p.asking = false
		if err != nil {
			return
		}
		p.answers++
		p.arrived = upTo
		p.speed = float64(bytes) / max(time.Since(at), 100*time.Microsecond).Seconds()
		p.question()
		p.room.Broadcast()
	}()
}

// giveUp stops waiting for a client that never answers; it still gets its frames.
func (p *pace) giveUp() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.answers == 0 {
		p.unasked = true
		p.room.Broadcast()
	}
}
