package serve

import (
	"context"
	"errors"
	"io"
	"log/slog"
	"net"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"

	"golang.org/x/crypto/ssh"

	"brazebooth/internal/deep"
)

// slowChannel accepts at most so many bytes at once, and takes so long for them.
type slowChannel struct {
	ssh.Channel
	most int
	took time.Duration
}

func (c slowChannel) Write(p []byte) (int, error) {
	n := 0
	for n < len(p) {
		time.Sleep(c.took)
		n += min(c.most, len(p)-n)
	}
	return n, nil
}

func (c slowChannel) Stderr() io.ReadWriter {
	return struct {
		io.Reader
		io.Writer
	}{nil, writes(c.Write)}
}

// The server waits for a client that reads at the slowest rate or above, but not for one that reads less, in whatever
// pieces and on either stream.
func TestHowSlowAClientMayBe(t *testing.T) {
	const limit = 30 * time.Second
	for _, x := range []struct {
		name    string
		most    int           // bytes that it accepts at once
		took    time.Duration // time for them
		each    int           // bytes of one write
		stalled bool
	}{
		{"a window that stays shut", 0, time.Hour, 1, true},
		{"a window of one byte, ten a second", 1, 100 * time.Millisecond, 32 << 10, true},
		{"small writes, each taken late", 4, 100 * time.Millisecond, 4, true},
		{"just under the slowest", slowest / 10, 110 * time.Millisecond, 32 << 10, true},
		{"just over the slowest", slowest / 10, 99 * time.Millisecond, 32 << 10, false},
		{"a slow line", 1 << 10, time.Second, 32 << 10, false},
		{"a burst every while", piece, 8 * time.Second, 64 << 10, false},
		{"a burst every longer while", piece, 9 * time.Second, 64 << 10, true},
		{"a rest that is too long", 64 << 10, limit + time.Second, 64 << 10, true},
		{"a fast line", 32 << 10, time.Microsecond, 32 << 10, false},
	} {
		for _, second := range []bool{false, true} {
			synctest.Test(t, func(t *testing.T) {
				var stalled atomic.Bool
				o := &outlet{Channel: slowChannel{most: max(1, x.most), took: x.took}, limit: limit,
					stalled: func() { stalled.Store(true) }}
				to := io.Writer(o)
				if second {
					to = o.Stderr()
				}
				for sent, begin := 0, time.Now(); sent < 2<<20 && time.Since(begin) < 2*time.Hour &&
					!stalled.Load(); sent += x.each {
					if n, err := to.Write(make([]byte, x.each)); n != x.each || err != nil {
						t.Fatal(n, err)
					}
				}
				if stalled.Load() != x.stalled {
					t.Errorf("%s, second stream %v: given up %v", x.name, second, stalled.Load())
				}
			})
		}
	}
}

// A fast start gives no credit: a client that then reads nothing is given up as soon as any other.
func TestAQuickBeginningIsNoCredit(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		given := make(chan time.Time, 10)
		o := &outlet{Channel: slowChannel{most: 1 << 20}, limit: 30 * time.Second,
			stalled: func() { given <- time.Now() }}
		_, _ = o.Write(make([]byte, 100<<20))
		begin := time.Now()
		o.Channel = slowChannel{most: 1, took: time.Hour}
		_, _ = o.Write([]byte{1})
		if late := (<-given).Sub(begin); late != 30*time.Second {
			t.Errorf("given up after %v", late)
		}
	})
}

// A client that stops answering while a frame waits for room on the line is given up too.
func TestAFrameThatWaitsForEver(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		ctx, end := context.WithCancel(t.Context())
		first := make(chan struct{}, 1)
		first <- struct{}{}
		begin := time.Now()
		var at time.Time
		p := newPace(ctx, io.Discard, func() error {
			select {
			case <-first:
				return nil
			case <-ctx.Done():
				return ctx.Err()
			}
		}, 30*time.Second, func() { at = time.Now(); end() })
		for range 100 {
			if _, err := p.Write(make([]byte, 1<<10)); err != nil {
				break
			}
		}
		if at.IsZero() || at.Sub(begin) > 31*time.Second {
			t.Errorf("given up after %v", at.Sub(begin))
		}
	})
}

// plug is a client's connection with a limited reading speed: nothing once it is plugged, or a few bytes now and then.
type plug struct {
	net.Conn
	shut atomic.Bool
	free chan struct{}
	once sync.Once
}

// pull closes the connection, also for a blocked reader.
func (p *plug) pull() {
	p.once.Do(func() { close(p.free) })
	_ = p.Conn.Close()
}

func (p *plug) Read(b []byte) (int, error) {
	if p.shut.Load() {
		<-p.free
		return 0, io.EOF
	}
	return p.Conn.Read(b)
}

