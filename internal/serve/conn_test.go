package serve

import (
	"bytes"
	"errors"
	"log/slog"
	"net"
	"strings"
	"testing"

	gossh "golang.org/x/crypto/ssh"
)

func TestPlacesOfAddresses(t *testing.T) {
	for address, want := range map[string]string{
		"192.0.2.7": "192.0.2.7", "::ffff:192.0.2.7": "192.0.2.7", "2001:db8:1:2:3:4:5:6": "2001:db8:1:2::/64",
		"2001:db8:1:2::": "2001:db8:1:2::/64",
		"fe80::1%eth0":   "fe80::/64", "unknown": "unknown",
	} {
		if got := placeOf(address); got != want {
			t.Errorf("%s counts as %s", address, got)
		}
	}
}

// Places are counted correctly when they are taken and freed, also with clients turned away in between.
func TestPlacesAreCounted(t *testing.T) {
	g := places{most: 3, mostEach: 2, of: map[string]int{}}
	enter := func(address string) bool { return g.take() && g.give(placeOf(address)) }
	if !enter("2001:db8::1") || !enter("2001:db8::2") || enter("2001:db8::3") || !enter("192.0.2.1") ||
		enter("192.0.2.2") {
		t.Errorf("%+v", &g)
	}
	g.free(placeOf("2001:db8::1"))
	if !enter("2001:db8::9") {
		t.Errorf("%+v", &g)
	}
	for _, address := range []string{"2001:db8::1", "2001:db8::2", "192.0.2.1"} {
		g.free(placeOf(address))
	}
	if g.all != 0 || len(g.of) != 0 {
		t.Errorf("%+v", &g)
	}
}

type someConn struct{ gossh.ConnMetadata }

func (someConn) RemoteAddr() net.Addr { return &net.TCPAddr{IP: net.IPv4(192, 0, 2, 7), Port: 4000} }

// A login method's name from a stranger is logged short and without control characters.
func TestGuessesAreShortInTheLog(t *testing.T) {
	var log bytes.Buffer
	_, srv, stop := host(t, Deps{})
	stop()
	srv.log = slog.New(slog.NewJSONHandler(&log, nil))
	srv.admit()(nil).AuthLogCallback(someConn{}, "\x1b]0;x\x07\u009b\u202e"+strings.Repeat("m", 200_000),
		errors.New("no"))
	if text := log.String(); len(text) > 300 || !strings.Contains(text, "192.0.2.7") ||
		strings.Contains(text, "u001b") || strings.ContainsAny(text, "\u009b\u202e") {
		t.Errorf("%d bytes: %.300q", len(text), text)
	}
}
