package program

import (
	"crypto/ed25519"
	"crypto/rand"
	"fmt"
	"net"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"

	"brazebooth/internal/deep"
)

// fresh is a new, unlisted key; without is no key at all.
func fresh(t testing.TB) gossh.AuthMethod {
	t.Helper()
	_, private, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	key, err := gossh.NewSignerFromKey(private)
	if err != nil {
		t.Fatal(err)
	}
	return gossh.PublicKeys(key)
}

func without() gossh.AuthMethod {
	return gossh.KeyboardInteractive(func(string, string, []string, []bool) ([]string, error) { return nil, nil })
}

// from connects from an address of this machine with one way to log in.
func (b *testBooth) from(t testing.TB, address string, how gossh.AuthMethod) *gossh.Client {
	t.Helper()
	d := net.Dialer{LocalAddr: &net.TCPAddr{IP: net.ParseIP(address)}, Timeout: deep.Patience(t)}
	conn, err := d.Dial("tcp", b.addr)
	if err != nil {
		t.Skipf("this machine has no address %s: %v", address, err)
	}
	t.Cleanup(func() { _ = conn.Close() })
	c, chans, requests, err := gossh.NewClientConn(conn, b.addr, &gossh.ClientConfig{User: "ana",
		Auth: []gossh.AuthMethod{how}, HostKeyCallback: gossh.InsecureIgnoreHostKey()})
	if err != nil {
		t.Fatal(err)
	}
	return gossh.NewClient(c, chans, requests)
}

// Unlisted keys cost nothing to make. So all sessions from one address without a listed key count together, over any
// number of connections. Listed keys are counted apart.
func TestLimitOfUnlistedKeys(t *testing.T) {
	t.Parallel()
	for _, writers := range []bool{true, false} { // without writers no key is needed
		b := startBooth(t, "--open", "--per-key", "3")
		if !writers {
			b.stop()
			b = startBooth(t, "--open", "--per-key", "3", "--writers", "")
		}
		var held []*gossh.Session
		for i, how := range []gossh.AuthMethod{fresh(t), without(), fresh(t)} {
			s, x := screensIn(t, b.from(t, "127.0.0.1", how), 80, 24)
			x.await("wire feed")
			if held = append(held, s); i > 0 {
				continue
			}
			if said := run1(t, b.from(t, "127.0.0.1", how), "gauge 16"); !strings.Contains(said, "1.5189") {
				t.Errorf("below the limit: %s", said)
			}
		}
		for _, how := range []gossh.AuthMethod{fresh(t), without(), fresh(t)} {
			if said := run1(t, b.from(t, "127.0.0.1", how), "gauge 16"); !strings.Contains(said,
				"your address has too many sessions") {
				t.Errorf("a fourth of one address: %s", said)
			}
		}
		if said := run1(t, b.from(t, "127.0.0.9", fresh(t)), "gauge 16"); !strings.Contains(said, "1.5189") {
			t.Errorf("another address: %s", said)
		}
		for _, who := range []string{"reader", "writer"} {
			if out, told, code := b.ask(t, who, "gauge 16", ""); code != 0 && writers {
				t.Errorf("%s is listed: exit %d, %s%s", who, code, out, told)
			}
		}
		_ = held[1].Close()
		eventually(t, "no place is given back", func() bool {
			return strings.Contains(run1(t, b.from(t, "127.0.0.1", fresh(t)), "gauge 16"), "1.5189")
		})
	}
}

// A key's permission is checked again and again: sessions that began with the old one end, even if their client keeps
// opening new ones.
func TestServeEndsWhatBeganWithMore(t *testing.T) {
	deep.Turn(t)
	t.Parallel()
	for _, x := range []struct{ name, who, file string }{{"a writer who may only look", "writer", "writers"},
		{"a reader nobody lists", "reader", "keys"}} {
		b := startBooth(t, "--open")
		c := b.client(t, x.who)
		_, seen := screensIn(t, c, 80, 24)
		seen.await("wire feed")
		if err := os.WriteFile(filepath.Join(b.dir, x.file), []byte("# nobody\n"), 0o600); err != nil {
			t.Fatal(err)
		}
		gone := make(chan struct{})
		go func() { _ = c.Wait(); close(gone) }()
		for give := time.Now().Add(deep.Patience(t)); ; {
			opened := make(chan struct{})
			go func() { // the client's library may wait for ever for a session that it opens while the connection ends
				defer close(opened)
				if s, err := c.NewSession(); err == nil {
					_ = s.Run("gauge 16")
				}
			}()
			select {
			case <-opened:
			case <-gone:
			}
			select {
			case <-gone:
			default:
				if time.Now().Before(give) {
					continue
				}
				t.Errorf("%s stays in by opening more", x.name)
			}
			break
		}
	}
}

// The number of metrics depends on the commands of the program, not on what clients type.
func TestFiguresDoNotGrowWithWhatIsAsked(t *testing.T) {
	t.Parallel()
	port := freePort(t)
	b := startBooth(t, "--open", "--metrics", port, "--per-key", "2")
	c := b.from(t, "127.0.0.1", fresh(t))
	ask := func(n int) {
		for _, command := range []string{"x%d", "help x%d", "book x%d", "card --x%d", "gauge %d", "__complete x%d",
			"--theme x%d", "'x%d", "book find x%d", "x%d y", "--plain x%d"} {
			run1(t, c, fmt.Sprintf(command, n))
		}
	}
	ask(1)
	lines := func() (n int) {
		for line := range strings.Lines(page(t, port, "/metrics")) {
			// histogram buckets, whose number depends on the durations
			if strings.HasPrefix(line, "brazebooth_") && !strings.Contains(line, "_bucket{") {
				n++
			}
		}
		return n
	}
	before := lines()
	for n := range 5 {
		ask(n + 2)
	}
	if now := lines(); now != before {
		t.Errorf("%d lines of figures, then %d", before, now)
	}
	for line := range strings.Lines(page(t, port, "/metrics")) {
		if strings.HasPrefix(line, "brazebooth_") && (strings.Contains(line, "x1") || strings.Contains(line, "x6")) {
			t.Errorf("a figure of what somebody typed: %s", line)
		}
	}
}
