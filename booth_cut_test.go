package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"net"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

// kept are the names of the cards that a booth's book holds, by its own export.
func (b *testBooth) kept(t testing.TB) map[string]bool {
	t.Helper()
	out, told, code := b.ask(t, "writer", "book export -", "")
	if code != 0 {
		t.Fatalf("exit %d: %s", code, told)
	}
	names := map[string]bool{}
	for line := range strings.Lines(out) {
		var r struct{ Body struct{ Name string } }
		if err := json.Unmarshal([]byte(line), &r); err != nil {
			t.Fatal(err)
		}
		names[r.Body.Name] = true
	}
	return names
}

// sound checks a book, and that it holds all that was acknowledged.
func (b *testBooth) sound(t testing.TB, acknowledged []string) {
	t.Helper()
	if out, told, code := b.ask(t, "writer", "book check", ""); code != 0 || !strings.Contains(out, "nothing wrong") {
		t.Errorf("the book is not sound: %s%s", out, told)
	}
	names := b.kept(t)
	for _, name := range acknowledged {
		if !names[name] {
			t.Errorf("%s was acknowledged and is lost", name)
		}
	}
}

// Connections that are cut at any moment around a save lose nothing that was acknowledged, and harm no book.
func TestConnectionsCutInTheMiddleOfASave(t *testing.T) {
	b := startBooth(t, "--per-key", "100", "--per-address", "100", "--log", filepath.Join(t.TempDir(), "log"))
	b.ask(t, "writer", "book save --name first --gauge 20ga", "")
	begin := time.Now()
	var first sync.WaitGroup
	for n := range 4 { // as many as come at once below
		first.Go(func() { b.saveAndCut(t, fmt.Sprintf("whole-%d", n), time.Minute) })
	}
	first.Wait()
	usual := time.Since(begin)
	var mu sync.Mutex
	var acknowledged []string
	cut := 0
	tries := make(chan int)
	var all sync.WaitGroup
	for w := range 4 {
		all.Go(func() {
			r := rand.New(rand.NewPCG(uint64(w), 7))
			for n := range tries {
				name := fmt.Sprintf("cut-%d", n)
				ok := b.saveAndCut(t, name, time.Duration(r.Int64N(int64(2*usual))))
				mu.Lock()
				if ok {
					acknowledged = append(acknowledged, name)
				} else {
					cut++
				}
				mu.Unlock()
			}
		})
	}
	for n := range faultsOr(60) {
		tries <- n
	}
	close(tries)
	all.Wait()
	b.sound(t, append(acknowledged, "first"))
	if few := faultsOr(60) / 20; len(acknowledged) < few || cut < few {
		t.Errorf("%d acknowledged and %d cut: nothing was tested", len(acknowledged), cut)
	}
	t.Logf("%d cut before the answer, %d acknowledged, none of them lost; %d cards in the book", cut, len(acknowledged), len(b.kept(t)))
}

// saveAndCut saves a card over a connection that is cut after a while, and reports whether the save was acknowledged.
func (b *testBooth) saveAndCut(t testing.TB, name string, after time.Duration) bool {
	conn, err := net.Dial("tcp", b.addr)
	if err != nil {
		t.Error(err)
		return false
	}
	defer conn.Close()
	c, chans, requests, err := gossh.NewClientConn(conn, b.addr, b.config(t, "writer"))
	if err != nil {
		t.Error(err)
		return false
	}
	s, err := gossh.NewClient(c, chans, requests).NewSession()
	if err != nil {
		t.Error(err)
		return false
	}
	time.AfterFunc(after, func() {
		_ = conn.(*net.TCPConn).SetLinger(0)
		_ = conn.Close()
	})
	return s.Run("book save --gauge 20ga --name "+name) == nil
}

// config is how one of the three comes in.
func (b *testBooth) config(t testing.TB, who string) *gossh.ClientConfig {
	text, err := os.ReadFile(filepath.Join(b.dir, who))
	if err != nil {
		t.Error(err)
	}
	key, err := gossh.ParsePrivateKey(text)
	if err != nil {
		t.Error(err)
	}
	return &gossh.ClientConfig{User: who, Auth: []gossh.AuthMethod{gossh.PublicKeys(key)}, HostKeyCallback: gossh.InsecureIgnoreHostKey(), Timeout: 10 * time.Second}
}

// smallDisk mounts a file system of one megabyte; the test is skipped where that may not be done.
func smallDisk(t testing.TB) string {
	t.Helper()
	dir := t.TempDir()
	if runtime.GOOS != "linux" {
		t.Skip("a small file system is made only on Linux")
	}
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, "size=1m"); err != nil {
		t.Skipf("no small file system can be mounted (%v): run this test as root", err)
	}
	t.Cleanup(func() { _ = syscall.Unmount(dir, syscall.MNT_DETACH) })
	return dir
}

// fill writes until a disk is full; what it returns gives the room back.
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

// A full disk under the book: who saves is told, what was acknowledged is there, reading goes on, and so does saving when
// there is room again.
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
			t.Errorf("who saves is told only: %s", told)
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

// A full disk under the log: lines are lost and counted, and nobody waits for them.
func TestDiskFullUnderTheLog(t *testing.T) {
	dir := smallDisk(t)
	port := freePort(t)
	b := startBooth(t, "--log", filepath.Join(dir, "log"), "--metrics", port)
	empty := fill(t, dir)
	for range 60 { // more than what is left of a page
		if out, told, code := b.ask(t, "writer", "gauge 16", ""); code != 0 || !strings.Contains(out, "1.5189") {
			t.Fatalf("exit %d: %s", code, told)
		}
	}
	if out := page(t, port, "/metrics"); !strings.Contains(out, "brazebooth_log_lines_lost") || strings.Contains(out, "brazebooth_log_lines_lost 0\n") {
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
