package program

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/creack/pty"

	"brazebooth/tui"
)

// answersCome is how long doctor waits in tests where every answer comes: longer than any machine takes, but not so
// long that a lost answer delays the tests much.
const answersCome = "30s"

// atHome gives doctor fresh folders without anything to mend.
func atHome(t *testing.T) {
	t.Helper()
	for _, name := range []string{"HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME"} {
		t.Setenv(name, t.TempDir())
	}
	t.Setenv("LC_ALL", "C.UTF-8")
}

// doctor asks its terminal, and leaves nothing on it but its report.
func TestDoctorAsksTheTerminal(t *testing.T) {
	atHome(t)
	t.Setenv(patience, answersCome)
	cmd := exec.Command("brazebooth", "doctor")
	x := inPty(t, cmd, 90, 60)
	x.await("config set theme")
	if code := exitOf(t, cmd.Wait); code != 0 {
		t.Errorf("exit code %d", code)
	}
	shown := x.shown()
	for _, want := range []string{"signs of the screens take one column", "\n  ok    background", "│▲▼✓"} {
		if !strings.Contains(shown, want) {
			t.Errorf("%q is not shown:\n%s", want, shown)
		}
	}
	if !strings.HasPrefix(shown, "program ") {
		t.Errorf("the question is left:\n%s", shown)
	}
}

// A terminal that takes two columns for each sign is recognised; one that answers nothing, or something else, does not
// block doctor.
func TestDoctorAtOddTerminals(t *testing.T) {
	atHome(t)
	signs := len([]rune(tui.Signs()))
	for _, c := range []struct {
		answer, within, want string
		code                 int
	}{
		{"\x1b[2;3R", answersCome, fmt.Sprintf("two columns where the screens count on one (%d): ▀ ▄ █", signs), 1},
		{"", "50ms", "did not say", 0},
		{"\x1b]11;rgb:zz\x07\x1b[?6nx", "50ms", "did not say", 0},
	} {
		cmd := exec.Command("brazebooth", "doctor")
		cmd.Env = append(os.Environ(), "TERM=xterm-256color", patience+"="+c.within)
		f, err := pty.Start(cmd)
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		asked := make(chan int, 1)
		go func() {
			p, n := make([]byte, 4096), 0
			for {
				got, err := f.Read(p)
				out.Write(p[:got])
				for range strings.Count(out.String(), "\x1b[6n") - n {
					n++
					_, _ = io.WriteString(f, c.answer)
				}
				if err != nil { // it has ended
					asked <- n
					return
				}
			}
		}()
		code := exitOf(t, cmd.Wait)
		if n := <-asked; n != signs || code != c.code || !strings.Contains(out.String(), c.want) {
			t.Errorf("%q: asked %d times, exit code %d\n%s", c.answer, n, code, out.String())
		}
		_ = f.Close()
	}
}
