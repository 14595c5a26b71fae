package program

import (
	"io"
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/creack/pty"
)

// typed is a user at a terminal that records every byte.
type typed struct {
	t    testing.TB
	said words
	keys io.Writer
}

func (x *typed) ask(line, answer string) {
	x.t.Helper()
	if _, err := io.WriteString(x.keys, line); err != nil {
		x.t.Fatal(err)
	}
	eventually(x.t, "after "+line+" the program does not say "+answer, func() bool {
		return strings.Contains(x.said.String(),
			answer)
	})
}

// still fails if any byte is a control character or draws.
func (x *typed) still() {
	x.t.Helper()
	for _, r := range x.said.String() {
		if r < ' ' && r != '\n' && r != '\r' || r > '~' {
			x.t.Fatalf("%q was sent:\n%s", r, x.said.String())
		}
	}
}

// A terminal that calls itself dumb, or nothing at all, is asked line by line.
func TestDumbTerminalIsAsked(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"TERM=dumb", "TERM="} {
		cmd := exec.Command("brazebooth") // TestMain puts this program into PATH
		cmd.Env = append(os.Environ(), name, "HOME="+t.TempDir(), "XDG_DATA_HOME="+t.TempDir())
		f, err := pty.Start(cmd)
		if err != nil {
			t.Fatal(err)
		}
		x := &typed{t: t, keys: f}
		go func() { _, _ = io.Copy(&x.said, f) }()
		x.ask("", "metal: ")
		if name == "TERM=dumb" { // a terminal without a name behaves the same from here on
			x.ask("galv\n", "gauge: ")
			x.ask("20ga\n", "wire: ")
			x.ask("\n", "mode: ")
			x.ask("\n", "card: ")
			x.ask("keep tank lid\n", "Kept: tank lid.")
			x.ask("find tank\n", "1: tank lid")
			x.ask("feed 6.2\n", "Wire feed 6.2 metres per minute, yours.")
		}
		x.ask("\x04", "Goodbye.")
		if code := exitOf(t, cmd.Wait); code != 0 {
			t.Errorf("%s: exit %d", name, code)
		}
		x.still()
		_ = f.Close()
	}
}

// Over SSH a dumb terminal sends single keys, which its client does not show.
func TestServeAsksADumbTerminal(t *testing.T) {
	t.Parallel()
	b := startBooth(t)
	for _, x := range []struct{ term, command string }{{"dumb", ""}, {"", ""}, {"xterm", "--plain"}} {
		s, in := ptyIn(t, b.client(t, "reader"), x.term, 80, 24)
		p := &typed{t: t, keys: in}
		s.Stdout, s.Stderr = &p.said, &p.said
		start := s.Shell
		if x.command != "" {
			start = func() error { return s.Start(x.command) }
		}
		if err := start(); err != nil {
			t.Fatal(err)
		}
		p.ask("", "metal: ")
		p.ask("galv\r", "galv\r\n")
		p.ask("20ga\r", "wire: ")
		p.ask("\r", "mode: ")
		p.ask("\r", "card: ")
		p.ask("keep tank lid\r", "may look, not keep")
		p.ask("quit\r", "Goodbye.\r\n")
		if code := exitOf(t, s.Wait); code != 0 {
			t.Errorf("%q %q: exit %d", x.term, x.command, code)
		}
		p.still()
	}
}

// Without a terminal the client edits the line itself.
func TestServePlainWithoutATerminal(t *testing.T) {
	t.Parallel()
	b := startBooth(t)
	out, told, code := b.ask(t, "writer", "--plain", "galv\n20ga\n\n\nkeep tank lid\nquit\n")
	if code != 0 || told != "" || !strings.Contains(out, "Kept: tank lid.") || strings.Contains(out, "\r") {
		t.Errorf("exit %d, %s\n%s", code, told, out)
	}
	if out, _, _ := b.ask(t, "reader", "--plain --units inch", "card\nfind tank\nopen 1\n"); !strings.Contains(out,
		"Opened: tank lid.") || !strings.Contains(out, "inches per minute") || !strings.HasSuffix(out, "Goodbye.\n") {
		t.Errorf("%s", out)
	}
}
