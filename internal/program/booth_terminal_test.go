package program

import (
	"io"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
	gossh "golang.org/x/crypto/ssh"

	"brazebooth/internal/deep"
)

// seen is an emulated terminal: of the OpenSSH client in a real pty, or of the library's client.
type seen struct {
	t    testing.TB
	emu  *vt.SafeEmulator
	keys io.Writer
	size func(w, h int)
	over chan struct{} // closed when the output ends
}

func newSeen(t testing.TB, keys io.Writer, w, h int, size func(w, h int)) *seen {
	return &seen{t, vt.NewSafeEmulator(w, h), keys, size, make(chan struct{})}
}

func (x *seen) Write(p []byte) (int, error) { return x.emu.Write(p) }

// ReadFrom shows all output. The library's client calls it instead of Write, so that the end is noticed too.
func (x *seen) ReadFrom(from io.Reader) (int64, error) {
	defer close(x.over)
	return io.Copy(x.emu, from)
}

func (x *seen) ended() bool {
	select {
	case <-x.over:
		return true
	default:
		return false
	}
}

func (x *seen) shown() string { return ansi.Strip(x.emu.Render()) }

func (x *seen) write(keys string) {
	if _, err := io.WriteString(x.keys, keys); err != nil {
		x.t.Error(err)
	}
}

func (x *seen) resize(w, h int) {
	x.emu.Resize(w, h)
	x.size(w, h)
}

// comes waits until the screen satisfies ok, and reports whether it did before the program ended.
func (x *seen) comes(ok func(shown string) bool) (yes bool) {
	x.t.Helper()
	deep.Comes(x.t, func() bool {
		last := x.ended()
		yes = ok(x.shown())
		return yes || last
	})
	return yes
}

// await waits until the screen shows a text.
func (x *seen) await(text string) {
	x.t.Helper()
	if !x.comes(func(shown string) bool { return strings.Contains(shown, text) }) {
		x.t.Fatalf("the screen never shows %q; ended: %v\n%s", text, x.ended(), x.shown())
	}
}

// inPty runs a command in a pty.
func inPty(t testing.TB, cmd *exec.Cmd, w, h int) *seen {
	t.Helper()
	cmd.Env = append(os.Environ(), "TERM=xterm-256color", "NO_COLOR=")
	f, err := pty.StartWithSize(cmd, &pty.Winsize{Cols: uint16(w), Rows: uint16(h)})
	if err != nil {
		t.Fatal(err)
	}
	x := newSeen(t, f, w, h, func(w, h int) {
		if err := pty.Setsize(f, &pty.Winsize{Cols: uint16(w), Rows: uint16(h)}); err != nil {
			t.Error(err)
		}
	})
	go func() { _, _ = x.ReadFrom(f) }()
	go answers(f, x.emu)
	t.Cleanup(func() { _ = cmd.Process.Kill(); _ = f.Close() })
	return x
}

// ptyIn opens a session with a terminal in a connection of the library's client, with its input.
func ptyIn(t testing.TB, c *gossh.Client, name string, w, h int) (*gossh.Session, io.WriteCloser) {
	t.Helper()
	s, err := c.NewSession()
	if err != nil {
		t.Fatal(err)
	}
	if err := s.RequestPty(name, h, w, nil); err != nil {
		t.Fatal(err)
	}
	in, err := s.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	return s, in
}

// screensIn opens the screens in a connection of the library's client.
func screensIn(t testing.TB, c *gossh.Client, w, h int) (*gossh.Session, *seen) {
	t.Helper()
	s, in := ptyIn(t, c, "xterm-256color", w, h)
	x := newSeen(t, in, w, h, func(w, h int) {
		if err := s.WindowChange(h, w); err != nil {
			t.Error(err)
		}
	})
	s.Stdout = x
	s.Stderr = x.emu
	go answers(in, x.emu)
	if err := s.Shell(); err != nil {
		t.Fatal(err)
	}
	return s, x
}

// answers sends what an emulator answers to queries. Once the other side is gone the answers are still read: an
// emulator waits for that, and whoever writes to it with it.
func answers(to io.Writer, emu io.Reader) {
	_, _ = io.Copy(to, emu)
	_, _ = io.Copy(io.Discard, emu)
}

// exitOf is the exit code of a program, which must end within a test's patience.
func exitOf(t testing.TB, wait func() error) int {
	t.Helper()
	done := make(chan error, 1)
	go func() { done <- wait() }()
	select {
	case err := <-done:
		switch e := err.(type) {
		case nil:
			return 0
		case *exec.ExitError:
			return e.ExitCode()
		case *gossh.ExitError:
			return e.ExitStatus()
		default:
			t.Logf("ended by %v", err)
			return -1
		}
	case <-time.After(deep.Patience(t)):
		t.Fatal("it does not end")
	}
	return -1
}

// eventually waits until ok is true; otherwise the test fails with what.
func eventually(t testing.TB, what string, ok func() bool) {
	t.Helper()
	if !deep.Comes(t, ok) {
		t.Fatal(what)
	}
}
