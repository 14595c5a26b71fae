package program

import (
	"bytes"
	"io"
	"math/rand/v2"
	"net"
	"os"
	"path/filepath"
	"runtime"
	"runtime/pprof"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"

	"brazebooth/internal/deep"
)

// garbage are kinds of connections that an open port gets from a network. Each may stay as long as it likes.
var garbage = []struct {
	name string
	send func(conn net.Conn, r *rand.Rand)
}{
	{"random bytes", func(conn net.Conn, r *rand.Rand) { _, _ = conn.Write(noise(r, 1+r.IntN(4000))) }},
	{"nothing", func(net.Conn, *rand.Rand) {}},
	{"a version without an end", func(conn net.Conn, _ *rand.Rand) {
		_, _ = conn.Write([]byte("SSH-2.0-" +
			strings.Repeat("a", 5000)))
	}},
	{"lines before a version without end", func(conn net.Conn, _ *rand.Rand) {
		for range 100 {
			if _, err := conn.Write([]byte(strings.Repeat("hello\r\n", 100))); err != nil {
				return
			}
		}
	}},
	{"zeros", func(conn net.Conn, _ *rand.Rand) { _, _ = conn.Write(make([]byte, 100_000)) }},
	{"half a handshake", func(conn net.Conn, r *rand.Rand) {
		_, _ = conn.Write(append([]byte("SSH-2.0-x\r\n\x00\x00\x05\x00\x0a\x14"), noise(r, 300)...))
	}},
	{"a packet of four gigabytes", func(conn net.Conn, r *rand.Rand) {
		_, _ = conn.Write(append([]byte("SSH-2.0-x\r\n\xff\xff\xff\xff\x0a\x14"), noise(r, 300)...))
	}},
	{"a web browser", func(conn net.Conn, _ *rand.Rand) {
		_, _ = conn.Write([]byte("GET / HTTP/1.1\r\nHost: booth\r\n\r\n"))
	}},
	{"a forged balancer", func(conn net.Conn, _ *rand.Rand) {
		_, _ = conn.Write([]byte("PROXY TCP4 192.0.2.1 192.0.2.2 1 2\r\nSSH-2.0-x\r\n"))
	}},
	{"a reader that never reads", func(conn net.Conn, _ *rand.Rand) {
		_ = conn.(*net.TCPConn).SetReadBuffer(1)
		for range 200 {
			const ignored = "SSH-2.0-x\r\n\x00\x00\x00\x0c\x0a\x02\x00\x00\x00\x00aaaaaaaaaa" // SSH_MSG_IGNORE and more
			if _, err := conn.Write([]byte(ignored)); err != nil {
				return
			}
		}
	}},
	{"keys are agreed on and no more", func(conn net.Conn, _ *rand.Rand) {
		_, _, _, _ = gossh.NewClientConn(conn, "", &gossh.ClientConfig{HostKeyCallback: func(string, net.Addr,
			gossh.PublicKey) error {
			return io.EOF
		}})
	}},
	{"a guess", func(conn net.Conn, r *rand.Rand) {
		_, _, _, _ = gossh.NewClientConn(conn, "", &gossh.ClientConfig{User: string(noise(r, 20)),
			Auth: []gossh.AuthMethod{gossh.Password("booth")}, HostKeyCallback: gossh.InsecureIgnoreHostKey()})
	}},
}

func noise(r *rand.Rand, n int) []byte {
	b := make([]byte, n)
	for i := range b {
		b[i] = byte(r.Uint32())
	}
	return b
}

// throw makes one connection of a kind and leaves it as the kind says: at once, after a while, or when the server
// closes it.
func throw(addr string, n int, r *rand.Rand) {
	conn, err := net.DialTimeout("tcp", addr, 5*time.Second)
	if err != nil {
		return
	}
	defer conn.Close()
	_ = conn.SetDeadline(time.Now().Add(5 * time.Second))
	garbage[n%len(garbage)].send(conn, r)
	switch r.IntN(4) {
	case 0:
		_ = conn.(*net.TCPConn).SetLinger(0) // cut
	case 1:
		_, _ = io.Copy(io.Discard, conn)
	default:
		time.Sleep(time.Duration(r.IntN(50)) * time.Millisecond)
	}
}

