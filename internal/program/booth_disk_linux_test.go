package program

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// smallDisk mounts a file system of one megabyte; the test is skipped where that is not allowed.
func smallDisk(t testing.TB) string {
	t.Helper()
	dir := t.TempDir()
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, "size=1m"); err != nil {
		t.Skipf("no small file system can be mounted (%v): run this test as root", err)
	}
	t.Cleanup(func() { _ = syscall.Unmount(dir, syscall.MNT_DETACH) })
	return dir
}

// fill writes until a disk is full; empty frees the room again.
func fill(t testing.TB, dir string) (empty func()) {
	t.Helper()
	file := filepath.Join(dir, "filler")
	f, err := os.Create(file)
	if err != nil {
		t.Fatal(err)
	}
	for err == nil {
		_, err = f.Write(bytes.Repeat([]byte("x"), 512))
	}
	_ = f.Close()
	if !errors.Is(err, syscall.ENOSPC) {
		t.Fatal(err)
	}
	return func() { _ = os.Remove(file) }
}

// On a full disk a save fails with a clear error, acknowledged saves are there, reading works, and saving works again
// when there is room.
func TestDiskFullUnderTheBook(t *testing.T) {
	dir := smallDisk(t)
	b := startBooth(t, "--book", filepath.Join(dir, "book.db"))
	var acknowledged []string
	save := func(n int) (told string, ok bool) {
		name := fmt.Sprintf("card-%d", n)
		_, told, code := b.ask(t, "writer", "book save --gauge 20ga --name "+name, "")
		if code == 0 {
			acknowledged = append(acknowledged, name)
		} else if code != 1 {
			t.Errorf("exit %d: %s", code, told)
		}
		silent(t, "a full disk", told, dir, nil)
		return told, code == 0
	}
	if told, ok := save(0); !ok {
		t.Fatal(told)
	}
	empty := fill(t, dir)
	full := false
	for n := 1; n < 60 && !full; n++ {
		told, ok := save(n)
		if full = !ok; full && !strings.Contains(told, "full") {
			t.Errorf("the error of a save says only: %s", told)
		}
	}
	if !full {
		t.Fatal("the disk never got full")
	}
	if out, told, code := b.ask(t, "reader", "card --gauge 20ga", ""); code != 0 {
		t.Errorf("a look-up fails: %s%s", out, told)
	}
	if out, told, code := b.ask(t, "reader", "book find card-0", ""); code != 0 || !strings.Contains(out, "card-0") {
		t.Errorf("reading fails: exit %d, %s%s", code, out, told)
	}
	empty()
	if told, ok := save(100); !ok {
		t.Errorf("there is room again, and: %s", told)
	}
	b.sound(t, acknowledged)
}

// With a full disk for the log, lines are lost and counted, and no session waits.
func TestDiskFullUnderTheLog(t *testing.T) {
	dir := smallDisk(t)
	port := freePort(t)
	b := startBooth(t, "--log", filepath.Join(dir, "log"), "--metrics", port)
	empty := fill(t, dir)
	for range 60 { // more than the rest of a page
		if out, told, code := b.ask(t, "writer", "gauge 16", ""); code != 0 || !strings.Contains(out, "1.5189") {
			t.Fatalf("exit %d: %s", code, told)
		}
	}
	if out := page(t, port, "/metrics"); !strings.Contains(out, "brazebooth_log_lines_lost") || strings.Contains(out,
		"brazebooth_log_lines_lost 0\n") {
		t.Errorf("no line is counted as lost: %s", out)
	}
	empty()
	b.ask(t, "writer", "gauge 18", "")
	eventually(t, "no line is written when there is room again", func() bool {
		text, err := os.ReadFile(filepath.Join(dir, "log"))
		return err == nil && strings.HasSuffix(string(text), "}\n")
	})
	text, err := os.ReadFile(filepath.Join(dir, "log"))
	if err != nil {
		t.Fatal(err)
	}
	torn := 0
	for line := range strings.Lines(string(text)) {
		if !json.Valid([]byte(line)) {
			torn++
		}
	}
	if torn > 1 {
		t.Errorf("%d lines are torn: %s", torn, text)
	}
}
