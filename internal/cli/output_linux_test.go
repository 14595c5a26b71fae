package cli

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"

	"brazebooth/internal/deep"
)

// fullDisk is a file system with room for names but not for a single byte of data; the test is skipped where it cannot
// be mounted.
func fullDisk(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, "size=64k"); err != nil {
		t.Skipf("no small file system can be mounted (%v): run this test as root", err)
	}
	t.Cleanup(func() { _ = syscall.Unmount(dir, syscall.MNT_DETACH) })
	if err := os.WriteFile(filepath.Join(dir, "filler"), bytes.Repeat([]byte("x"), 1<<17), 0o600); !errors.Is(err,
		syscall.ENOSPC) {
		t.Fatal(err)
	}
	return dir
}

// On a full disk a command makes no file, not even an empty one, and says what to do.
func TestAFullDiskLeavesNothing(t *testing.T) {
	deep.Turn(t)
	s := newShop(t)
	dir := fullDisk(t)
	makes := slices.DeleteFunc(waysOf(New(Deps{}), filepath.Join(dir, "made.out")), func(w way) bool {
		return !saysNew.MatchString(w.usage)
	})
	for _, w := range deep.Of(t, makes, 5) {
		got := s.run(w.args...)
		lines := strings.Split(strings.TrimSpace(got.err), "\n")
		if got.code != 1 || len(lines) != 2 || lines[1] == "" || strings.Contains(got.err, ".brazebooth") ||
			!strings.Contains(got.err, "made.out") {
			t.Errorf("%s: code %d, %q", strings.Join(w.args, " "), got.code, got.err)
		}
		if list, err := os.ReadDir(dir); err != nil || len(list) != 1 {
			t.Errorf("%s: the folder holds %v, %v", strings.Join(w.args, " "), list, err)
		}
	}
}

// Only regular files are read: opening a pipe that nobody writes into would block for ever.
func TestOnlyFilesAreRead(t *testing.T) {
	s := newShop(t)
	if err := syscall.Mkfifo("pipe.csv", 0o600); err != nil {
		t.Fatal(err)
	}
	for _, line := range []string{"batch pipe.csv", "batch /dev/null --format csv", "batch . --format csv",
		"book import pipe.csv", "book import .", "book merge pipe.csv",
		"batch jobs.csv --out pipe.csv --resume", "batch jobs.csv --out . --resume"} {
		if got := s.run(strings.Fields(line)...); got.code != 2 || len(strings.Split(strings.TrimSpace(got.err),
			"\n")) != 2 {
			t.Errorf("%s: code %d, %q", line, got.code, got.err)
		}
	}
	for _, line := range []string{"book list --book pipe.csv", "book save --gauge 18ga --feed 5 --travel 8 --name " +
		"x --book pipe.csv", "book check --book ."} {
		if got := s.run(strings.Fields(line)...); got.code != 1 || len(strings.Split(strings.TrimSpace(got.err),
			"\n")) != 2 {
			t.Errorf("%s: code %d, %q", line, got.code, got.err)
		}
	}
}
