package program

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
	gossh "golang.org/x/crypto/ssh"

	"brazebooth/internal/deep"
)

// sharedBook is an empty book on the PostgreSQL server for tests; it is dropped at the end.
func sharedBook(t testing.TB) string {
	t.Helper()
	address := os.Getenv("BRAZEBOOTH_TEST_POSTGRES")
	if address == "" {
		t.Skip("no PostgreSQL: export BRAZEBOOTH_TEST_POSTGRES=$(.ci/postgres start)")
	}
	schema := fmt.Sprintf("machines_%d", os.Getpid())
	do := func(statement string) error {
		c, err := pgx.Connect(context.Background(), address)
		if err != nil {
			return err
		}
		_, err = c.Exec(context.Background(), statement)
		return errors.Join(err, c.Close(context.Background()))
	}
	if err := do("CREATE SCHEMA " + schema); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = do("DROP SCHEMA " + schema + " CASCADE") })
	u, err := url.Parse(address)
	if err != nil {
		t.Fatal(err)
	}
	q := u.Query()
	q.Set("search_path", schema)
	u.RawQuery = q.Encode()
	return u.String()
}

// machine is a server in its own process.
type machine struct {
	addr, log string
	process   *os.Process
}

// startMachine runs a server that trusts a balancer at 127.0.0.2; all servers use the keys and the host key in dir.
func startMachine(t testing.TB, dir, name, book string) *machine {
	t.Helper()
	m := &machine{addr: freePort(t), log: filepath.Join(dir, name+".log")}
	cmd := exec.Command("brazebooth", "serve", "--listen", m.addr, "--keys", filepath.Join(dir, "keys"), "--writers",
		filepath.Join(dir, "writers"),
		"--host-key", filepath.Join(dir, "host_key"), "--book", book, "--proxy", "127.0.0.2", "--log", m.log,
		"--per-address", "3")
	cmd.Env = append(os.Environ(), "HOME="+dir, "XDG_DATA_HOME="+filepath.Join(dir, name), "XDG_CONFIG_HOME="+dir)
	told := new(words)
	cmd.Stderr = told
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	m.process = cmd.Process
	t.Cleanup(func() { _ = cmd.Process.Kill(); _ = cmd.Wait() })
	eventually(t, "a server does not listen", func() bool { return strings.Contains(told.String(), "serving at") })
	return m
}

// sessions is how many ended sessions from an address a server has logged.
func (m *machine) sessions(t testing.TB, from string) int {
	t.Helper()
	text, err := os.ReadFile(m.log)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for line := range strings.Lines(string(text)) {
		if strings.Contains(line, `"msg":"session"`) && strings.Contains(line, fmt.Sprintf(`"from":%q`, from)) {
			n++
		}
	}
	return n
}

// balance runs HAProxy in front of servers, as docs/serving.md describes.
func balance(t testing.TB, dir string, servers ...*machine) (addr string) {
	t.Helper()
	program, err := exec.LookPath("haproxy")
	if err != nil {
		if program = "/usr/sbin/haproxy"; !exists(program) {
			t.Skip("no HAProxy here: install it (Debian: apt-get install haproxy)")
		}
	}
	addr = freePort(t)
	config := "defaults\n mode tcp\n timeout connect 2s\n timeout client 1h\n timeout server 1h\n option " +
		"redispatch\n retries 3\n" +
		"frontend booth\n bind " + addr + "\n default_backend servers\nbackend servers\n source 127.0.0.2\n " +
		"balance leastconn\n"
	for i, m := range servers {
		config += fmt.Sprintf(" server s%d %s check inter 200ms fall 1 rise 1 send-proxy-v2 on-marked-down "+
			"shutdown-sessions\n", i, m.addr)
	}
	file := filepath.Join(dir, "haproxy.cfg")
	if err := os.WriteFile(file, []byte(config), 0o600); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(program, "-db", "-f", file)
	told := new(words)
	cmd.Stdout, cmd.Stderr = told, told
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = cmd.Process.Kill(); _ = cmd.Wait(); t.Log(told) })
	return addr
}

func exists(file string) bool { _, err := os.Stat(file); return err == nil }

// through connects from an address of this machine.
func (b *testBooth) through(t testing.TB, addr, from, who string, before []byte) (*gossh.Client, error) {
	t.Helper()
	d := net.Dialer{LocalAddr: &net.TCPAddr{IP: net.ParseIP(from)}, Timeout: deep.Patience(t)}
	conn, err := d.Dial("tcp", addr)
	if err != nil {
		return nil, err
	}
	_ = conn.SetDeadline(time.Now().Add(deep.Patience(t)))
	if _, err := conn.Write(before); err != nil {
		return nil, err
	}
	config := b.config(t, who)
	config.HostKeyCallback = b.known
	c, chans, requests, err := gossh.NewClientConn(conn, addr, config)
	if err != nil {
		_ = conn.Close()
		return nil, err
	}
	return gossh.NewClient(c, chans, requests), nil
}

