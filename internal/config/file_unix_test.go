//go:build unix

package config

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
)

// Anything but a regular file is refused, without waiting for a pipe that nobody writes into.
func TestOnlyRegularFiles(t *testing.T) {
	dir := t.TempDir()
	pipe := filepath.Join(dir, "pipe")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(dir, "link")
	if err := os.Symlink(pipe, link); err != nil {
		t.Fatal(err)
	}
	for file, what := range map[string]string{pipe: "a pipe or a device", link: "a pipe or a device",
		os.DevNull: "a pipe or a device", dir: "a folder"} {
		done := make(chan []error, 1)
		go func() {
			_, load := Load(file, nil)
			_, _, set := Set(file, "units", "inch")
			_, unset := Unset(file, "units")
			done <- []error{load, set, unset}
		}()
		select {
		case list := <-done:
			for i, err := range list {
				var e *mistake.Error
				if !errors.As(err, &e) || e.What != file+" is not a file: it is "+what || !strings.Contains(e.Hint,
					"take it away") {
					t.Errorf("%s, %d: %v", file, i, err)
				}
			}
		case <-time.After(deep.Patience(t)):
			t.Fatalf("opening %s blocks", file)
		}
	}
}
