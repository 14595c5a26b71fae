package program

import (
	"bytes"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"time"
)

func TestServeScreensThroughOpenSSH(t *testing.T) {
	b := startBooth(t)
	cmd := b.openSSH(t, "reader", "-tt")
	x := inPty(t, cmd, 80, 24)
	x.await("example")
	x.write("\r18")
	x.await(" 18 ga ")
	x.write("\r\r\r")
	x.await("←→ pick")
	x.write("+")
	x.await("yours")
	x.write("\x1a") // Ctrl-Z stops nothing: there is no shell to go back to
	x.write("\r")
	x.await("The limits, nearest first")
	x.write("\x1b")
	x.await("←→ pick")
	for _, size := range [][2]int{{60, 20}, {1, 1}, {500, 200}, {80, 24}} {
		x.resize(size[0], size[1])
		time.Sleep(100 * time.Millisecond)
	}
	x.await("←→ pick")
	x.write("qq")
	if code := exitOf(t, cmd.Wait); code != 0 {
		t.Errorf("left with exit %d:\n%s", code, x.shown())
	}
	eventually(t, "the screens stay on the terminal", func() bool { return !strings.Contains(x.shown(), "←→ pick") })
}

func TestServeLeavesByCtrlC(t *testing.T) {
	b := startBooth(t)
	cmd := b.openSSH(t, "reader", "-tt")
	x := inPty(t, cmd, 80, 24)
	x.await("example")
	x.write("\x03")
	if code := exitOf(t, cmd.Wait); code != 0 {
		t.Errorf("ctrl+c: exit %d", code)
	}
}

func TestServeRefusesStrangersOfOpenSSH(t *testing.T) {
	b := startBooth(t)
	for name, more := range map[string][]string{
		"wrong key": {"card"},
		"no key":    {"-o", "PubkeyAuthentication=no", "card"},
		"password":  {"-o", "PreferredAuthentications=password,keyboard-interactive", "card"},
	} {
		out, err := b.openSSH(t, "stranger", more...).CombinedOutput()
		exit, ok := err.(*exec.ExitError)
		if !ok || exit.ExitCode() != 255 || !strings.Contains(string(out), "Permission denied") {
			t.Errorf("%s: %v, %s", name, err, out)
		}
	}
}

func TestServeRefusesWhatIsNoSession(t *testing.T) {
	b := startBooth(t)
	if out, err := b.openSSH(t, "writer", "-o", "ExitOnForwardFailure=yes", "-R", "127.0.0.1:0:127.0.0.1:1", "card").CombinedOutput(); err == nil {
		t.Errorf("a port was forwarded here: %s", out)
	}
	if out, err := b.openSSH(t, "writer", "-s", "sftp").CombinedOutput(); err == nil {
		t.Errorf("a subsystem was opened: %s", out)
	}
	c := b.client(t, "writer")
	if conn, err := c.Dial("tcp", b.addr); err == nil {
		_ = conn.Close()
		t.Error("a connection was passed on")
	}
	s, err := c.NewSession()
	if err != nil {
		t.Fatal(err)
	}
	for _, ask := range []string{"auth-agent-req@openssh.com", "x11-req", "tcpip-forward", "break"} {
		if ok, err := s.SendRequest(ask, true, nil); ok || err != nil {
			t.Errorf("%s: %v %v", ask, ok, err)
		}
	}
	if err := s.Setenv("LD_PRELOAD", "x"); err == nil {
		t.Error("a setting that is no terminal's was taken")
	}
	if err := s.Setenv("COLORTERM", "truecolor"); err != nil {
		t.Errorf("a terminal's setting was refused: %v", err)
	}
	if scp, err := exec.LookPath("scp"); err == nil {
		_, port, _ := net.SplitHostPort(b.addr)
		for _, how := range []string{"-O", "-s"} {
			out, err := exec.Command(scp, how, "-F", "none", "-o", "StrictHostKeyChecking=no", "-o", "UserKnownHostsFile=/dev/null", "-o", "BatchMode=yes",
				"-i", filepath.Join(b.dir, "writer"), "-P", port, b.book, "127.0.0.1:"+filepath.Join(b.dir, "copied")).CombinedOutput()
			if _, there := os.Stat(filepath.Join(b.dir, "copied")); err == nil || there == nil {
				t.Errorf("scp %s copied: %s", how, out)
			}
		}
	}
}