// patient connects as reader, writer or stranger, and retries if a slow machine took longer than the server waits.
func (b *testBooth) patient(t testing.TB, who string) (c *gossh.Client) {
	t.Helper()
	eventually(t, "nobody comes in", func() bool {
		var err error
		c, err = b.dial(t, who)
		return err == nil
	})
	t.Cleanup(func() { _ = c.Close() })
	return c
}

// stacks are the stacks of all goroutines, equal ones together.
func stacks() string {
	var b strings.Builder
	_ = pprof.Lookup("goroutine").WriteTo(&b, 1)
	return b.String()
}

// use is the number of goroutines and the heap of this process after a garbage collection.
func use() (goroutines int, heap uint64) {
	for range 3 {
		runtime.GC()
	}
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return runtime.NumGoroutine(), m.HeapAlloc
}

// Whatever connects to the port, all its resources are freed, and a session beside it is answered as usual.
func TestGarbageConnections(t *testing.T) {
	deep.Turn(t)
	b := startBooth(t, "--handshake", "1s", "--per-address", "100", "--connections", "120", "--log",
		filepath.Join(t.TempDir(), "log"))
	inside := b.patient(t, "reader")
	thrown := func(n int) {
		var all sync.WaitGroup
		next := new(atomic.Int64)
		for w := range 40 {
			all.Go(func() {
				r := rand.New(rand.NewPCG(uint64(w), 22))
				for i := next.Add(1); i <= int64(n); i = next.Add(1) {
					throw(b.addr, int(i), r)
				}
			})
		}
		all.Wait()
	}
	asked := 0
	answered := func() {
		t.Helper()
		s, err := inside.NewSession()
		if err != nil {
			t.Fatal(err)
		}
		asked++
		if out, err := s.Output("gauge 16"); err != nil || !bytes.Contains(out, []byte("1.5189")) {
			t.Fatalf("the session beside is not answered: %.100q, %v", out, err)
		}
	}
	faults := deep.Many(60, 400)
	thrown(len(garbage) * 4) // so that one-time initialisation is done
	answered()
	time.Sleep(time.Second)
	goroutines, heap := use()
	done := make(chan struct{})
	go func() { defer close(done); thrown(faults) }()
	for throwing := true; throwing; {
		answered()
		select {
		case <-done:
			throwing = false
		case <-time.After(20 * time.Millisecond):
		}
	}
	answered()
	var g int
	var h uint64
	if !deep.Comes(t, func() bool { g, h = use(); return g <= goroutines+2 && h < heap+2<<20 }) {
		t.Errorf("goroutines %d before, %d after; heap %d kB before, %d kB after:\n%s", goroutines, g, heap>>10,
			h>>10, stacks())
	}
	t.Logf("%d connections, %d answers beside them: goroutines %d before, %d after; heap %d kB before, %d kB after",
		faults, asked, goroutines, g, heap>>10, h>>10)
}

