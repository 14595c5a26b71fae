package serve

import (
	"net"
	"net/netip"
	"sync"
	"sync/atomic"
	"time"

	"charm.land/ssh"
	"github.com/pires/go-proxyproto"
)

// placeOf is the address under which connections are counted. A machine can use any address of its IPv6 /64 network, so
// these count as one.
func placeOf(address string) string {
	a, err := netip.ParseAddr(address)
	if err != nil {
		return address
	}
	if a = a.Unmap().WithZone(""); a.Is4() {
		return a.String()
	}
	return netip.PrefixFrom(a, 64).Masked().String()
}

// link is one connection: it counts the bytes, and frees its place when it is first closed.
type link struct {
	net.Conn
	server   *server
	address  string
	in, out  atomic.Int64
	mu       sync.Mutex
	channels int
	closed   bool
	quiet    *time.Timer // ends a connection without sessions
	guest    atomic.Pointer[Guest]
}

// connect accepts a connection, or turns it away. Behind a balancer the client's address is known only after the
// balancer's header, so a place is taken before that.
func (s *server) connect(ctx ssh.Context, conn net.Conn) net.Conn {
	if !s.gate.take() {
		s.turnAway(conn, "full")
		return nil
	}
	address := addressOf(conn.RemoteAddr())
	if err := unnamed(conn); err != nil {
		s.gate.free("")
		s.meters.refused("no client named").Inc()
		s.knocks.Do(func() {
			s.log.Info("a balancer's connection names no client", "from", address, "why", err.Error())
		})
		return nil
	}
	if !s.gate.give(placeOf(address)) {
		s.turnAway(conn, "too many connections from your address")
		return nil
	}
	if tcp := tcpOf(conn); tcp != nil {
		_ = tcp.SetWriteBuffer(sendBuffer)
	}
	l := &link{Conn: conn, server: s, address: address}
	l.mu.Lock()
	l.quiet = time.AfterFunc(s.Idle, func() { _ = l.Close() })
	l.mu.Unlock()
	s.links.Store(l, struct{}{})
	ctx.SetValue(linkKey, l)
	return l
}

// tcpOf is the TCP connection, also inside a balancer's wrapper; nil if it is not TCP.
func tcpOf(conn net.Conn) *net.TCPConn {
	if behind, ok := conn.(*proxyproto.Conn); ok {
		tcp, _ := behind.TCPConn()
		return tcp
	}
	tcp, _ := conn.(*net.TCPConn)
	return tcp
}

// sendBuffer is the size of the system's send buffer in bytes; a large one hides how slow a line is.
const sendBuffer = 32 << 10

type contextKey string

const linkKey contextKey = "link"

func (l *link) Read(p []byte) (int, error) {
	n, err := l.Conn.Read(p)
	l.in.Add(int64(n))
	return n, err
}

func (l *link) Write(p []byte) (int, error) {
	n, err := l.Conn.Write(p)
	l.out.Add(int64(n))
	return n, err
}

// open counts a channel; false if there are already as many as allowed.
func (l *link) open() bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.closed || l.channels >= l.server.Channels {
		return false
	}
	l.channels++
	l.quiet.Stop()
	return true
}

func (l *link) shut() {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.channels--; l.channels == 0 && !l.closed {
		l.quiet.Reset(l.server.Idle)
	}
}

func (l *link) Close() error {
	l.mu.Lock()
	first := !l.closed
	l.closed = true
	l.quiet.Stop()
	l.mu.Unlock()
	if first {
		l.server.gate.free(placeOf(l.address))
		l.server.links.Delete(l)
		l.server.meters.bytesIn.Add(int(l.in.Load()))
		l.server.meters.bytesOut.Add(int(l.out.Load()))
	}
	return l.Conn.Close()
}

// revoke closes the connections of keys that are no longer allowed, or whose role has changed.
func (s *server) revoke() {
	s.links.Range(func(k, _ any) bool {
		l := k.(*link)
		then := l.guest.Load()
		if then == nil || then.key == nil {
			return true
		}
		if now, ok := s.keys.guest(then.key); !ok || !now.mayAs(then) {
			s.log.Info("key taken back while in", "who", then.Name, "key", then.Key, "from", l.address)
			_ = l.Close()
		}
		return true
	})
}

func addressOf(a net.Addr) string {
	if a == nil {
		return "unknown"
	}
	host, _, err := net.SplitHostPort(a.String())
	if err != nil {
		return a.String()
	}
	return host
}
