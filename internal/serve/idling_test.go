package serve

import (
	"testing"
	"time"

	"brazebooth/internal/deep"
)

// Input delays the end, and after stop nothing happens, whatever input still comes.
func TestIdlingStaysStopped(t *testing.T) {
	done := make(chan string, 2)
	stopped := newIdling(20*time.Millisecond, func() { done <- "stopped" })
	stopped.stop()
	stopped.heard()
	if stopped.timer.Stop() {
		t.Error("a byte after stop starts the idle time again")
	}
	running := newIdling(time.Hour, func() { done <- "running" })
	running.after = time.Millisecond
	running.heard()
	select {
	case who := <-done:
		if who != "running" {
			t.Errorf("%s came first", who)
		}
	case <-time.After(deep.Patience(t)):
		t.Error("nothing was heard for a while, but the function was not called")
	}
}
