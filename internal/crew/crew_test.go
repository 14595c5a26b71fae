package crew_test

import (
	"strings"
	"sync/atomic"
	"testing"

	"brazebooth/internal/crew"
)

func TestWaitPanicsInTheCaller(t *testing.T) {
	var c crew.Crew
	var done atomic.Int32
	for i := range 8 {
		c.Go(func() {
			if i == 3 {
				panic("no such bead")
			}
			done.Add(1)
		})
	}
	defer func() {
		err, ok := recover().(error)
		if !ok || !strings.HasPrefix(err.Error(), "no such bead") || !strings.Contains(err.Error(), "crew_test.go") {
			t.Errorf("the caller got %v", err)
		}
		if done.Load() != 7 {
			t.Errorf("%d of the other 7 finished", done.Load())
		}
		if again := crew.Fault(err); again != err {
			t.Error("a fault was wrapped twice")
		}
	}()
	c.Wait()
	t.Error("Wait came back")
}

func TestWaitWithoutFault(t *testing.T) {
	var c crew.Crew
	n := 0
	c.Go(func() { n = 7 })
	c.Wait()
	if n != 7 {
		t.Error("the work was not done")
	}
}
