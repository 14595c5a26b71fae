package effort

import (
	"context"
	"runtime"
	"sync"
)

// limiter has as many places as there are processors: all viewers share what one has.
var limiter = make(chan struct{}, runtime.GOMAXPROCS(0))

var spared sync.Once

// Places is how many computations may run at once.
func Places() int { return cap(limiter) }

// Spare takes one place away for good, where there are several: a server has keys to answer meanwhile, a single
// terminal has not.
func Spare() {
	spared.Do(func() {
		if cap(limiter) > 1 {
			limiter <- struct{}{}
		}
	})
}

// Acquire waits for a place, or for the caller to give up. Release gives the place back.
func Acquire(ctx context.Context) error {
	select {
	case limiter <- struct{}{}:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

// Release gives a place back.
func Release() { <-limiter }

// Limited does work in a place and reports whether it got one.
func Limited(ctx context.Context, work func()) bool {
	if Acquire(ctx) != nil {
		return false
	}
	defer Release()
	work()
	return true
}
