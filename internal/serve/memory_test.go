package serve

import (
	"io"
	"log/slog"
	"net"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"

	"github.com/charmbracelet/x/ansi"
	"golang.org/x/crypto/ssh"
)

// A server with connections in memory runs in a synctest bubble with its own clock: a minute without a key takes no
// time, and nothing depends on how busy the machine is.

// memory is a listener for connections in memory.
type memory struct {
	come chan net.Conn
	gone chan struct{}
	once sync.Once
}

func (m *memory) Accept() (net.Conn, error) {
	select {
	case c := <-m.come:
		return c, nil
	case <-m.gone:
		return nil, net.ErrClosed
	}
}

func (m *memory) Close() error   { m.once.Do(func() { close(m.gone) }); return nil }
func (m *memory) Addr() net.Addr { return &net.TCPAddr{IP: net.IPv4(127, 0, 0, 1), Port: 22} }

// oneWay carries and counts bytes in one direction; it buffers as many as the server's send buffer.
type oneWay struct {
	come chan byte
	gone chan struct{}
	once sync.Once
	sum  atomic.Int64
}

func newOneWay() *oneWay {
	return &oneWay{come: make(chan byte, sendBuffer), gone: make(chan struct{})}
}

func (w *oneWay) Write(p []byte) (n int, err error) {
	for n < len(p) {
		select {
		case w.come <- p[n]:
			n++
			w.sum.Add(1)
		case <-w.gone:
			return n, io.ErrClosedPipe
		}
	}
	return n, nil
}

// Read waits for a byte and takes all that are there.
func (w *oneWay) Read(p []byte) (n int, err error) {
	select {
	case p[0] = <-w.come:
	case <-w.gone:
		return 0, io.EOF
	}
	for n = 1; n < len(p); n++ {
		select {
		case p[n] = <-w.come:
		default:
			return n, nil
		}
	}
	return n, nil
}

func (w *oneWay) close() { w.once.Do(func() { close(w.gone) }) }

// end is one end of a connection. Its deadlines have no effect: no test in a bubble needs them.
type end struct{ in, out *oneWay }

func (e end) Read(p []byte) (int, error)     { return e.in.Read(p) }
func (e end) Write(p []byte) (int, error)    { return e.out.Write(p) }
func (e end) Close() error                   { e.in.close(); e.out.close(); return nil }
func (end) LocalAddr() net.Addr              { return &net.TCPAddr{IP: net.IPv4(127, 0, 0, 1), Port: 22} }
func (end) RemoteAddr() net.Addr             { return &net.TCPAddr{IP: net.IPv4(127, 0, 0, 1), Port: 50022} }
func (end) SetDeadline(time.Time) error      { return nil }
func (end) SetReadDeadline(time.Time) error  { return nil }
func (end) SetWriteDeadline(time.Time) error { return nil }

// inMemory is a server in memory that lets everybody in.
type inMemory struct {
	t *testing.T
	l *memory
}

func hostInMemory(t *testing.T, d Deps, more ...string) *inMemory {
	t.Helper()
	l := &memory{come: make(chan net.Conn), gone: make(chan struct{})}
	runOn(t, newHost(t, d, slog.DiscardHandler, more...), l)
	return &inMemory{t, l}
}

// connect is a new client, and the bytes that the server sends to it.
func (m *inMemory) connect() (*ssh.Client, *oneWay) {
	m.t.Helper()
	up, down := newOneWay(), newOneWay()
	m.l.come <- end{up, down}
	conn, channels, requests, err := ssh.NewClientConn(end{down, up}, "", &ssh.ClientConfig{User: "x",
		HostKeyCallback: ssh.InsecureIgnoreHostKey()})
	if err != nil {
		m.t.Fatal(err)
	}
	c := ssh.NewClient(conn, channels, requests)
	m.t.Cleanup(func() { _ = c.Close() })
	return c, down
}

// session is a new session of a client.
func (m *inMemory) session(c *ssh.Client) *guest {
	m.t.Helper()
	s, err := c.NewSession()
	if err != nil {
		m.t.Fatal(err)
	}
	return &guest{Session: s, t: m.t}
}

// shows waits until the screen shows a text, at most ten minutes of the bubble's clock.
func (g *guest) shows(text string) {
	g.t.Helper()
	for range 6000 {
		if strings.Contains(g.screen(), text) {
			return
		}
		time.Sleep(100 * time.Millisecond)
		synctest.Wait()
	}
	g.t.Fatalf("the screen never shows %q:\n%s", text, g.screen())
}

func (g *guest) screen() string { return ansi.Strip(g.emu.Render()) }
