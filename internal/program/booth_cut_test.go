package program

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"net"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"

	"brazebooth/internal/deep"
)

// kept are the names of the cards in a booth's book, by its own export.
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

// sound checks a book, and that it has all acknowledged cards.
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

// Connections that are cut at any moment around a save lose no acknowledged save, and damage no book.
func TestConnectionsCutInTheMiddleOfASave(t *testing.T) {
	t.Parallel()
	b := startBooth(t, "--per-key", "100", "--per-address", "100", "--log", filepath.Join(t.TempDir(), "log"))
	b.ask(t, "writer", "book save --name first --gauge 20ga", "")
	begin := time.Now()
	var first sync.WaitGroup
	for n := range 4 { // as many as save at once below
		first.Go(func() { b.saveAndCut(t, fmt.Sprintf("whole-%d", n), deep.Patience(t)) })
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
			r := rand.New(rand.NewPCG(deep.Seed(), uint64(w)))
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
	cuts := deep.Many(12, 60)
	for n := range cuts {
		tries <- n
	}
	close(tries)
	all.Wait()
	b.sound(t, append(acknowledged, "first"))
	if few := cuts / 20; len(acknowledged) < few || cut < few {
		t.Errorf("%d acknowledged and %d cut: nothing was tested", len(acknowledged), cut)
	}
	t.Logf("%d cut before the answer, %d acknowledged, none of them lost; %d cards in the book", cut,
		len(acknowledged), len(b.kept(t)))
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
