package serve

import (
	"io"
	"net"
	"sync"
	"sync/atomic"
	"time"

	"charm.land/ssh"
	"github.com/pires/go-proxyproto"
)

// gate counts connections, before and after anybody is known.
type gate struct {
	mu        sync.Mutex
	all, most int
	from      map[string]int
	mostFrom  int
}

// enter takes a place for an address; why not, where there is none.
func (g *gate) enter(address string) (why string) {
	g.mu.Lock()
	defer g.mu.Unlock()
	switch {
	case g.all >= g.most:
		return "full"
	case g.from[address] >= g.mostFrom:
		return "too many connections from your address"
	}
	g.all++
	g.from[address]++
	return ""
}

func (g *gate) leave(address string) {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.all--
	if g.from[address]--; g.from[address] <= 0 {
		delete(g.from, address)
	}
}

// link is one connection: what came and went over it, and that its place is given back.
type link struct {
	net.Conn
	server   *server
	address  string
	in, out  atomic.Int64
	channels atomic.Int32
	quiet    *time.Timer // ends a connection in which nobody is
	once     sync.Once
	guest    atomic.Pointer[Guest]
	key      atomic.Pointer[ssh.PublicKey]
}

// connect lets a connection in, or says politely that it is full: RFC 4253, 4.2, allows lines before the version.
func (s *server) connect(ctx ssh.Context, conn net.Conn) net.Conn {
	address := addressOf(conn.RemoteAddr())
	if why := s.gate.enter(address); why != "" {
		s.meters.refused(why).Inc()
		s.log.Info("connection refused", "from", address, "why", why)
		decline(conn, why)
		return nil
	}
	if tcp := tcpOf(conn); tcp != nil {
		_ = tcp.SetWriteBuffer(sendBuffer)
	}
	l := &link{Conn: conn, server: s, address: address}
	l.quiet = time.AfterFunc(s.Idle, func() { _ = l.Close() })
	s.links.Store(l, struct{}{})
	ctx.SetValue(linkKey, l)
	return l
}

// decline says a last line. What the client has said is read first: closing over unread bytes would take the line back.
func decline(conn net.Conn, why string) {
	_ = conn.SetDeadline(time.Now().Add(time.Second))
	_, _ = conn.Write([]byte("brazebooth: " + why + "; try again in a minute\r\n"))
	if tcp := tcpOf(conn); tcp != nil {
		_ = tcp.CloseWrite()
	}
	_, _ = io.Copy(io.Discard, io.LimitReader(conn, 64<<10))
}

// tcpOf is the connection itself, also behind a balancer's header; nil where it is none of TCP.
func tcpOf(conn net.Conn) *net.TCPConn {
	if behind, ok := conn.(*proxyproto.Conn); ok {
		tcp, _ := behind.TCPConn()
		return tcp
	}
	tcp, _ := conn.(*net.TCPConn)
	return tcp
}

// sendBuffer holds what the network has not taken yet; a large one hides how slow a line is.
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

func (l *link) Close() error {
	l.once.Do(func() {
		l.quiet.Stop()
		l.server.gate.leave(l.address)
		l.server.links.Delete(l)
		l.server.meters.bytesIn.Add(int(l.in.Load()))
		l.server.meters.bytesOut.Add(int(l.out.Load()))
	})
	return l.Conn.Close()
}

// revoke closes the connections of keys that may no longer come in, or may do other things than when they did.
func (s *server) revoke() {
	s.links.Range(func(k, _ any) bool {
		l := k.(*link)
		then, key := l.guest.Load(), l.key.Load()
		if then == nil || key == nil {
			return true
		}
		if now, ok := s.keys.guest(*key); !ok || now.Writer != then.Writer {
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
