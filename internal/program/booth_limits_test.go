package program

import (
	"errors"
	"fmt"
	"io"
	"net"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"

	"brazebooth/internal/deep"
)

// refused checks that a client is turned away with this text.
func (b *testBooth) refused(t testing.TB, who, words string) {
	t.Helper()
	c, err := b.dial(t, who)
	if err == nil {
		_ = c.Close()
		t.Errorf("%s is in", who)
	} else if !strings.Contains(err.Error(), words) {
		t.Errorf("turned away with %v", err)
	}
}

func TestLimitOfConnections(t *testing.T) {
	t.Parallel()
	for _, x := range []struct{ limit, words string }{{"--per-address", "too many connections from your address"},
		{"--connections", "full"}} {
		b := startBooth(t, x.limit, "2")
		first := b.client(t, "reader")
		b.client(t, "writer")
		b.refused(t, "reader", x.words)
		if ssh := b.openSSH(t, "reader", "version"); ssh != nil { // its user sees the text too
			if out, err := ssh.CombinedOutput(); err == nil || !strings.Contains(string(out), x.words) {
				t.Errorf("%s: OpenSSH shows %q, %v", x.limit, out, err)
			}
		}
		_ = first.Close()
		eventually(t, "no place is given back", func() bool {
			c, err := b.dial(t, "reader")
			if err == nil {
				_ = c.Close()
			}
			return err == nil
		})
	}
}

// A client without a free session gets a message and an exit code.
func TestLimitOfSessions(t *testing.T) {
	t.Parallel()
	for _, x := range []struct{ limit, words, other string }{{"--per-key", "this key has too many sessions", "0"},
		{"--sessions", "full: no more sessions", "1"}} {
		b := startBooth(t, x.limit, "1")
		s, seen := screensIn(t, b.client(t, "reader"), 80, 24)
		seen.await("wire feed")
		if out, told, code := b.ask(t, "reader", "version", ""); code != 1 || out != "" || !strings.Contains(told,
			x.words) {
			t.Errorf("%s: exit %d, %q %q", x.limit, code, out, told)
		}
		if _, told, code := b.ask(t, "writer", "version", ""); fmt.Sprint(code) != x.other {
			t.Errorf("%s: another key: exit %d, %q", x.limit, code, told)
		}
		_ = s.Close()
		eventually(t, "no place is given back", func() bool {
			_, _, code := b.ask(t, "reader", "version",
				"")
			return code == 0
		})
	}
}

func TestLimitOfChannels(t *testing.T) {
	t.Parallel()
	b := startBooth(t, "--channels", "2")
	c := b.client(t, "reader")
	first, seen := screensIn(t, c, 80, 24)
	seen.await("wire feed")
	if _, err := c.NewSession(); err != nil {
		t.Fatal(err)
	}
	var why *gossh.OpenChannelError
	if _, err := c.NewSession(); !errors.As(err, &why) || why.Reason != gossh.ResourceShortage ||
		!strings.Contains(why.Message, "too many sessions") {
		t.Errorf("a third: %v", err)
	}
	_ = first.Close()
	eventually(t, "no place is given back", func() bool {
		s, err := c.NewSession()
		return err == nil &&
			s.Close() == nil
	})
}

// A silent client is disconnected after the handshake's time, before and after login.
func TestLimitOfHandshakes(t *testing.T) {
	t.Parallel()
	b := startBooth(t, "--handshake", "300ms")
	conn, err := net.Dial("tcp", b.addr)
	if err != nil {
		t.Fatal(err)
	}
	defer conn.Close()
	_ = conn.SetDeadline(time.Now().Add(deep.Patience(t)))
	if text, err := io.ReadAll(conn); err != nil || !strings.HasPrefix(string(text), "SSH-2.0-") {
		t.Errorf("a silent connection: %q, %v", text, err)
	}
	s, err := b.patient(t, "reader").NewSession()
	if err != nil {
		t.Fatal(err)
	}
	out, err := s.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	ended := make(chan struct{})
	go func() { _, _ = io.Copy(io.Discard, out); close(ended) }()
	select {
	case <-ended:
	case <-time.After(deep.Patience(t)):
		t.Error("a channel in which nothing is asked for stays")
	}
}

