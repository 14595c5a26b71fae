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
	"testing"
	"time"

	"brazebooth/internal/deep"
)

func TestServeScreensThroughOpenSSH(t *testing.T) {
	t.Parallel()
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
	x.write("\x1a") // Ctrl-Z does not suspend: there is no shell to go back to
	x.write("\r")
	x.await("The edges, nearest first")
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
	t.Parallel()
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
	t.Parallel()
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
	t.Parallel()
	b := startBooth(t)
	if out, err := b.openSSH(t, "writer", "-o", "ExitOnForwardFailure=yes", "-R", "127.0.0.1:0:127.0.0.1:1",
		"card").CombinedOutput(); err == nil {
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
			out, err := exec.Command(scp, how, "-F", "none", "-o", "StrictHostKeyChecking=no", "-o",
				"UserKnownHostsFile=/dev/null", "-o", "BatchMode=yes",
				"-i", filepath.Join(b.dir, "writer"), "-P", port, b.book, "127.0.0.1:"+filepath.Join(b.dir,
					"copied")).CombinedOutput()
			if _, there := os.Stat(filepath.Join(b.dir, "copied")); err == nil || there == nil {
				t.Errorf("scp %s copied: %s", how, out)
			}
		}
	}
}

// The encryption keys of a connection are renewed during a long answer.
func TestServeRekeys(t *testing.T) {
	t.Parallel()
	b := startBooth(t)
	writer := b.client(t, "writer")
	for i := range 30 { // fewer would be sent before the keys are renewed twice
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

// A client closes a session but keeps its connection: the library's own handling would loop for ever.
func TestServeEndsADroppedChannel(t *testing.T) {
	t.Parallel()
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
	eventually(t, "the dropped session goes on", func() bool {
		return strings.Contains(page(t, metrics, "/metrics"),
			"brazebooth_sessions 1\n")
	})
	y.write("\r")
	y.await("~16 ga")
	if s := page(t, metrics, "/healthz"); !strings.Contains(s, `"status":"ok"`) {
		t.Error(s)
	}
}

func TestServeMultiplexedByOpenSSH(t *testing.T) {
	t.Parallel()
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
	if out, err := b.openSSH(t, "reader", "-S", socket, "gauge", "16").CombinedOutput(); err != nil ||
		!strings.Contains(string(out), "16 gauge") {
		t.Errorf("%v: %s", err, out)
	}
}

// With the library's defaults every session has its own signal handler, and one SIGINT ends them all.
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

func TestServeEndsAllSessions(t *testing.T) {
	t.Parallel()
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
	x.await("the server is going down")
	if _, err := b.dial(t, "writer"); err == nil {
		t.Error("it still lets in")
	}
}

// On a line that is blocked for a while, frames are skipped but keys are not. Tests in internal/serve check the bytes
// on their way for lines of any speed.
func TestServeOnASlowLine(t *testing.T) {
	deep.Turn(t)
	t.Parallel()
	b := startBooth(t)
	slow := behindGate(t, b.addr)
	b.addr = slow.addr
	_, x := screensIn(t, b.client(t, "reader"), 80, 24)
	x.await("Which metal?")
	x.await("▸  2")
	x.write("\x1b[B")
	x.await("▸  3")
	slow.shut()
	const there = 60 // and back: each key draws a new frame of some hundred bytes
	for range there {
		for _, key := range []string{"\x1b[B", "\x1b[A"} {
			x.write(key)
			time.Sleep(10 * time.Millisecond)
		}
	}
	x.write("\x1b[B\x1b[B")
	held := slow.open()
	if most := 24 << 10; held > most { // the most bytes on their way on the fastest line, a frame, and packet overhead
		t.Errorf("%d bytes waited on the line, more than %d: the screens are that far behind", held, most)
	}
	x.await("▸  5")
	t.Logf("%d bytes waited for the line after %d keys", held, 2*there)
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
