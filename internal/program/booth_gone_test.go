//go:build unix

package program

import (
	"fmt"
	"io"
	"net"
	"strings"
	"syscall"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// used is the processor time of this process so far. It does not advance while the machine does something else.
func used(t testing.TB) time.Duration {
	t.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		t.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// longWork are commands that take far longer than this test waits; each is for a job that is not in the cache.
var longWork = []struct{ name, command string }{
	{"a window", "window --metal stainless-304 --joint tee --gauge %.3fmm"},
	{"a timed arc", "gap --metal mild-steel --joint butt --gap 2mm --gauge %.3fmm"},
	{"a card with its map", "card --metal galvanized --joint lap --gauge %.3fmm --pdf -"},
	{"a batch", "batch - --format csv"},
	{"all cards again", "book recompute --all"},
	{"an import", "book import -"},
}

// leavings are the ways in which a client leaves its command.
var leavings = []struct {
	name  string
	leave func(s *gossh.Session, c *gossh.Client, tcp *net.TCPConn, in io.Writer)
	pty   bool // at a terminal
	stays bool // to learn the exit code
}{
	{"its channel is closed", func(s *gossh.Session, _ *gossh.Client, _ *net.TCPConn, _ io.Writer) { _ = s.Close() },
		false, false},
	{"it disconnects", func(_ *gossh.Session, c *gossh.Client, _ *net.TCPConn, _ io.Writer) { _ = c.Close() }, false,
		false},
	{"its connection is reset", func(_ *gossh.Session, _ *gossh.Client, tcp *net.TCPConn, _ io.Writer) {
		_ = tcp.SetLinger(0)
		_ = tcp.Close()
	}, false, false},
	{"it only says no more", func(_ *gossh.Session, _ *gossh.Client, tcp *net.TCPConn,
		_ io.Writer) {
		_ = tcp.CloseWrite()
	}, false, false},
	{"it sends a signal", func(s *gossh.Session, _ *gossh.Client, _ *net.TCPConn,
		_ io.Writer) {
		_ = s.Signal(gossh.SIGINT)
	}, false, true},
	{"ctrl+c at its terminal", func(_ *gossh.Session, _ *gossh.Client, _ *net.TCPConn, in io.Writer) {
		_,
			_ = in.Write([]byte{3})
	}, true, true},
}

// Work ends with its client, however that leaves: the server finishes only the step that it is computing. The test
// limits the processor time that it still takes.
func TestWorkEndsWithItsClient(t *testing.T) {
	deep.Turn(t)
	port := freePort(t)
	b := startBooth(t, "--per-key", "100", "--metrics", port)
	writer := b.client(t, "writer")
	for i := range 40 {
		if _, told, code := askOver(t, writer, fmt.Sprintf("book save --metal galvanized --gauge %.3fmm --feed 5 "+
			"--travel 8 --name c%d", 0.8+float64(i)/100, i), ""); code != 0 {
			t.Fatal(told)
		}
	}
	busy := func() bool { return !strings.Contains(page(t, port, "/metrics"), "brazebooth_sessions 0\n") }
	_ = writer.Close()
	n, some := 0, int(deep.Seed())
	most := 20 * ofACard(t)
	for i, work := range longWork {
		for k, x := range leavings {
			if !deep.Run() && (i+k+some)%len(longWork) != 0 { // each work and each leaving at least once
				continue
			}
			if x.pty && (strings.HasSuffix(work.command, "-") || strings.HasSuffix(work.command, "csv")) {
				continue // it reads the terminal, and would read ctrl+c
			}
			tcp, err := net.Dial("tcp", b.addr)
			if err != nil {
				t.Fatal(err)
			}
			conn, chans, requests, err := gossh.NewClientConn(tcp, b.addr, b.config(t, "writer"))
			if err != nil {
				t.Fatal(err)
			}
			c := gossh.NewClient(conn, chans, requests)
			s, err := c.NewSession()
			if err != nil {
				t.Fatal(err)
			}
			if x.pty {
				if err := s.RequestPty("xterm", 24, 80, nil); err != nil {
					t.Fatal(err)
				}
			}
			in, err := s.StdinPipe()
			if err != nil {
				t.Fatal(err)
			}
			command := work.command
			if strings.Contains(command, "%") {
				n++
				command = fmt.Sprintf(command, 1+float64(n)/777)
			}
			if err := s.Start(command); err != nil {
				t.Fatal(err)
			}
			go feed(in, work.command)
			eventually(t, "no session is there", busy)
			time.Sleep(20 * time.Millisecond) // let it begin its work
			was := used(t)
			x.leave(s, c, tcp.(*net.TCPConn), in)
			eventually(t, work.name+" goes on after "+x.name, func() bool { return !busy() })
			if took := used(t) - was; took > most {
				t.Errorf("%s, %s: %v of a processor after its client left, more than %v", work.name, x.name, took, most)
			} else {
				t.Logf("%s, %s: %v", work.name, x.name, took)
			}
			if x.stays {
				if code := exitOf(t, s.Wait); code != 1 {
					t.Errorf("%s, %s: exit %d, as if it had been done", work.name, x.name, code)
				}
			}
			_ = c.Close()
		}
	}
}

// ofACard is the processor time of a card whose setting is searched for: a measure of this machine's speed.
func ofACard(t *testing.T) time.Duration {
	t.Helper()
	const cards = 4
	was := used(t)
	for i := range cards {
		if _, err := calc.Solve(calc.Job{Metal: "galvanized", Thickness: calc.Some(1.1 + float64(i)/777),
			Joint: "lap"}); err != nil {
			t.Fatal(err)
		}
	}
	return (used(t) - was) / cards
}

// feed writes endless rows to a command that reads.
func feed(in io.Writer, command string) {
	if !strings.HasPrefix(command, "batch") {
		return
	}
	_, _ = io.WriteString(in, "metal,gauge,feed,travel\n")
	for i := 0; ; i++ {
		if _, err := fmt.Fprintf(in, "hsla,18ga,,%.4f\n", 5+float64(i)/1000); err != nil {
			return
		}
	}
}
