package serve

import (
	"context"
	"io"
	"strings"
	"testing"
	"testing/synctest"
)

// ctrl+c stops a command that does not read, and is a key for one that does. Other keys typed ahead keep their order,
// and no more of them are read than there is room for.
func TestKeysTypedAhead(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		ctx, leave := context.WithCancelCause(t.Context())
		keys, typed := io.Pipe()
		stopped := 0
		a := newAhead(ctx, keys, func() { stopped++ })
		types := func(s string) { _, _ = io.WriteString(typed, s); synctest.Wait() }
		types("one\r")
		types("two\r\x03three")
		if stopped != 1 {
			t.Errorf("nobody reads: stopped %d times", stopped)
		}
		var got strings.Builder
		reads := func() {
			b := make([]byte, 100)
			n, _ := a.Read(b)
			got.Write(b[:n])
		}
		reads()
		if got.String() != "one\rtwo\r\x03three" {
			t.Errorf("%q", got.String())
		}
		go reads()
		synctest.Wait()
		types("\x03")
		if stopped != 1 || !strings.HasSuffix(got.String(), "three\x03") {
			t.Errorf("somebody reads: stopped %d times, %q", stopped, got.String())
		}
		taken := 0
		go func() {
			for ; taken < 100; taken++ {
				if _, err := io.WriteString(typed, strings.Repeat("x", 200)); err != nil {
					return
				}
			}
		}()
		synctest.Wait()
		if most := mostKept/200 + 2; taken > most {
			t.Errorf("%d pieces are taken, %d at most", taken, most)
		}
		leave(errDown)
		synctest.Wait()
		if rest, err := io.ReadAll(a); err != errDown || len(rest) < mostKept {
			t.Errorf("%d keys, then %v", len(rest), err)
		}
		_ = keys.CloseWithError(io.EOF)
		synctest.Wait()
	})
}

// Only signals by which a user stops their own work end a session.
func TestSignalsThatStop(t *testing.T) {
	for name, want := range map[string]bool{"INT": true, "TERM": true, "HUP": true, "QUIT": true, "KILL": true,
		"USR1": false, "ALRM": false, "PIPE": false, "int": false, "": false} {
		if got := ends(append([]byte{0, 0, 0, byte(len(name))}, name...)); got != want {
			t.Errorf("%s: %v", name, got)
		}
	}
	for _, bad := range []string{"", "\x00", "\x00\x00\x00\x09INT", "\x00\x00\x00\x03INT more"} {
		if ends([]byte(bad)) {
			t.Errorf("%q stops", bad)
		}
	}
}
