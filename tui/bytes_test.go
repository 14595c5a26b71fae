package tui

import (
	"context"
	"io"
	"sync"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"

	"brazebooth/calc"
)

// line24 is a terminal that counts what is sent to it.
type line24 struct {
	mu   sync.Mutex
	n    int
	last time.Time
}

func (l *line24) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.n += len(p)
	l.last = time.Now()
	return len(p), nil
}

// settle waits until nothing has been sent for a while and returns the bytes sent so far.
func (l *line24) settle() int {
	for start := time.Now(); time.Since(start) < 2*time.Second; time.Sleep(5 * time.Millisecond) {
		l.mu.Lock()
		n, still := l.n, !l.last.IsZero() && time.Since(l.last) > 120*time.Millisecond
		l.mu.Unlock()
		if still {
			return n
		}
	}
	return l.n
}

// begins waits until more than n bytes have been sent, or long enough to say that nothing comes: on a busy machine a
// frame may be late, and its bytes would count for the next key.
func (l *line24) begins(n int) {
	for start := time.Now(); time.Since(start) < time.Second; time.Sleep(5 * time.Millisecond) {
		l.mu.Lock()
		more := l.n > n
		l.mu.Unlock()
		if more {
			return
		}
	}
}

// sends runs the screens in a terminal of a given size, on the card, and returns the bytes that each
// key costs, as the library's own renderer at 120 frames a second sends them.
func sends(t testing.TB, w, h int, keys ...string) []int {
	t.Helper()
	in, type_ := io.Pipe()
	out := &line24{}
	o := Options{Job: calc.Job{Metal: "galvanized", Gauge: 16}, Profile: colorprofile.ANSI256,
		Env: []string{"TERM=xterm-256color"}}
	ctx, cancel := context.WithCancel(context.Background())
	p := tea.NewProgram(New(o), append(programOptions(ctx, o, in, out), tea.WithWindowSize(w, h), tea.WithoutSignalHandler())...)
	done := make(chan struct{})
	go func() { _, _ = p.Run(); close(done) }()
	t.Cleanup(func() { cancel(); _ = type_.Close(); <-done })
	was := out.settle()
	var costs []int
	for _, k := range keys {
		p.Send(keyPress(k))
		out.begins(was)
		now := out.settle()
		costs = append(costs, now-was)
		was = now
	}
	return costs
}

// A key on the card sends at most 500 bytes down the line; a key that changes nothing sends none.
func TestBytesAKey(t *testing.T) {
	if testing.Short() {
		t.Skip("needs a second of waiting")
	}
	keys := []string{"down", "down", "right", "right", "left", "up", "+", "r", "up", "right", "up"}
	for i, n := range sends(t, 80, 24, keys...) {
		t.Logf("%-6s %4d bytes", keys[i], n)
		if n > 500 {
			t.Errorf("%s sends %d bytes", keys[i], n)
		}
	}
	idle := sends(t, 80, 24, "up", "z", "z")
	if idle[1] != 0 || idle[2] != 0 {
		t.Errorf("a key without meaning sends %v bytes", idle[1:])
	}
}

// Nothing is sent while nobody presses a key.
func TestRestIsSilent(t *testing.T) {
	if testing.Short() {
		t.Skip("needs a second of waiting")
	}
	out := &line24{}
	in, type_ := io.Pipe()
	o := Options{Env: []string{"TERM=xterm-256color"}, Profile: colorprofile.ANSI256}
	ctx, cancel := context.WithCancel(context.Background())
	p := tea.NewProgram(New(o), append(programOptions(ctx, o, in, out), tea.WithWindowSize(80, 24), tea.WithoutSignalHandler())...)
	done := make(chan struct{})
	go func() { _, _ = p.Run(); close(done) }()
	defer func() { cancel(); _ = type_.Close(); <-done }()
	before := out.settle()
	time.Sleep(300 * time.Millisecond)
	if after := out.settle(); after != before {
		t.Errorf("%d bytes were sent at rest", after-before)
	}
}
