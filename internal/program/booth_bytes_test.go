package program

import (
	"bytes"
	"fmt"
	"io"
	"net"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

// wire counts what comes over a connection, cipher and all, and keeps what the session shows.
type wire struct {
	net.Conn
	n     atomic.Int64
	shown shown
}

// shown is all that a session showed.
type shown struct {
	mu   sync.Mutex
	text []byte
}

func (s *shown) Write(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.text = append(s.text, p...)
	return len(p), nil
}

func (s *shown) has(text string) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return bytes.Contains(s.text, []byte(text))
}

// shows waits until a text was shown: how long that takes is the machine's.
func (w *wire) shows(t *testing.T, text string) {
	t.Helper()
	for !w.shown.has(text) {
		select {
		case <-t.Context().Done():
			t.Fatalf("%q was never shown", text)
		case <-time.After(20 * time.Millisecond):
		}
	}
}

func (w *wire) Read(p []byte) (int, error) {
	n, err := w.Conn.Read(p)
	w.n.Add(int64(n))
	return n, err
}

// over connects as one of the three, over a connection that is counted.
func (b *testBooth) over(t testing.TB, who string) (*wire, *gossh.Client) {
	t.Helper()
	tcp, err := net.Dial("tcp", b.addr)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = tcp.Close() })
	w := &wire{Conn: tcp}
	conn, channels, requests, err := gossh.NewClientConn(w, b.addr, b.config(t, who))
	if err != nil {
		t.Fatal(err)
	}
	return w, gossh.NewClient(conn, channels, requests)
}

// screensOver opens the screens of a booth in a terminal of 256 colours.
func (b *testBooth) screensOver(t *testing.T, columns, rows int) (*wire, io.Writer) {
	t.Helper()
	w, c := b.over(t, "reader")
	s, in := ptyIn(t, c, "xterm-256color", columns, rows)
	s.Stdout = &w.shown
	if err := s.Shell(); err != nil {
		t.Fatal(err)
	}
	return w, in
}

// costs presses keys and returns how many bytes each of them sends to the client. Every key must change something.
func (w *wire) costs(t *testing.T, in io.Writer, keys ...string) []int64 {
	t.Helper()
	var list []int64
	for _, k := range keys {
		was := w.n.Load()
		if _, err := io.WriteString(in, k); err != nil {
			t.Fatal(err)
		}
		w.settle(t, was)
		list = append(list, w.n.Load()-was)
	}
	return list
}

// settle waits until more than before has come and nothing follows.
func (w *wire) settle(t *testing.T, before int64) {
	t.Helper()
	last := before
	for range 100 {
		time.Sleep(300 * time.Millisecond)
		n := w.n.Load()
		if n > before && n == last {
			return
		}
		last = n
	}
	t.Fatalf("%d bytes came, and no rest", last-before)
}

// A line of a booth may be slow: a key on the card is at most 500 bytes, one on the map at most 6 kB, cipher and all. On a
// terminal so wide that the reason stands beside the card, picking another row changes all of it: 2 kB.
func TestBytesOverSSH(t *testing.T) {
	if testing.Short() {
		t.Skip("needs half a minute of waiting")
	}
	for _, size := range []struct {
		columns, rows int
		card          int64
	}{{80, 24, 500}, {100, 30, 2000}} {
		t.Run(fmt.Sprintf("%dx%d", size.columns, size.rows), func(t *testing.T) {
			t.Parallel()
			w, in := startBooth(t).screensOver(t, size.columns, size.rows)
			w.settle(t, w.n.Load())
			w.costs(t, in, "mild-steel\r", "18\r\r\r")
			w.shows(t, "stick-out") // the card, which a machine that is busy draws late
			w.settle(t, 0)
			w.atMost(t, in, size.card, "\x1b[C", "\x1b[B", "\x1b[A", "\x1b[D", "+", "\x1b[B", "\x1b[B", "+", "-")
			w.atMost(t, in, 6000, "m", "\x1b[C", "\x1b[A", "r", "/", "m") // the map
		})
	}
}

// atMost holds each key to so many bytes.
func (w *wire) atMost(t *testing.T, in io.Writer, most int64, keys ...string) {
	t.Helper()
	for i, n := range w.costs(t, in, keys...) {
		t.Logf("%-7q %5d bytes", keys[i], n)
		if n > most {
			t.Errorf("%q costs %d bytes on the wire", keys[i], n)
		}
	}
}
