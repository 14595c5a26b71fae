package program

import (
	"encoding/json"
	"fmt"
	"net"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"

	"brazebooth/internal/deep"
)

// two is a header of version 2 of the PROXY protocol: command, family and the rest.
func two(command, family byte, rest string) string {
	return "\r\n\r\n\x00\r\nQUIT\n" + string([]byte{0x20 | command, family, byte(len(rest) >> 8), byte(len(rest))}) +
		rest
}

// of6 are the addresses of a client and a server over IPv6, in version 2.
func of6(client string) string {
	return string(net.ParseIP(client).To16()) + string(net.IPv6loopback) + "\x0f\xa0\x00\x16"
}

const of4 = "\xcb\x00\x71\x09\x7f\x00\x00\x01\x0f\xa0\x00\x16" // 203.0.113.9:4000, 127.0.0.1:22

// comesAs is the address under which a server, which trusts a balancer at 127.0.0.2, serves a connection from an
// address with a header; "" if it is refused.
func (b *testBooth) comesAs(t *testing.T, from, header string) string {
	t.Helper()
	d := net.Dialer{LocalAddr: &net.TCPAddr{IP: net.ParseIP(from)}}
	conn, err := d.Dial("tcp", b.addr)
	if err != nil {
		t.Skipf("this machine has no address %s: %v", from, err)
	}
	defer conn.Close()
	_ = conn.SetDeadline(time.Now().Add(deep.Patience(t)))
	if _, err := conn.Write([]byte(header)); err != nil {
		return ""
	}
	c, chans, requests, err := gossh.NewClientConn(conn, b.addr, b.config(t, "writer"))
	if err != nil {
		return ""
	}
	client := gossh.NewClient(c, chans, requests)
	before := len(b.served(t))
	if said := run1(t, client, "version"); !strings.Contains(said, "brazebooth") {
		t.Errorf("%q: %s", header, said)
	}
	var list []string
	eventually(t, "the log is late", func() bool { list = b.served(t); return len(list) > before })
	return list[len(list)-1]
}

// mustComeAs is comesAs for a header that must be accepted. It retries a handshake that timed out, since a busy machine
// may need longer than the handshake's two seconds.
func (b *testBooth) mustComeAs(t *testing.T, from, header string) (as string) {
	t.Helper()
	for try := 0; as == "" && try < 8; try++ {
		as = b.comesAs(t, from, header)
	}
	return as
}

// served are the addresses of all sessions so far.
func (b *testBooth) served(t testing.TB) (from []string) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(b.dir, "log"))
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(text)) {
		var l struct{ Msg, From string }
		if err := json.Unmarshal([]byte(line), &l); err == nil && l.Msg == "session" {
			from = append(from, l.From)
		}
	}
	return from
}

