//go:build unix

package main

import (
	"bufio"
	"bytes"
	"io"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"brazebooth/internal/deep"
)

// process is this program in its own process, with its input kept open.
type process struct {
	*exec.Cmd
	in   io.WriteCloser
	out  *bufio.Reader
	told bytes.Buffer
	dir  string
}

func start(t *testing.T, args ...string) *process {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	p := &process{Cmd: exec.Command(self, args...), dir: dir}
	p.Args[0] = "brazebooth" // by this name TestMain runs the program
	p.Dir, p.Stderr = dir, &p.told
	p.Env = append(os.Environ(), "HOME="+dir, "XDG_DATA_HOME="+dir, "XDG_CONFIG_HOME="+dir)
	if p.in, err = p.StdinPipe(); err != nil {
		t.Fatal(err)
	}
	out, err := p.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	p.out = bufio.NewReader(out)
	if err := p.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = p.Process.Kill(); _ = p.Wait() })
	return p
}

// give writes to the program's input; it returns when all but a pipe's buffer was read.
func (p *process) give(t *testing.T, text string) {
	t.Helper()
	if _, err := io.WriteString(p.in, text); err != nil {
		t.Fatal(err, p.told.String())
	}
}

// line is the next line of the answer.
func (p *process) line(t *testing.T) string {
	t.Helper()
	text, err := p.out.ReadString('\n')
	if err != nil {
		t.Fatal(err, p.told.String())
	}
	return text
}

// ends sends a signal once and waits for the end, with exit code 1.
func (p *process) ends(t *testing.T, s os.Signal) {
	t.Helper()
	if p.leaves(t, s); p.ProcessState.ExitCode() != 1 || !strings.Contains(p.told.String(), "cancelled") {
		t.Errorf("%v: %v, told %q", s, p.ProcessState, p.told.String())
	}
}

// leaves sends a signal once and waits until the program exits, which the signal itself must not kill.
func (p *process) leaves(t *testing.T, s os.Signal) {
	t.Helper()
	late := time.AfterFunc(deep.Patience(t), func() { _ = p.Process.Kill() })
	defer late.Stop()
	if err := p.Process.Signal(s); err != nil {
		t.Fatal(err)
	}
	_, _ = io.Copy(io.Discard, p.out)
	_ = p.Wait()
	if !p.ProcessState.Exited() {
		t.Errorf("%v: %v, told %q", s, p.ProcessState, p.told.String())
	}
}

const (
	head = "id,metal,gauge,feed,travel\n"
	rows = "1,hsla,18ga,5,8\n2,hsla,20ga,4,8\n"
	rest = "3,hsla,18ga,5,7\n"
)

var signals = [...]os.Signal{os.Interrupt, syscall.SIGTERM}

// A command that waits for input ends at the first signal, and keeps what it has.
func TestASignalEndsWhatReads(t *testing.T) {
	for _, s := range signals {
		p := start(t, "batch", "-", "--format", "csv")
		p.give(t, head+rows)
		for range 3 {
			p.line(t)
		}
		p.ends(t, s)

		p = start(t, "book", "import", "-")
		p.give(t, strings.Repeat("\n", 1<<18)) // more than a pipe's buffer, so the program reads
		p.ends(t, s)

		p = start(t, "--plain")
		p.line(t)
		p.leaves(t, s) // leaving the questions is not an error
	}
}

// A batch that was ended by a signal can be resumed.
func TestASignalLeavesAResumableBatch(t *testing.T) {
	for _, s := range signals {
		p := start(t, "batch", "-", "--format", "csv", "--out", "cards.csv")
		p.give(t, head+rows)
		file := filepath.Join(p.dir, "cards.csv")
		for give := time.Now().Add(deep.Patience(t)); ; time.Sleep(5 * time.Millisecond) {
			if b, _ := os.ReadFile(file); bytes.Count(b, []byte("\n")) == 3 {
				break
			}
			if time.Now().After(give) {
				t.Fatal("no row was written: ", p.told.String())
			}
		}
		p.ends(t, s)
		if !strings.Contains(p.told.String(), "cancelled after 2 rows\ngo on after them with --resume") {
			t.Errorf("%v: told %q", s, p.told.String())
		}
		for _, args := range [][]string{{"--out", file, "--resume"}, {"--out", filepath.Join(p.dir, "whole.csv")}} {
			next := start(t, append([]string{"batch", "-", "--format", "csv"}, args...)...)
			next.give(t, head+rows+rest)
			_ = next.in.Close()
			if err := next.Wait(); err != nil {
				t.Fatal(err, next.told.String())
			}
		}
		whole, err := os.ReadFile(filepath.Join(p.dir, "whole.csv"))
		if err != nil {
			t.Fatal(err)
		}
		if b, err := os.ReadFile(file); err != nil || !bytes.Equal(b, whole) {
			t.Errorf("%v: %v\n%s\nwant\n%s", s, err, b, whole)
		}
	}
}

// A second signal ends the program at once, even if its output is blocked.
func TestTheSecondSignalEndsAtOnce(t *testing.T) {
	for _, s := range signals {
		if signal.Ignored(s) { // shells ignore SIGINT for background programs, which it then does not end
			t.Logf("%v is ignored here", s)
			continue
		}
		p, told := stuck(t)
		// the row's error is printed, and then its answer written
		if _, err := told.ReadString('\n'); err != nil {
			t.Fatal(err)
		}
		late := time.AfterFunc(deep.Patience(t), func() { _ = p.Process.Kill() })
		gone := make(chan struct{})
		go func() {
			_ = p.Wait()
			close(gone)
		}()
		again := time.NewTicker(20 * time.Millisecond) // a second one that arrives too early counts as the first
		for waiting := true; waiting; {
			_ = p.Process.Signal(s)
			select {
			case <-gone:
				waiting = false
			case <-again.C:
			}
		}
		again.Stop()
		if status := p.ProcessState.Sys().(syscall.WaitStatus); !late.Stop() || !status.Signaled() ||
			status.Signal() != s {
			t.Errorf("%v: %v", s, p.ProcessState)
		}
	}
}

// stuck is a batch whose output is blocked, and its standard error.
func stuck(t *testing.T) (*exec.Cmd, *bufio.Reader) {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	out, full, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	fill(t, full)
	cmd := exec.Command(self, "batch", "-", "--format", "jsonl", "--keep-going")
	cmd.Args[0], cmd.Stdin, cmd.Stdout = "brazebooth", strings.NewReader("nonsense\n"), full
	told, err := cmd.StderrPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_ = cmd.Process.Kill()
		_ = out.Close()
		_ = full.Close()
	})
	return cmd, bufio.NewReader(told)
}

// fill writes to a pipe until it is full.
func fill(t *testing.T, pipe *os.File) {
	t.Helper()
	raw, err := pipe.SyscallConn()
	if err != nil {
		t.Fatal(err)
	}
	err = raw.Control(func(fd uintptr) {
		for room := make([]byte, 1<<10); ; {
			if _, err := syscall.Write(int(fd), room); err != nil {
				if len(room) == 1 {
					return
				}
				room = room[:1]
			}
		}
	})
	if err != nil {
		t.Fatal(err)
	}
}
