// Package crew lets goroutines work for one caller: a panic in one of them becomes a panic in the caller,
// where it can be caught, and does not end the whole program.
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

// Go runs work beside the caller.
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

// Wait waits for all of them. Where one of them panicked it panics with the first fault.
func (c *Crew) Wait() {
	c.wg.Wait()
	if c.fault != nil {
		panic(c.fault)
	}
}

// Fault turns what was recovered into an error with the place where it happened; what is already a fault
// stays as it is.
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
