package program

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"brazebooth/internal/deep"
)

// A ctrl+c that comes alone ends a paste without an end; one within a paste is text.
func TestAPasteWithoutAnEnd(t *testing.T) {
	type read struct {
		text string
		late bool
		want string // "" for the same
	}
	for name, reads := range map[string][]read{
		"pressed":                  {{"\x1b[200~tank", true, ""}, {"\x03", true, "\x1b[201~\x03"}, {"\x03", true, ""}},
		"pressed, as a number":     {{"\x1b[200~tank", true, ""}, {"\x1b[99;5u", true, "\x1b[201~\x1b[99;5u"}},
		"a mark in pieces":         {{"\x1b[2", true, ""}, {"00~", false, ""}, {"\x03", true, "\x1b[201~\x03"}},
		"pasted":                   {{"\x1b[200~tank", true, ""}, {"\x03", false, ""}, {"\x03ls\n", true, ""}},
		"a paste that ended":       {{"\x1b[200~tank\x1b[20", true, ""}, {"1~", false, ""}, {"\x03", true, ""}},
		"no paste":                 {{"tank", true, ""}, {"\x03", true, ""}},
		"one that ended, one open": {{"\x1b[200~a\x1b[201~\x1b[200~b", true, ""}, {"\x03", true, "\x1b[201~\x03"}},
		"after a long one": {{"\x1b[200~" + strings.Repeat("x", 5000), true, ""}, {strings.Repeat("x", 5000),
			false, ""}, {"\x03", true, "\x1b[201~\x03"}},
	} {
		var m pasteMarks
		for i, r := range reads {
			p := make([]byte, 8192)
			want := r.want
			if want == "" {
				want = r.text
			}
			if n := m.pass(p, copy(p, r.text), r.late); string(p[:n]) != want {
				t.Errorf("%s, reading %d: %.40q, want %.40q", name, i+1, p[:n], want)
			}
		}
	}
}

// In a real terminal, ctrl+c and signals end the program after a paste without an end.
func TestLeavingAPasteWithoutAnEnd(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("a clock of a quarter of a second, which a slow run outlasts")
	}
	t.Setenv("XDG_DATA_HOME", t.TempDir())
	state := t.TempDir()
	t.Setenv("XDG_STATE_HOME", state)
	if err := os.MkdirAll(filepath.Join(state, "brazebooth"), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(state, "brazebooth", "walked"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for name, leave := range map[string]func(cmd *exec.Cmd, x *seen){
		"ctrl+c":  func(_ *exec.Cmd, x *seen) { x.write("\x03") },
		"SIGINT":  func(cmd *exec.Cmd, _ *seen) { _ = cmd.Process.Signal(syscall.SIGINT) },
		"SIGTERM": func(cmd *exec.Cmd, _ *seen) { _ = cmd.Process.Signal(syscall.SIGTERM) },
	} {
		cmd := exec.Command("brazebooth")
		x := inPty(t, cmd, 80, 24)
		x.await("↑↓ pick")
		x.write("\x1b[200~18")
		again := time.NewTicker(2 * alone) // a user presses again if nothing happens
		gone := make(chan struct{})
		go func() {
			for {
				select {
				case <-again.C:
					leave(cmd, x)
				case <-gone:
					return
				}
			}
		}()
		if code := exitOf(t, cmd.Wait); code != 0 {
			t.Errorf("%s: the program ended with %d", name, code)
		}
		again.Stop()
		close(gone)
	}
}
