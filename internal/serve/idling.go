package serve

import (
	"sync"
	"time"
)

// idling calls a function when nothing was heard for a while. Unlike a timer it is not restarted by a byte that comes
// after stop, which would keep the session in memory until the idle time is over.
type idling struct {
	mu      sync.Mutex
	after   time.Duration
	timer   *time.Timer
	stopped bool
}

func newIdling(after time.Duration, do func()) *idling {
	return &idling{after: after, timer: time.AfterFunc(after, do)}
}

func (i *idling) heard() {
	i.mu.Lock()
	defer i.mu.Unlock()
	if !i.stopped {
		i.timer.Reset(i.after)
	}
}

func (i *idling) stop() {
	i.mu.Lock()
	defer i.mu.Unlock()
	i.stopped = true
	i.timer.Stop()
}