// The keys of a connection are changed in the middle of a long answer.
func TestServeRekeys(t *testing.T) {
	t.Parallel()
	b := startBooth(t)
	writer := b.client(t, "writer")
	for i := range 30 {
		askOver(t, writer, fmt.Sprintf("book save --name lid%d --gauge 20ga --feed 4.1 --travel 8", i), "")
	}
	all, _, _ := b.ask(t, "reader", "book export -", "")
	cmd := b.openSSH(t, "reader", "-v", "-o", "LogLevel=DEBUG1", "-o", "RekeyLimit=16K", "book", "export", "-")
	var out, told bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &told
	if err := cmd.Run(); err != nil || out.String() != all {
		t.Errorf("%v, %d bytes of %d", err, out.Len(), len(all))
	}
	if n := strings.Count(told.String(), "SSH2_MSG_NEWKEYS received"); n < 2 {
		t.Errorf("keys were changed %d times:\n%.3000s", n, told.String())
	}
}

// A client that lets a session go and keeps its connection: the library's own handling spins on for ever there.
func TestServeEndsADroppedChannel(t *testing.T) {
	metrics := freePort(t)
	b := startBooth(t, "--metrics", metrics)
	c := b.client(t, "reader")
	first, x := screensIn(t, c, 80, 24)
	x.await("example")
	_, y := screensIn(t, c, 80, 24)
	y.await("example")
	if err := first.Close(); err != nil { // the channel, not the connection
		t.Fatal(err)
	}
	eventually(t, "the dropped session goes on", func() bool { return strings.Contains(page(t, metrics, "/metrics"), "brazebooth_sessions 1\n") })
	y.write("\r")
	y.await("~16 ga")
	if s := page(t, metrics, "/healthz"); !strings.Contains(s, `"status":"ok"`) {
		t.Error(s)
	}
}

func TestServeMultiplexedByOpenSSH(t *testing.T) {
	b := startBooth(t)
	socket := filepath.Join(b.dir, "mux")
	master := b.openSSH(t, "reader", "-N", "-M", "-S", socket)
	if err := master.Start(); err != nil {
		t.Fatal(err)
	}
	defer func() { _ = master.Process.Kill(); _ = master.Wait() }()
	eventually(t, "no master", func() bool { _, err := os.Stat(socket); return err == nil })
	first := b.openSSH(t, "reader", "-tt", "-S", socket)
	x := inPty(t, first, 80, 24)
	x.await("example")
	second := b.openSSH(t, "reader", "-tt", "-S", socket)
	y := inPty(t, second, 80, 24)
	y.await("example")
	if err := first.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	y.write("\r")
	y.await("~16 ga")
	if out, err := b.openSSH(t, "reader", "-S", socket, "gauge", "16").CombinedOutput(); err != nil || !strings.Contains(string(out), "16 gauge") {
		t.Errorf("%v: %s", err, out)
	}
}

// With the library's defaults every session has a signal handler of its own, and one SIGINT ends them all.
func TestServeSessionsOutliveASignal(t *testing.T) {
	b := startBooth(t)
	_, x := screensIn(t, b.client(t, "reader"), 80, 24)
	x.await("example")
	caught := make(chan os.Signal, 1)
	signal.Notify(caught, os.Interrupt)
	defer signal.Stop(caught)
	self, err := os.FindProcess(os.Getpid())
	if err == nil {
		err = self.Signal(os.Interrupt)
	}
	if err != nil {
		t.Fatal(err)
	}
	<-caught
	time.Sleep(100 * time.Millisecond)
	x.write("\r")
	x.await("~16 ga")
}

