package serve

import (
	"context"
	"errors"
	"io"
	"sync"
	"testing"
	"testing/synctest"
	"time"
)

// slowLine accepts any write at once, like the buffers between a server and a terminal, and carries the bytes at its
// own speed; an answer comes when everything before it has been carried.
type slowLine struct {
	speed float64 // bytes a second
	trip  time.Duration
	done  <-chan struct{}

	mu      sync.Mutex
	free    time.Time // when everything will have been carried
	carried int
	most    float64 // most bytes on their way, after the first seconds
	begin   time.Time
}

func (l *slowLine) Write(b []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	now := time.Now()
	if l.free.Before(now) {
		l.free = now
	}
	l.free = l.free.Add(time.Duration(float64(len(b)) / l.speed * float64(time.Second)))
	l.carried += len(b)
	if now.Sub(l.begin) > 15*time.Second {
		l.most = max(l.most, l.free.Sub(now).Seconds()*l.speed)
	}
	return len(b), nil
}

func (l *slowLine) ask() error {
	l.mu.Lock()
	wait := max(0, time.Until(l.free)) + l.trip
	l.mu.Unlock()
	select {
	case <-time.After(wait):
		return nil
	case <-l.done:
		return io.EOF
	}
}

// write sends frames as fast as possible, for a while.
func (l *slowLine) write(t *testing.T, frame int, ask func(*slowLine) func() error, during time.Duration) {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), during)
	defer cancel()
	l.done, l.begin = ctx.Done(), time.Now()
	p := newPace(ctx, l, ask(l), time.Minute, func() {})
	for ctx.Err() == nil {
		if _, err := p.Write(make([]byte, frame)); err != nil {
			break
		}
		time.Sleep(time.Millisecond) // drawing a frame
	}
	cancel()
	synctest.Wait()
}

func answering(l *slowLine) func() error { return l.ask }

// On a slow line few bytes are on their way, so that a key is answered soon, but the line is not idle either.
func TestPaceOfLines(t *testing.T) {
	for _, x := range []struct {
		speed float64
		trip  time.Duration
		frame int
		most  float64 // bytes on their way
		least float64 // share of what the line could carry
	}{
		{1e3, 300 * time.Millisecond, 400, 2500, 0.5},
		{1e3, 300 * time.Millisecond, 6000, 7100, 0.5}, // a map: one frame is on its way and none waits
		{5e3, 300 * time.Millisecond, 400, 6000, 0.5},
		{1e6, 20 * time.Millisecond, 400, 20e3, 0.2}, // a frame each millisecond is less than the line carries
	} {
		synctest.Test(t, func(t *testing.T) {
			l := &slowLine{speed: x.speed, trip: x.trip}
			l.write(t, x.frame, answering, time.Minute)
			if could := 60 * min(x.speed, float64(x.frame)*1e3); l.most > x.most || float64(l.carried) < x.least*could {
				t.Errorf("%.0f bytes a second, frames of %d: %.0f bytes on their way, %d of %.0f carried", x.speed,
					x.frame, l.most, l.carried, could)
			}
		})
	}
}

// A client that never answers still gets its frames, after a wait.
func TestPaceOfASilentClient(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		l := &slowLine{speed: 1e6}
		l.write(t, 400, func(l *slowLine) func() error { return func() error { <-l.done; return io.EOF } }, 2*patience)
		if l.carried < 100*400 {
			t.Errorf("%d bytes in %v", l.carried, 2*patience)
		}
	})
}

// The server does not wait for a client that has left, whether its request fails or stays open.
func TestPaceEndsWithItsSession(t *testing.T) {
	for _, ask := range []func(*slowLine) func() error{
		func(*slowLine) func() error { return func() error { return errors.New("closed") } },
		func(l *slowLine) func() error { return func() error { <-l.done; return io.EOF } },
	} {
		synctest.Test(t, func(t *testing.T) {
			l := &slowLine{speed: 1e3}
			l.write(t, 400, ask, patience/2) // never returns if somebody waits for ever
			if l.carried > firstAhead+400 {
				t.Errorf("%d bytes went out unanswered", l.carried)
			}
		})
	}
}