// Every kind of header that a balancer may send, as docs/serving.md says: a client counts under its address, the
// balancer's own connection under the balancer's, and anything else is refused. All places are freed afterwards.
func TestHeadersOfABalancer(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	port := freePort(t)
	b := &testBooth{dir: dir, told: new(words)}
	b.people(t)
	b.run(t, []string{"serve", "--listen", "127.0.0.1:0", "--keys", filepath.Join(dir, "keys"), "--writers",
		filepath.Join(dir, "writers"), "--host-key", filepath.Join(dir, "host_key"),
		"--book", filepath.Join(dir, "book.db"), "--log", filepath.Join(dir, "log"), "--proxy", "127.0.0.2",
		"--handshake", "2s", "--per-address", "4", "--metrics", port})
	const own = "127.0.0.2"
	refused := 0
	for _, x := range []struct{ name, header, as string }{
		{"a client of version 1", "PROXY TCP4 203.0.113.9 127.0.0.1 4000 22\r\n", "203.0.113.9"},
		{"one of IPv6", "PROXY TCP6 2001:db8::1 ::1 4000 22\r\n", "2001:db8::1"},
		{"a client of version 2", two(1, 0x11, of4), "203.0.113.9"},
		{"one of IPv6, version 2", two(1, 0x21, of6("2001:db8::2")), "2001:db8::2"},
		{"with more behind it", two(1, 0x11, of4+"\x04\x00\x03abc"), "203.0.113.9"},
		{"one that says it is this machine", "PROXY TCP4 127.0.0.1 127.0.0.1 4000 22\r\n", "127.0.0.1"},
		{"the same in version 2", two(1, 0x21, of6("::1")), "::1"},
		{"its own, version 1", "PROXY UNKNOWN\r\n", own},
		{"its own, with words", "PROXY UNKNOWN 203.0.113.9 127.0.0.1 4000 22\r\n", own},
		{"its own, version 2", two(0, 0, ""), own},
		{"its own, with an address that does not count", two(0, 0x11, of4), own},
		{"its own, with more behind it", two(0, 0, "\x04\x00\x03abc"), own},
		{"a client of no kind", two(1, 0, ""), ""},
		{"a client of a socket's file", two(1, 0x31, strings.Repeat("/tmp/\x1b[31m", 20)+strings.Repeat("x", 16)), ""},
		{"a client of UDP", two(1, 0x12, of4), ""},
		{"no such command", two(2, 0x11, of4), ""},
		{"no such version", "\r\n\r\n\x00\r\nQUIT\n\x11\x11\x00\x0c" + of4, ""},
		{"no such family, version 1", "PROXY UDP4 203.0.113.9 127.0.0.1 4000 22\r\n", ""},
		{"no address", "PROXY TCP4 x.0.113.9 127.0.0.1 4000 22\r\n", ""},
		{"an address of the other kind", "PROXY TCP4 2001:db8::1 ::1 4000 22\r\n", ""},
		{"no port", "PROXY TCP4 203.0.113.9 127.0.0.1 99999 22\r\n", ""},
		{"cut off", "PROXY TCP4 203.0.113.9", ""},
		{"cut off in version 2", two(1, 0x11, of4)[:20], ""},
		{"shorter than its address", two(1, 0x11, of4[:6]), ""},
		{"longer than any", "PROXY TCP4 203.0.113.9 127.0.0.1 4000 22" + strings.Repeat(" ", 100) + "\r\n", ""},
		{"longer than any, version 2", two(1, 0x11, of4+strings.Repeat("x", 5000)), ""},
		{"no end of the line", "PROXY UNKNOWN\n", ""},
		{"none", "", ""},
	} {
		comes := b.comesAs
		if x.as != "" {
			comes = b.mustComeAs
		}
		if as := comes(t, own, x.header); as != x.as {
			t.Errorf("%s: served as %q, not %q", x.name, as, x.as)
		}
		// its missing bytes are taken from the SSH that follows
		if x.as == "" && !strings.HasPrefix(x.name, "cut off in version 2") {
			refused++
		}
		// A header from anywhere else is not believed.
		if as := b.comesAs(t, "127.0.0.3", x.header); as != "" && as != "127.0.0.3" {
			t.Errorf("%s: from elsewhere it is believed: %q", x.name, as)
		}
	}
	eventually(t, "places are not given back", func() bool {
		return strings.Contains(page(t, port, "/metrics"), "brazebooth_connections 0\n")
	})
	if want := fmt.Sprintf("brazebooth_refused_total{why=\"no client named\"} %d\n",
		refused); !strings.Contains(page(t, port, "/metrics"), want) {
		t.Errorf("not counted: %s", want)
	}
	if list := b.served(t); slices.ContainsFunc(list, func(s string) bool { return net.ParseIP(s) == nil }) {
		t.Errorf("served as %q", list)
	}
	// The balancer's own connections and its clients are counted apart.
	for range 4 {
		conn, err := (&net.Dialer{LocalAddr: &net.TCPAddr{IP: net.ParseIP(own)}}).Dial("tcp", b.addr)
		if err != nil {
			t.Fatal(err)
		}
		defer conn.Close()
		_, _ = conn.Write([]byte("PROXY UNKNOWN\r\n"))
		if n, err := conn.Read(make([]byte, 8)); n == 0 || err != nil {
			t.Fatalf("a balancer's health check fails: %v", err)
		}
	}
	if as := b.mustComeAs(t, own, "PROXY TCP4 203.0.113.9 127.0.0.1 4000 22\r\n"); as != "203.0.113.9" {
		t.Errorf("a client beside the balancer's own connections: served as %q", as)
	}
}