// known accepts the host key that the first server showed, which all servers have.
func (b *testBooth) known(_ string, _ net.Addr, key gossh.PublicKey) error {
	if b.shown == "" {
		b.shown = string(key.Marshal())
	}
	if b.shown != string(key.Marshal()) {
		return fmt.Errorf("another host key")
	}
	return nil
}

// Two servers, one book, a balancer: one server is killed, and its guest finds the saved card at the other one, under
// the same address and host key.
func TestMachinesBehindABalancer(t *testing.T) {
	book := sharedBook(t)
	b := &testBooth{dir: t.TempDir()}
	b.people(t)
	machines := []*machine{startMachine(t, b.dir, "a", book), startMachine(t, b.dir, "b", book)}
	addr := balance(t, b.dir, machines...)
	const client = "127.0.0.3"
	var c *gossh.Client
	eventually(t, "the balancer lets nobody through", func() bool {
		var err error
		c, err = b.through(t, addr, client, "writer", nil)
		return err == nil
	})
	if said := run1(t, c, "book save --gauge 20ga --name 'tank lid'"); !strings.Contains(said, "tank lid") {
		t.Fatal(said)
	}
	at := 0
	eventually(t, "no server served the client under its own address", func() bool {
		for i, m := range machines {
			if m.sessions(t, client) > 0 {
				at = i
				return true
			}
		}
		return false
	})
	gone := make(chan struct{})
	go func() { _ = c.Wait(); close(gone) }()
	if err := machines[at].process.Kill(); err != nil {
		t.Fatal(err)
	}
	select {
	case <-gone:
	case <-time.After(deep.Patience(t)):
		t.Fatal("a client of a killed server is not told")
	}
	begin := time.Now()
	found := ""
	eventually(t, "the other server is not reached", func() bool {
		c, err := b.through(t, addr, client, "writer", nil)
		if err != nil {
			return false
		}
		defer c.Close()
		found = run1(t, c, "book find tank")
		return true
	})
	t.Logf("reached again after %v", time.Since(begin).Round(time.Millisecond))
	if !strings.Contains(found, "tank lid") {
		t.Errorf("what was saved is not found at the other server: %s", found)
	}
	// its log may be late
	eventually(t, "the other server did not serve the client under its own address", func() bool {
		return machines[1-at].sessions(t, client) > 0
	})
}

// Only a balancer names clients: a header from elsewhere is not believed, and a balancer's connection without one is
// refused.
func TestProxyHeaderIsNotForged(t *testing.T) {
	b := &testBooth{dir: t.TempDir()}
	b.people(t)
	m := startMachine(t, b.dir, "a", filepath.Join(b.dir, "book.db"))
	const forged = "203.0.113.9"
	one := []byte("PROXY TCP4 " + forged + " 127.0.0.1 4000 22\r\n")
	two := append([]byte("\r\n\r\n\x00\r\nQUIT\n\x21\x11\x00\x0c"), 203, 0, 113, 9, 127, 0, 0, 1, 0x0f, 0xa0, 0, 22)
	for believed, header := range [][]byte{one, two} {
		// accepted under its own address, or not at all
		if c, err := b.through(t, m.addr, "127.0.0.1", "writer", header); err == nil {
			run1(t, c, "version")
			_ = c.Close()
		}
		eventually(t, "the log is late", func() bool { return m.sessions(t, forged) >= believed })
		if m.sessions(t, forged) != believed {
			t.Errorf("%q is believed", header)
		}
		c, err := b.through(t, m.addr, "127.0.0.2", "writer", header)
		if err != nil {
			t.Fatal(err)
		}
		run1(t, c, "version")
		_ = c.Close()
	}
	eventually(t, "a balancer is not believed", func() bool { return m.sessions(t, forged) == 2 })
	if _, err := b.through(t, m.addr, "127.0.0.2", "writer", nil); err == nil {
		t.Error("a balancer that names nobody is let in")
	}
	// A silent connection from elsewhere counts under its own address, without any header.
	for range 3 {
		c, err := net.Dial("tcp", m.addr)
		if err != nil {
			t.Fatal(err)
		}
		defer c.Close()
		if _, err := io.ReadFull(c, make([]byte, 8)); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := b.through(t, m.addr, "127.0.0.1", "writer", one); err == nil || !strings.Contains(err.Error(),
		"too many connections") {
		t.Errorf("a header evades the limit: %v", err)
	}
}