// Misuse by a client with a listed key has no lasting effect either: unclosed channels, sizes before a session,
// countless requests.
func TestGarbageOfTheKnown(t *testing.T) {
	b := startBooth(t, "--handshake", "2s", "--log", filepath.Join(t.TempDir(), "log"))
	misused := 0
	misuse := func(n int) {
		c := b.patient(t, "reader")
		defer c.Close()
		if n%3 == 2 {
			for range 50 {
				_, _, _ = c.SendRequest("tcpip-forward", true, []byte("junk"))
			}
		}
		s := sessionOrNone(c)
		if s == nil {
			return // a slow machine exceeded the time limit
		}
		_ = s.RequestPty("xterm", 24, 80, nil)
		for range 5 {
			_ = s.WindowChange(10+n%20, 40)
		}
		misused++
		if n%3 == 0 {
			return // without a session
		}
		if err := s.Start("card --gauge 20ga --feed 4.1 --travel 8"); err != nil {
			return
		}
		for range 5 {
			_ = s.WindowChange(10+n%20, 40)
		}
		if n%2 == 0 {
			_ = s.Wait()
		}
	}
	before, _ := use()
	for n := range 10 {
		misuse(n)
	}
	eventually(t, "goroutines stay after the first misuse", func() bool { g, _ := use(); return g <= before+2 })
	goroutines, heap := use()
	for n := range deep.Many(15, 60) {
		misuse(n)
	}
	var g int
	var h uint64
	if !deep.Comes(t, func() bool { g, h = use(); return g <= goroutines+2 && h < heap+2<<20 }) {
		t.Errorf("goroutines %d before, %d after; heap %d kB before, %d kB after:\n%s", goroutines, g, heap>>10,
			h>>10, stacks())
	}
	if misused == 0 {
		t.Error("nothing was misused")
	}
	t.Logf("goroutines %d before, %d after; heap %d kB before, %d kB after", goroutines, g, heap>>10, h>>10)
}

// deaf is a connection whose client stops reading at some moment.
type deaf struct {
	net.Conn
	from chan struct{}
	end  <-chan struct{} // end of the test
}

func (d deaf) Read(p []byte) (int, error) {
	n, err := d.Conn.Read(p)
	select {
	case <-d.from:
		<-d.end
		return 0, io.EOF
	default:
		return n, err
	}
}

// A client that does not answer the end of its session loses its place.
func TestChannelsEndWithoutTheirClient(t *testing.T) {
	deep.Turn(t)
	t.Parallel()
	b := startBooth(t, "--per-address", "1")
	conn, err := net.Dial("tcp", b.addr)
	if err != nil {
		t.Fatal(err)
	}
	defer conn.Close()
	d := deaf{conn, make(chan struct{}), t.Context().Done()}
	c, chans, requests, err := gossh.NewClientConn(d, b.addr, b.config(t, "reader"))
	if err != nil {
		t.Fatal(err)
	}
	s, err := gossh.NewClient(c, chans, requests).NewSession()
	if err != nil {
		t.Fatal(err)
	}
	close(d.from)
	go func() { _ = s.Start("gauge 16") }() // the answer is never read
	if !deep.Comes(t, func() bool {
		c, err := b.dial(t, "reader")
		if err == nil {
			_ = c.Close()
		}
		return err == nil
	}) {
		t.Error("its place is taken for ever")
	}
}

// A terminal whose size changes before its session begins is served like any other.
func TestSizesBeforeASession(t *testing.T) {
	b := startBooth(t)
	s, err := b.client(t, "reader").NewSession()
	if err != nil {
		t.Fatal(err)
	}
	if err := s.RequestPty("dumb", 24, 80, nil); err != nil {
		t.Fatal(err)
	}
	for w := range 20 {
		if err := s.WindowChange(24, 60+w); err != nil {
			t.Fatal(err)
		}
	}
	out := new(bytes.Buffer)
	s.Stdout = out
	if code := exitOf(t, func() error { return s.Run("gauge 16") }); code != 0 || !strings.Contains(out.String(),
		"1.5189") {
		t.Errorf("exit %d, %q", code, out)
	}
}

// The log does not contain what guests typed.
func TestLogHoldsNoContent(t *testing.T) {
	file := filepath.Join(t.TempDir(), "log")
	b := startBooth(t, "--log", file)
	b.ask(t, "writer", "book save --name 'secret lid' --gauge 20ga --note 'whose tank'", "")
	b.ask(t, "writer", "secret-command x", "")
	_ = b.stop()
	text, err := os.ReadFile(file)
	if err != nil || !strings.Contains(string(text), `"command":"book save"`) ||
		!strings.Contains(string(text), `"who":"writer"`) {
		t.Errorf("%s, %v", text, err)
	}
	for _, content := range []string{"secret", "whose tank", "20ga"} {
		if strings.Contains(string(text), content) {
			t.Errorf("the log says %q", content)
		}
	}
}
