package serve

import (
	"context"
	"fmt"
	"io"
	"strings"
	"testing"
	"testing/synctest"
	"time"
)

// A guest who types stays; without a key for a minute a session ends with a message. So do a command that waits for
// input and a connection without a session.
func TestLimitOfIdleTime(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		m := hostInMemory(t, Deps{Command: func(_ context.Context, _ Guest, _ string, _ []string, in io.Reader, _,
			_ io.Writer) int {
			if _, err := io.Copy(io.Discard, in); err != nil {
				return 1
			}
			return 0
		}}, "--idle", "1m")
		c, _ := m.connect()
		g := m.session(c).screens()
		g.shows("example")
		for range 5 {
			time.Sleep(59 * time.Second)
			g.types("\x1b[B")
		}
		begin := time.Now()
		if code := g.codeOf(g.Wait()); code != 1 || !strings.Contains(g.screen(), "no key was pressed") {
			t.Errorf("exit %d:\n%s", code, g.screen())
		}
		if d := time.Since(begin); d < 59*time.Second || d > 61*time.Second {
			t.Errorf("it ended %v after the last key", d)
		}
		w := m.session(c)
		if _, err := w.StdinPipe(); err != nil {
			t.Fatal(err)
		}
		var told strings.Builder
		w.Stderr = &told
		if err := w.Start("book import -"); err != nil {
			t.Fatal(err)
		}
		if code := w.codeOf(w.Wait()); code != 1 || !strings.Contains(told.String(), "no key was pressed") {
			t.Errorf("a command without its input: exit %d, %q", code, &told)
		}
		if err := c.Wait(); err == nil {
			t.Error("a connection without a session ended as if it had been asked to")
		}
	})
}

// A booth's line may be slow. With encryption, a key that moves the cursor on the card costs at most 250 bytes; one
// that changes a setting, on which suggestions depend, at most 1 kB, on a larger terminal 1.3 kB; one on the map at
// most 5 or 6.5 kB.
func TestBytesOverSSH(t *testing.T) {
	for _, size := range []struct {
		columns, rows int
		change, whole int64 // bytes for one value, and for a completely new screen, which grows with its cells
	}{{80, 24, 1000, 5000}, {100, 30, 1300, 6500}} {
		t.Run(fmt.Sprintf("%dx%d", size.columns, size.rows), func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				m := hostInMemory(t, Deps{})
				c, line := m.connect()
				g := m.session(c).screensOf(size.columns, size.rows)
				g.shows("example")
				costs := func(keys string) int64 {
					time.Sleep(5 * time.Second)
					synctest.Wait()
					was := line.sum.Load()
					g.types(keys)
					time.Sleep(5 * time.Second)
					synctest.Wait()
					return line.sum.Load() - was
				}
				atMost := func(most int64, keys ...string) {
					t.Helper()
					for _, k := range keys {
						n := costs(k)
						t.Logf("%-7q %5d bytes", k, n)
						if n == 0 || n > most {
							t.Errorf("%q costs %d bytes on the wire", k, n)
						}
					}
				}
				costs("mild-steel\r")
				costs("18\r\r\r")
				g.shows("stick-out") // the card
				atMost(250, "\x1b[C", "\x1b[C", "\x1b[D", "\x1b[D")
				atMost(size.change, "\x1b[A", "\x1b[B", "+", "-")
				atMost(size.whole, "m", "\x1b[C", "\x1b[A", "r", "/", "m") // the map
			})
		})
	}
}
