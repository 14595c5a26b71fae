package program

import (
	"fmt"
	"os"
	"strings"
	"syscall"
	"testing"

	"brazebooth/internal/deep"
)

// holds reports whether any process has a lock on a file, as the system lists them.
func holds(t testing.TB, file string) bool {
	t.Helper()
	info, err := os.Stat(file)
	if err != nil {
		t.Fatal(err)
	}
	locks, err := os.ReadFile("/proc/locks")
	if err != nil {
		t.Skipf("the system's locks cannot be read: %v", err)
	}
	return strings.Contains(string(locks), fmt.Sprintf(":%d ", info.Sys().(*syscall.Stat_t).Ino))
}

// While one session of a server has the book open, the server keeps its lock on the file, whatever other sessions do.
// Without the lock, another process would believe that it is the last user of the book and delete the log that the
// server still writes.
func TestServerKeepsItsLockOnTheBook(t *testing.T) {
	port := freePort(t)
	b := startBooth(t, "--metrics", port)
	b.ask(t, "writer", "book save --name lid --gauge 20ga --feed 5 --travel 8", "")
	b.ask(t, "writer", "book source --name 'booth 1'", "")
	for _, command := range []string{"book save --name lid2 --gauge 20ga --feed 5 --travel 8",
		"book edit lid --note x", "book delete lid2", "book restore lid2",
		"book reading --power-source 'booth 1' --feed 6.3 --stickout 12mm --amps 96 --volts 15.2",
		"book trial lid --verdict good", "book person ana", "book spool --lot A17 --filler cusi3 --wire .035 " +
			"--full 4540",
		"book list", "book find lid", "book show lid --all", "book history lid", "book export -", "book check",
		"book import -", "card --gauge 20ga --power-source 'booth 1'", "nonsense"} {
		b.holding(t, command, func() {
			if out, told, code := b.ask(t, "writer", command, ""); code != 0 && command != "nonsense" {
				t.Errorf("%s: exit %d, %s%s", command, code, out, told)
			}
		})
	}
	b.holding(t, "a look at the server's health", func() { page(t, port, "/healthz") })
}

// holding calls do while a session has the book open, and checks that the server keeps its lock.
func (b *testBooth) holding(t *testing.T, what string, do func()) {
	t.Helper()
	c := b.client(t, "writer")
	defer c.Close()
	s, err := c.NewSession()
	if err != nil {
		t.Fatal(err)
	}
	in, err := s.StdinPipe()
	if err == nil {
		err = s.Start("book import -") // keeps the book open until its input ends
	}
	if err != nil {
		t.Fatal(err)
	}
	if !deep.Comes(t, func() bool { return holds(t, b.book) }) {
		t.Skip("locks on this file system are not listed")
	}
	if do(); !holds(t, b.book) {
		t.Errorf("after %s the server has lost its lock on the book", what)
	}
	for _, name := range []string{"", "-wal", "-shm"} {
		if !exists(b.book + name) {
			t.Errorf("after %s book.db%s is gone while a session has it open", what, name)
		}
	}
	if err := in.Close(); err != nil {
		t.Error(err)
	}
	if err := s.Wait(); err != nil {
		t.Error(err)
	}
}