// plugged is a client that is connected through a plug.
func plugged(t *testing.T, addr string) (*ssh.Client, *plug) {
	t.Helper()
	conn, err := net.Dial("tcp", addr)
	if err != nil {
		t.Fatal(err)
	}
	p := &plug{Conn: conn, free: make(chan struct{})}
	t.Cleanup(p.pull)
	c, chans, requests, err := ssh.NewClientConn(p, addr, &ssh.ClientConfig{User: "x",
		HostKeyCallback: ssh.InsecureIgnoreHostKey()})
	if err != nil {
		t.Fatal(err)
	}
	return ssh.NewClient(c, chans, requests), p
}

// endless is a command that writes until writing fails; busy counts those still running.
func endless(busy *atomic.Int32) func(context.Context, Guest, string, []string, io.Reader, io.Writer, io.Writer) int {
	return func(_ context.Context, _ Guest, _ string, args []string, _ io.Reader, out, told io.Writer) int {
		busy.Add(1)
		defer busy.Add(-1)
		if args[0] == "fine" {
			_, _ = io.WriteString(out, "fine")
			return 0
		}
		if args[0] == "told" {
			out = told
		}
		for line := make([]byte, 4<<10); ; {
			if _, err := out.Write(line); err != nil {
				return 1
			}
		}
	}
}

// logged collects a server's log.
type logged struct{ lines chan string }

func (l logged) Write(p []byte) (int, error) {
	select {
	case l.lines <- string(p):
	default:
	}
	return len(p), nil
}

// Clients that never read, in every possible way, lose their seat, goroutine and command, and the log says why. Another
// session of the same connection continues if its client answers.
func TestStalledReadersGiveEverythingBack(t *testing.T) {
	deep.Turn(t)
	busy := new(atomic.Int32)
	log := logged{make(chan string, 1000)}
	addr, srv, _ := hostLogging(t, Deps{Command: endless(busy)}, slog.NewTextHandler(log, nil), "--stalled", "300ms",
		"--per-key", "100", "--channels", "10")
	if out, err := visit(t, addr).Output("fine"); err != nil || string(out) != "fine" {
		t.Fatal(out, err)
	}
	before := runtime.NumGoroutine()
	var plugs []*plug
	begin := func(c *ssh.Client, command string) *ssh.Session {
		s, err := c.NewSession()
		if err != nil {
			t.Fatal(err)
		}
		if _, err := s.StdoutPipe(); err != nil { // not read: the window fills
			t.Fatal(err)
		}
		if _, err := s.StderrPipe(); err != nil {
			t.Fatal(err)
		}
		if err := s.Start(command); err != nil {
			t.Fatal(err)
		}
		return s
	}
	shared, open := plugged(t, addr)
	for _, command := range []string{"endless", "told"} {
		begin(shared, command)
		c, p := plugged(t, addr) // a client whose connection accepts nothing any more
		begin(c, command)
		p.shut.Store(true)
		plugs = append(plugs, p)
	}
	c, p := plugged(t, addr) // screens whose terminal has gone
	s, err := c.NewSession()
	if err != nil {
		t.Fatal(err)
	}
	in, err := s.StdinPipe()
	if err == nil {
		err = errors.Join(s.RequestPty("xterm", 100, 300, nil), s.Shell())
	}
	if err != nil {
		t.Fatal(err)
	}
	typing := make(chan struct{})
	go func() {
		defer close(typing)
		for i := range 3000 {
			p.shut.Store(i > 20)
			if _, err := io.WriteString(in, []string{"\x1b[B", "\x1b[A"}[i%2]); err != nil {
				return
			}
			time.Sleep(10 * time.Millisecond)
		}
	}()
	waitFor(t, "sessions are held", func() bool { return srv.seats.taken() == 0 && busy.Load() == 0 })
	<-typing
	if s, err := shared.NewSession(); err != nil {
		t.Errorf("the connection of a client that answers is closed: %v", err)
	} else if out, err := s.Output("fine"); err != nil || string(out) != "fine" {
		t.Errorf("another session of it: %q %v", out, err)
	}
	for _, p := range append(plugs, open, p) {
		p.pull()
	}
	waitFor(t, "goroutines stay", func() bool { return runtime.NumGoroutine() <= before })
	stalled := 0
	for len(log.lines) > 0 {
		if strings.Contains(<-log.lines, "the client read almost nothing") {
			stalled++
		}
	}
	if stalled != 5 {
		t.Errorf("the log says it of %d sessions", stalled)
	}
}

func waitFor(t *testing.T, what string, ok func() bool) {
	t.Helper()
	if deep.Comes(t, ok) {
		return
	}
	stacks := make([]byte, 256<<10)
	t.Fatalf("%s:\n%s", what, stacks[:runtime.Stack(stacks, true)])
}
