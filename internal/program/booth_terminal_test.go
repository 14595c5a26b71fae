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

// seen is a terminal's screen with a way to type at it: behind the OpenSSH client in a real pty, or behind the library's.
type seen struct {
	t    testing.TB
	emu  *vt.SafeEmulator
	keys io.Writer
	size func(w, h int)
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

// await waits until the screen shows a text.
func (x *seen) await(text string) {
	x.t.Helper()
	if !deep.Comes(x.t, func() bool { return strings.Contains(x.shown(), text) }) {
		x.t.Fatalf("the screen never shows %q:\n%s", text, x.shown())
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
	x := &seen{t, vt.NewSafeEmulator(w, h), f, func(w, h int) {
		if err := pty.Setsize(f, &pty.Winsize{Cols: uint16(w), Rows: uint16(h)}); err != nil {
			t.Error(err)
		}
	}}
	go func() { _, _ = io.Copy(x.emu, f) }()
	go func() { _, _ = io.Copy(f, x.emu) }() // what the terminal answers to queries
	t.Cleanup(func() { _ = cmd.Process.Kill(); _ = f.Close() })
	return x
}

// ptyIn asks for a session with a terminal in a connection of the library's client, and for its keys.
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
	x := &seen{t, vt.NewSafeEmulator(w, h), in, func(w, h int) {
		if err := s.WindowChange(h, w); err != nil {
			t.Error(err)
		}
	}}
	s.Stdout = x.emu
	s.Stderr = x.emu
	go func() { _, _ = io.Copy(in, x.emu) }()
	if err := s.Shell(); err != nil {
		t.Fatal(err)
	}
	return s, x
}

// exitOf is how a program ended, within some time.
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

// eventually waits for something that comes by itself.
func eventually(t testing.TB, what string, ok func() bool) {
	t.Helper()
	if !deep.Comes(t, ok) {
		t.Fatal(what)
	}
}
