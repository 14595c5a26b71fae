package effort

import (
	"context"
	"runtime"
	"sync"
)

// limiter has as many places as there are processors. All sessions share them.
var limiter = make(chan struct{}, runtime.GOMAXPROCS(0))

var spared sync.Once

// Places is how many computations may run at once.
func Places() int { return cap(limiter) }

// Spare removes one place for good, if there are several: a server needs a processor to answer keys, a single terminal
// does not.
func Spare() {
	spared.Do(func() {
		if cap(limiter) > 1 {
			limiter <- struct{}{}
		}
	})
}

// Acquire waits for a place, which Release gives back. The error is the context's if the caller leaves first.
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

// Limited waits for a place and runs work in it; false if the caller left first.
func Limited(ctx context.Context, work func()) bool {
	if Acquire(ctx) != nil {
		return false
	}
	defer Release()
	work()
	return true
}
