// Package crew runs goroutines for one caller: a panic in one of them becomes a panic in the caller, which can recover,
// and does not end the whole program.
package crew

import (
	"fmt"
	"runtime/debug"
	"sync"
)

// Crew is a group of goroutines for which a caller waits. The zero value is ready to use.
type Crew struct {
	wg    sync.WaitGroup
	once  sync.Once
	fault error
}

// Go runs work in a goroutine.
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

// Wait waits for all goroutines. If one of them panicked, it panics with the first fault.
func (c *Crew) Wait() {
	c.wg.Wait()
	if c.fault != nil {
		panic(c.fault)
	}
}

// Fault turns a recovered value into an error with the stack; a value that is already a fault stays as it is.
func Fault(recovered any) error {
	if f, ok := recovered.(fault); ok {
		return f
	}
	return fault(fmt.Sprintf("%v\n%s", recovered, debug.Stack()))
}

type fault string

func (f fault) Error() string { return string(f) }
