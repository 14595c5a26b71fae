package program

import (
	"bytes"
	"io"
	"net"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

// wire counts the bytes of a connection, with encryption, and keeps what the session shows.
type wire struct {
	net.Conn
	n     atomic.Int64
	shown shown
}

// shown is all output of a session.
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

// shows waits until a text was shown.
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

// over connects as reader, writer or stranger over a counted connection.
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

// screensOver opens the screens of a booth over a counted connection.
func (b *testBooth) screensOver(t *testing.T) (*wire, io.Writer) {
	t.Helper()
	w, c := b.over(t, "reader")
	s, in := ptyIn(t, c, "xterm-256color", 80, 24)
	s.Stdout = &w.shown
	if err := s.Shell(); err != nil {
		t.Fatal(err)
	}
	return w, in
}
