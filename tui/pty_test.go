package tui

import (
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
)

// A whole run as a person has it: the built program in a real terminal, keys in, screen out.
func TestThroughATerminal(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the program")
	}
	bin := filepath.Join(t.TempDir(), "brazebooth")
	if out, err := exec.Command("go", "build", "-o", bin, "..").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	for _, folder := range []string{"XDG_DATA_HOME", "XDG_STATE_HOME"} { // a first start of all
		t.Setenv(folder, t.TempDir())
	}
	first := startTerminal(t, exec.Command(bin), 80, 24)
	first.await("first walk")
	first.write(" ")
	first.await("2 of ")
	first.write("\x03") // however it ends, it comes once
	if err := first.wait(); err != nil {
		t.Fatalf("the walk ended with %v", err)
	}
	term := startTerminal(t, exec.Command(bin), 80, 24)
	term.await("↑↓ pick")
	term.write("\r18")
	term.await("[18 ga]")
	term.write("\r\r\r")
	term.await("[card]")
	term.await("Strike a test bead")
	term.write("+")
	term.await("yours")
	term.write("\r")
	term.await("The limits, nearest first")
	term.write("\x1b")
	term.await("↑↓ select")
	term.resize(60, 20)
	term.await("[card]")
	term.write("qq")
	if err := term.wait(); err != nil {
		t.Fatalf("the program ended with %v", err)
	}
}

// terminal is a program's pty with an emulator as its screen.
type terminal struct {
	t    *testing.T
	cmd  *exec.Cmd
	file *os.File
	emu  *vt.SafeEmulator
}

func startTerminal(t *testing.T, cmd *exec.Cmd, w, h int) *terminal {
	cmd.Env = append(os.Environ(), "TERM=xterm-256color", "NO_COLOR=")
	f, err := pty.StartWithSize(cmd, &pty.Winsize{Cols: uint16(w), Rows: uint16(h)})
	if err != nil {
		t.Fatal(err)
	}
	x := &terminal{t, cmd, f, vt.NewSafeEmulator(w, h)}
	go func() { _, _ = io.Copy(x.emu, f) }()
	go func() { _, _ = io.Copy(f, x.emu) }() // what the terminal answers to queries
	t.Cleanup(func() { _ = cmd.Process.Kill(); _ = f.Close() })
	return x
}

func (x *terminal) write(keys string) {
	if _, err := x.file.WriteString(keys); err != nil {
		x.t.Fatal(err)
	}
}

func (x *terminal) resize(w, h int) {
	x.emu.Resize(w, h)
	if err := pty.Setsize(x.file, &pty.Winsize{Cols: uint16(w), Rows: uint16(h)}); err != nil {
		x.t.Fatal(err)
	}
}

// shown is the screen's text; the emulator's own String is not guarded against its writer.
func (x *terminal) shown() string { return ansi.Strip(x.emu.Render()) }

// await waits until the screen shows a text.
func (x *terminal) await(text string) {
	x.t.Helper()
	for range 500 {
		if strings.Contains(x.shown(), text) {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	x.t.Fatalf("the screen never shows %q:\n%s", text, x.shown())
}

// wait gives the program some seconds to end by itself.
func (x *terminal) wait() error {
	done := make(chan error, 1)
	go func() { done <- x.cmd.Wait() }()
	select {
	case err := <-done:
		return err
	case <-time.After(5 * time.Second):
		return os.ErrDeadlineExceeded
	}
}
