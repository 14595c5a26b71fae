package tui

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// A list moves by rows and pages and stays within its rows, for any number of rows and any height.
func TestListMoves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var l listbox
		n, at, high := 0, 0, 1
		for range 30 {
			press := rapid.SampledFrom(
				[]string{"set", "draw", "up", "down", "pgup", "pgdown", "home", "end"}).Draw(t, "key")
			switch press {
			case "set":
				n = rapid.IntRange(0, 30).Draw(t, "rows")
				l.set(n)
			case "draw":
				h := rapid.IntRange(1, 12).Draw(t, "lines")
				shown := l.draw(h, func(i int, chosen bool) line {
					return newRow(9).put(paint{}, fmt.Sprint(i, chosen)).line()
				})
				if n == 0 {
					continue
				}
				high = min(h, n)
				if want := fmt.Sprint(at, true); len(shown) != high || shown[at%high].Text != want {
					t.Fatalf("%d of %d in %d lines: %q", at, n, h, shown)
				}
				if shown[0].Text != fmt.Sprint(at-at%high, at%high == 0) {
					t.Fatalf("the page of %d in %d lines begins %q", at, h, shown[0].Text)
				}
			default:
				l.moved(keyPress(press))
				at += map[string]int{"up": -1, "down": 1, "pgup": -high, "pgdown": high, "home": -n, "end": n}[press]
			}
			if at = max(0, min(at, n-1)); l.at() != at {
				t.Fatalf("after %s on %d of %d rows, want %d", press, l.at(), n, at)
			}
		}
	})
}

// A text scrolls by lines, and by pages that keep one line of the page before. No line is lost or moved.
func TestWindowMoves(t *testing.T) {
	th := newTheme(look{})
	rapid.Check(t, func(t *rapid.T) {
		var v window
		n, h := rapid.IntRange(1, 40).Draw(t, "lines"), rapid.IntRange(2, 12).Draw(t, "high")
		var text block
		for i := range n {
			text.add(newRow(20).put(th.bold, fmt.Sprintf("line %d", i)).line())
		}
		top, high := 0, h-1 // the last line says how many more there are
		for range 20 {
			press := rapid.SampledFrom([]string{"up", "down", "pgup", "pgdown", "space", "home", "end"}).Draw(t, "key")
			page := max(1, high-1)
			v.draw(&th, text, 20, h)
			v.moved(keyPress(press))
			shown := v.draw(&th, text, 20, h)
			if n <= h {
				if shown.String() != text.String() {
					t.Fatalf("%d lines in %d: %q", n, h, shown)
				}
				continue
			}
			top += map[string]int{"up": -1, "down": 1, "pgup": -page, "pgdown": page, "space": page,
				"home": -n, "end": n}[press]
			top = max(0, min(top, n-high))
			if !strings.HasPrefix(shown.String(), text[top:top+high].String()) {
				t.Fatalf("after %s %q, want it from line %d", press, shown, top)
			}
		}
	})
}
