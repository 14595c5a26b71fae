package program

import (
	"io"
	"runtime"
	"strings"
	"testing"
	"time"

	"brazebooth/internal/deep"
)

// Guests who disconnect while keys are on their way, or who keep typing after leaving, leave no goroutine behind.
func TestLeavingLeavesNothing(t *testing.T) {
	deep.Turn(t)
	b := startBooth(t)
	w, in := b.screensOver(t) // some goroutines of the first session stay
	w.shows(t, "Which metal?")
	_, _ = io.WriteString(in, "\x03")
	time.Sleep(200 * time.Millisecond)   // if too short, the count includes goroutines that end
	before := runtime.NumGoroutine() + 5 // one-time goroutines; twenty guests that leak would leave at least twenty
	for i := range 20 {
		w, in := b.screensOver(t)
		_, _ = io.WriteString(in, strings.Repeat("\x1b[B\x1b[A", 100))
		if i%2 == 0 {
			_, _ = io.WriteString(in, "\x03"+strings.Repeat("x", 100))
		}
		time.Sleep(20 * time.Millisecond)
		_ = w.Close()
	}
	if deep.Comes(t, func() bool { return runtime.NumGoroutine() <= before }) {
		return
	}
	stacks := make([]byte, 64<<10)
	t.Errorf("at most %d goroutines may stay, it is %d:\n%s", before, runtime.NumGoroutine(),
		stacks[:runtime.Stack(stacks, true)])
}
