package tui

import (
	"bytes"
	"fmt"
	"io"
	"math/rand/v2"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/vt"

	"brazebooth/internal/deep"
)

// twoTerminals are one that gets all that is sent and one that is spared.
type twoTerminals struct {
	all, less *vt.Emulator
	s         *sparing
	sent      [2]int
}

func newTwoTerminals(w, h int) *twoTerminals {
	x := &twoTerminals{all: vt.NewEmulator(w, h), less: vt.NewEmulator(w, h)}
	_, x.s = spared(nil, writes(func(b []byte) {
		x.sent[1] += len(b)
		_, _ = x.less.Write(bytes.ReplaceAll(b, []byte("\n"), []byte("\r\n")))
	}))
	x.s.resize(w, h)
	return x
}

type writes func([]byte)

func (f writes) Write(b []byte) (int, error) { f(b); return len(b), nil }

func (x *twoTerminals) Write(b []byte) (int, error) {
	x.sent[0] += len(b)
	_, _ = x.all.Write(bytes.ReplaceAll(b, []byte("\n"), []byte("\r\n")))
	return x.s.Write(b)
}

// differ says where the two show something else, "" where they do not.
func (x *twoTerminals) differ() string {
	for y := range x.all.Height() {
		for i := range x.all.Width() {
			if a, b := x.all.CellAt(i, y), x.less.CellAt(i, y); !sameCell(a.Content, b.Content) ||
				a.Style.Diff(&b.Style) != "" && strings.TrimSpace(a.Content) != "" {
				return fmt.Sprintf("column %d of line %d shows %q %v, spared %q %v", i, y, a.Content, a.Style,
					b.Content, b.Style)
			} else if fmt.Sprint(a.Style.Bg) != fmt.Sprint(b.Style.Bg) {
				return fmt.Sprintf("column %d of line %d has another ground", i, y)
			}
		}
	}
	if a, b := x.all.CursorPosition(), x.less.CursorPosition(); a != b {
		return fmt.Sprintf("the cursor is at %v, spared at %v", a, b)
	}
	return ""
}

func sameCell(a, b string) bool { return a == b || strings.TrimSpace(a+b) == "" }

// stream is a frame of anything that a renderer may send.
func stream(r *rand.Rand, w, h int) string {
	var b strings.Builder
	fmt.Fprintf(&b, "\x1b[%d;%dH", 1+r.IntN(h), 1+r.IntN(w))
	for range 1 + r.IntN(30) {
		n := 1 + r.IntN(6)
		switch r.IntN(24) {
		case 0, 1, 2, 3, 4, 5, 6, 7:
			for range 1 + r.IntN(w/2) {
				b.WriteString([]string{" ", "a", "▄", " "}[r.IntN(4)])
			}
		case 8:
			b.WriteString([]string{"漢", "é", "e\u0301", "👍"}[r.IntN(4)])
		case 9, 10, 11:
			fmt.Fprintf(&b, "\x1b[%sm", []string{"", "1", "22", "38;5;79", "48;5;236", "39", "49", "38;2;1;2;3;7", "97;44",
				"4", "24", "0;38;5;248", "4:3", "53"}[r.IntN(14)])
		case 12, 13, 14:
			fmt.Fprintf(&b, "\x1b[%d;%dH", 1+r.IntN(h), 1+r.IntN(w))
		case 15:
			fmt.Fprintf(&b, "\x1b[%d%c", n, "ABCDGdXP@"[r.IntN(9)])
		case 16:
			b.WriteString([]string{"\x1b[K", "\x1b[1K", "\x1b[K", "\x1b[2J", "\x1b[J", "\x1b[2K"}[r.IntN(6)])
		case 17, 18:
			b.WriteString([]string{"\r", "\b", "\t", "\n"}[r.IntN(4)])
		case 19:
			b.WriteString([]string{"\x1bM", "\x1b]2;title\x07", "\x1b[?25l", "\x1b[?2026h", "\x1b[L", "\x1b[M", "\x1b[S",
				"\x1b[r"}[r.IntN(8)])
		}
	}
	return b.String()
}

// Whatever is sent, a spared terminal shows the same.
func TestSparingShowsTheSame(t *testing.T) {
	r := deep.Rand(t)
	for range deep.Many(60, 20000) {
		w, h := 6+r.IntN(20), 2+r.IntN(5)
		x := newTwoTerminals(w, h)
		var said strings.Builder
		for range 12 {
			frame := stream(r, w, h)
			fmt.Fprintf(&said, "%q\n", frame)
			if _, err := io.WriteString(x, frame); err != nil {
				t.Fatal(err)
			}
			if d := x.differ(); d != "" {
				t.Fatalf("%d by %d: %s after\n%s", w, h, d, said.String())
			}
		}
	}
}

// The screens look the same on a spared terminal, and less is sent to it.
func TestSparedScreens(t *testing.T) {
	keys := strings.Fields("tab tab tab tab up up right up right down m right up esc b up esc tab down down enter esc " +
		"left left . 2 down down c down esc u up u u k esc x esc p esc 4 . 5 enter f1 esc up up down")
	for _, size := range deep.Of(t, [][2]int{{80, 24}, {40, 14}, {120, 40}, {32, 10}}, 2) {
		synctest.Test(t, func(t *testing.T) {
			x := newTwoTerminals(size[0], size[1])
			go func() { _, _ = io.Copy(io.Discard, x.all) }()
			go func() { _, _ = io.Copy(io.Discard, x.less) }()
			defer func() { _, _ = x.all.Close(), x.less.Close() }()
			p := onTerminal(t, Options{Window: coarse, Width: size[0], Height: size[1]}, x, tea.WithOutput(x))
			for i, k := range keys {
				p.Send(keyPress(k))
				time.Sleep(time.Second)
				synctest.Wait()
				if d := x.differ(); d != "" {
					t.Fatalf("%v after %v: %s", size, keys[:i+1], d)
				}
			}
			if x.sent[1] >= x.sent[0] {
				t.Errorf("%v: %d bytes, spared %d", size, x.sent[0], x.sent[1])
			}
		})
	}
}