func TestServeSeesEverybodyOut(t *testing.T) {
	b := startBooth(t)
	c := b.client(t, "writer")
	s, x := screensIn(t, c, 80, 24)
	x.await("example")
	if code := b.stop(); code != 0 {
		t.Errorf("the server ends with %d: %s", code, b.told)
	}
	if code := exitOf(t, s.Wait); code != 1 {
		t.Errorf("the session ends with %d", code)
	}
	eventually(t, "the guest is told nothing", func() bool { return strings.Contains(x.shown(), "the server is going down") })
	if _, err := b.dial(t, "writer"); err == nil {
		t.Error("it still lets in")
	}
}

// A line of 4 kB a second with 75 ms each way: frames are left out, keys are not. Not by a bubble's clock as the limits in
// internal/serve: the screens' library holds a lock while it writes.
func TestServeOnASlowLine(t *testing.T) {
	t.Parallel()
	b := startBooth(t)
	slow := throttle(t, b.addr, 4000, 75*time.Millisecond)
	b.addr = slow.addr
	_, x := screensIn(t, b.client(t, "reader"), 80, 24)
	x.await("Which metal?")
	x.await("↑↓ pick")
	const downs = 12
	for range downs {
		x.write("\x1b[B")
		time.Sleep(25 * time.Millisecond)
	}
	typed := slow.sent()
	x.await("▸ 14") // from row 2
	if after := slow.sent() - typed; after > 12_000 {
		t.Errorf("%d bytes went over the line after the last key: the screens are that far behind", after)
	}
	t.Logf("%d bytes after the last of %d keys", slow.sent()-typed, downs)
}

// line is a proxy that lets through so many bytes a second, late.
type line struct {
	addr string
	sum  atomic.Int64
}

func (l *line) sent() int64 { return l.sum.Load() }

func throttle(t testing.TB, to string, bytesPerSecond int, late time.Duration) *line {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = l.Close() })
	x := &line{addr: l.Addr().String()}
	go func() {
		for {
			near, err := l.Accept()
			if err != nil {
				return
			}
			far, err := net.Dial("tcp", to)
			if err != nil {
				return
			}
			for _, c := range []net.Conn{near, far} { // no buffers but the line's own
				_ = c.(*net.TCPConn).SetReadBuffer(2048)
				_ = c.(*net.TCPConn).SetWriteBuffer(2048)
			}
			go drip(far, near, 1e9, late, nil)
			go drip(near, far, bytesPerSecond, late, &x.sum)
		}
	}()
	return x
}

// drip passes bytes on as a thin line does. The handshake goes at once, so that the test is about the screens.
func drip(to io.WriteCloser, from io.Reader, bytesPerSecond int, late time.Duration, total *atomic.Int64) {
	type piece struct {
		b  []byte
		at time.Time
	}
	line := make(chan piece, 1<<16)
	go func() {
		defer close(line)
		n, free := 0, time.Now()
		for {
			b := make([]byte, 100)
			k, err := from.Read(b)
			if err != nil {
				return
			}
			if n += k; n > 3000 && bytesPerSecond < 1e6 {
				if now := time.Now(); free.Before(now) {
					free = now
				}
				free = free.Add(time.Duration(k) * time.Second / time.Duration(bytesPerSecond))
				time.Sleep(time.Until(free))
			}
			line <- piece{b[:k], time.Now().Add(late)}
		}
	}()
	for p := range line {
		time.Sleep(time.Until(p.at))
		if total != nil {
			total.Add(int64(len(p.b)))
		}
		if _, err := to.Write(p.b); err != nil {
			return
		}
	}
	_ = to.Close()
}

func freePort(t testing.TB) string {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	return l.Addr().String()
}

func page(t testing.TB, addr, path string) string {
	t.Helper()
	r, err := http.Get("http://" + addr + path)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	b, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}
