package program

import (
	"io"
	"net"
	"sync"
	"testing"
)

// gate is a proxy that can hold back what a server sends.
type gate struct {
	addr   string
	mu     sync.Mutex
	opened *sync.Cond
	closed bool
	held   int
}

func (g *gate) shut() {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.closed, g.held = true, 0
}

// open releases the waiting bytes, and returns their number.
func (g *gate) open() int {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.closed = false
	g.opened.Broadcast()
	return g.held
}

func behindGate(t testing.TB, to string) *gate {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = l.Close() })
	g := &gate{addr: l.Addr().String()}
	g.opened = sync.NewCond(&g.mu)
	t.Cleanup(func() { g.open() })
	go func() {
		near, err := l.Accept()
		if err != nil {
			return
		}
		far, err := net.Dial("tcp", to)
		if err != nil {
			return
		}
		go func() { _, _ = io.Copy(far, near); _ = far.Close() }()
		g.pass(near, far)
	}()
	return g
}

// pass reads all bytes, so that none wait before the gate, and passes them on while the gate is open.
func (g *gate) pass(to io.WriteCloser, from io.Reader) {
	pieces := make(chan []byte, 1<<12)
	go func() {
		defer close(pieces)
		for {
			b := make([]byte, 4096)
			n, err := from.Read(b)
			if err != nil {
				return
			}
			g.mu.Lock()
			if g.closed {
				g.held += n
			}
			g.mu.Unlock()
			pieces <- b[:n]
		}
	}()
	for b := range pieces {
		g.mu.Lock()
		for g.closed {
			g.opened.Wait()
		}
		g.mu.Unlock()
		if _, err := to.Write(b); err != nil {
			break
		}
	}
	_ = to.Close()
}
