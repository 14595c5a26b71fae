// Package crew lets goroutines work for one caller: what goes wrong in one of them goes wrong in the caller,
// where somebody can catch it, and not in the whole program.
package crew

import (
	"fmt"
	"runtime/debug"
	"sync"
)

// Crew is some goroutines and the caller who waits for them. The zero value is ready.
type Crew struct {
	wg    sync.WaitGroup
	once  sync.Once
	fault error
}

// Go lets work run beside the caller.
func (c *Crew) Go(work func()) {
	c.wg.Go(func() {
		defer func() {
			if r := recover(); r != nil {
				c.once.Do(func() { c.fault = Fault(r) })
			}
		}()
		work()
	})
}

// Wait waits for all of them. It panics with the first fault where one of them panicked.
func (c *Crew) Wait() {
	c.wg.Wait()
	if c.fault != nil {
		panic(c.fault)
	}
}

// Fault is what was recovered as an error, with the place where it happened; a fault that comes by here
// again stays as it is.
func Fault(recovered any) error {
	if f, ok := recovered.(*fault); ok {
		return f
	}
	return &fault{fmt.Sprint(recovered), debug.Stack()}
}

type fault struct {
	what  string
	stack []byte
}

func (f *fault) Error() string { return f.what + "\n" + string(f.stack) }
