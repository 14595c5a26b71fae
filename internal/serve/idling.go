package serve

import (
	"sync"
	"time"
)

// idling does something when nothing was heard for a while. A byte that comes after its stop does not start it again,
// as it would start a timer: that kept every session whose client typed to the last for half an hour more.
type idling struct {
	mu      sync.Mutex
	after   time.Duration
	timer   *time.Timer
	stopped bool
}

func newIdling(after time.Duration, do func()) *idling {
	return &idling{after: after, timer: time.AfterFunc(after, do)}
}

// heard notes that the guest did something.
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