func TestLimitOfTheLongestSession(t *testing.T) {
	t.Parallel()
	b := startBooth(t, "--longest", "1s")
	s, seen := screensIn(t, b.client(t, "reader"), 80, 24)
	done := make(chan struct{})
	go func() {
		defer close(done)
		for range 40 {
			time.Sleep(100 * time.Millisecond)
			if _, err := io.WriteString(seen.keys, "\x1b[B"); err != nil {
				return
			}
		}
	}()
	if code := exitOf(t, s.Wait); code != 1 || !strings.Contains(seen.shown(), "reached its time limit") {
		t.Errorf("exit %d:\n%s", code, seen.shown())
	}
	<-done
}

func TestLimitOfPastes(t *testing.T) {
	t.Parallel()
	b := startBooth(t, "--paste", "5")
	_, seen := screensIn(t, b.client(t, "reader"), 80, 24)
	seen.await("wire feed")
	seen.write("\x1b[200~galva" + strings.Repeat("n", 100_000) + "\x1b[201~")
	seen.await("galva")
	seen.write("\x7f")
	seen.await("metal? galv ") // needs more than five characters: one fewer would match others
	seen.await("2 galvanized")
}

// For a terminal larger than allowed, only the allowed size is drawn.
func TestLimitOfTerminals(t *testing.T) {
	t.Parallel()
	b := startBooth(t, "--columns", "90", "--rows", "30")
	_, seen := screensIn(t, b.client(t, "reader"), 200, 60)
	seen.await("wire feed")
	within := func() {
		t.Helper()
		for y, line := range strings.Split(seen.shown(), "\n") {
			if y >= 30 && strings.TrimSpace(line) != "" || len([]rune(strings.TrimRight(line, " "))) > 90 {
				t.Errorf("line %d is drawn: %q", y, line)
			}
		}
	}
	within()
	seen.await("▸  2")
	seen.resize(220, 70)
	seen.write("\x1b[B") // its frame is drawn after the new size
	seen.await("▸  3")
	within()
}

// Control characters in what a client says about itself do not reach the log, the book or a terminal.
func TestHostileClients(t *testing.T) {
	t.Parallel()
	log := filepath.Join(t.TempDir(), "log")
	b := startBooth(t, "--open", "--log", log)
	for _, file := range []string{"keys", "writers"} {
		text, err := os.ReadFile(filepath.Join(b.dir, file))
		if err != nil {
			t.Fatal(err)
		}
		line := strings.TrimSpace(string(text)) + " \x1b]52;c;cHduZWQ=\x07\u202e\u009b31m\n"
		if err := os.WriteFile(filepath.Join(b.dir, file), []byte(line), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, who := range []string{"reader", "writer", "stranger"} {
		config := b.config(t, who)
		config.User = "ana\x1b]0;pwned\x07\u202e\u009b\n\x00" + strings.Repeat("x", 1000)
		c, err := gossh.Dial("tcp", b.addr, config)
		if err != nil {
			t.Fatal(err)
		}
		defer c.Close()
		for _, command := range []string{"book save --gauge 20ga --name lid", "book list", "book history lid",
			"book show lid", "book export -", "book person"} {
			clean(t, command, run1(t, c, command))
		}
		s, err := c.NewSession()
		if err != nil {
			t.Fatal(err)
		}
		for name, value := range map[string]string{"COLORTERM": "\x1b]0;pwned\x07", "LC_ALL": "\x1b[31m",
			"LD_PRELOAD": "/tmp/x.so", "HOME": "/", "TERM": "../../../dev/zero"} {
			if s.Setenv(name, value) == nil {
				t.Errorf("%s=%q is taken", name, value)
			}
		}
		if err := s.RequestPty("../../../../dev/zero\x1b]0;pwned\x07", 24, 80, nil); err != nil {
			t.Fatal(err)
		}
		wire := new(words)
		s.Stdout = wire
		in, err := s.StdinPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := s.Shell(); err != nil {
			t.Fatal(err)
		}
		eventually(t, "no screens", func() bool { return strings.Contains(wire.String(), "wire feed") })
		if _, err := io.WriteString(in, "\x03"); err != nil {
			t.Fatal(err)
		}
		_ = s.Wait()
		if drawn := wire.String(); strings.Contains(drawn, "pwned") || strings.Contains(drawn, "dev/zero") {
			t.Error("the client's words come back to a terminal")
		}
	}
	_ = b.stop()
	text, err := os.ReadFile(log)
	if err != nil {
		t.Fatal(err)
	}
	if r, found := odd(string(text)); found || strings.Contains(string(text), "u001b") {
		t.Errorf("the log holds %U, or an escape of it: %.600q", r, text)
	}
}
