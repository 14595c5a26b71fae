package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"github.com/creack/pty"
)

// frames compares the time to a first full 80 x 24 frame, cold, through the same pseudo-terminal.
func frames(dir, own string) error {
	page := filepath.Join(dir, "page")
	text := strings.Repeat("a line\n", 21) + "the end\n" + strings.Repeat("more\n", 99)
	if err := os.WriteFile(page, []byte(text), 0o644); err != nil {
		return err
	}
	screens := func() (time.Duration, error) { return frame("help", own) }
	for _, other := range []struct {
		name, marker string
		args         []string
	}{{"htop", "Quit", nil}, {"less", "the end", []string{page}}, {"vim", "the end", []string{"-u", "NONE", page}}} {
		path, err := exec.LookPath(other.name)
		if err != nil {
			fmt.Printf("first frame                        %s is not installed: not compared\n", other.name)
			continue
		}
		ratio, err := interleave(21, screens, func() (time.Duration, error) {
			return frame(other.marker, path, other.args...)
		})
		if err != nil {
			return err
		}
		fmt.Printf("first frame, 80x24                 %.2f x %s\n", ratio, other.name)
	}
	return nil
}

// frame starts a program in a terminal and waits at most ten seconds for the text at the end of its first full frame.
func frame(marker, path string, args ...string) (time.Duration, error) {
	cmd := exec.Command(path, args...)
	// without a state folder the walk for newcomers is not shown
	cmd.Env = append(os.Environ(), "TERM=xterm-256color", "XDG_STATE_HOME="+os.DevNull)
	begin := time.Now()
	term, err := pty.StartWithSize(cmd, &pty.Winsize{Rows: 24, Cols: 80})
	if err != nil {
		return 0, err
	}
	late := time.AfterFunc(10*time.Second, func() { _ = cmd.Process.Kill() })
	defer func() {
		late.Stop()
		_ = cmd.Process.Kill()
		_ = term.Close()
		_ = cmd.Wait()
	}()
	var seen bytes.Buffer
	buf := make([]byte, 64<<10)
	for !bytes.Contains(seen.Bytes(), []byte(marker)) {
		n, err := term.Read(buf)
		seen.Write(buf[:n])
		if err != nil {
			return 0, errors.Join(fmt.Errorf("%s ended without %q", path, marker), err)
		}
	}
	return time.Since(begin), nil
}
