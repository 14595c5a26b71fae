package serve

import (
	"bytes"
	"context"
	"io"
	"math/rand/v2"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	uv "github.com/charmbracelet/ultraviolet"
)

const pasteBegins = "\x1b[200~"

// through is the guard's output for a text that comes in pieces.
func through(most int, pieces ...string) string {
	g := guard{most: most}
	var out []byte
	for _, p := range pieces {
		out = g.sift(out, []byte(p))
	}
	return string(out)
}

// Keys pass unchanged, in whatever pieces they come.
func TestGuardKeepsKeys(t *testing.T) {
	for _, keys := range []string{
		"3/32", "galvanized\r", "\x1b", "\x1b\x1b", "\x1b[A\x1b[B\x1bOP\x1bOc", "\x1b[1;5C", "\x1b[3~", "\x1b[15;2~",
		"\x1b[27;5;13~", "\x1b[97;5u", "\x1b[97:65;2;65u",
		"\x1bb", "\x1b]", "\x1bP", "\x1b[", "\x1bé", "Gärtnerei 焊 🎛", "\x03\x1a\t\x7f", "\x1b[23$",
		"\x1b[<0;10;20M\x1b[<0;10;20m",
		"\x1b]11;rgb:1e1e/1e1e/2e2e\x1b\\", "\x1b]11;rgb:ffff/ffff/ffff\a", "\x1b[?2026;2$y", "\x1b[?62;22c",
		"\x1bP>|term 1.2\x1b\\", "\x1b[24;80R", "\x1b[I\x1b[O",
		pasteBegins + "tank lid\r\nbooth 2" + string(pasteEnds),
	} {
		if got := through(100, keys); got != keys {
			t.Errorf("%q became %q", keys, got)
		}
		if got := through(100, strings.Split(keys, "")...); got != keys {
			t.Errorf("%q byte by byte became %q", keys, got)
		}
	}
}

func TestGuardCutsPastes(t *testing.T) {
	long, end := strings.Repeat("a", 5000), string(pasteEnds)
	for _, x := range []struct{ in, out string }{
		{pasteBegins + long + end + "x", pasteBegins + long[:100] + end + "x"},
		{pasteBegins + long + "\x1b[201" + long + end + "x", pasteBegins + long[:100] + end + "x"},
		{pasteBegins + strings.Repeat("\x1b", 5000) + end + "x", pasteBegins + end + "x"},
		{pasteBegins + strings.Repeat("\x1b[2", 5000) + end + "x", pasteBegins + strings.Repeat("[2", 50) + end + "x"},
		{pasteBegins + "a\x00\x07\x9b\xc2\x9bb\tc" + end, pasteBegins + "ab\tc" + end},
		{pasteBegins + "a\x1b[31mb" + end, pasteBegins + "a[31mb" + end},
		{pasteBegins + "a" + pasteBegins + "b" + end, pasteBegins + "a[200~b" + end},
		{pasteBegins + strings.Repeat("é", 5000) + end, pasteBegins + strings.Repeat("é", 50) + end},
	} {
		if got := through(100, x.in); got != x.out {
			t.Errorf("%.40q became %.300q", x.in, got)
		}
		if got := through(100, strings.Split(x.in, "")...); got != x.out {
			t.Errorf("%.40q byte by byte became %.300q", x.in, got)
		}
	}
}

// A sequence without an end is cut, and the output never looks like the beginning of a paste to the key reader.
func TestGuardSpoilsWhatHasNoEnd(t *testing.T) {
	long := strings.Repeat("1", 5000)
	for _, in := range []string{"\x1b[" + long, "\x1b]" + long, "\x1bP" + long, "\x1b_" + long, "\x1b^" + long,
		"\x1bX" + long} {
		if got := through(100, in); len(got) > longestText+2 {
			t.Errorf("%.3q leaves %d bytes", in, len(got))
		}
	}
	for _, in := range []string{"\x9b200~", "\xc2\x9b200~", "\x1b[0200~", "\x1b[200;1~", "\x1b[200:1~", "\x1b[20\xff0~",
		"\x1b[20\x9b0~", "\x1b\xc3[200~", "\x1b\x80[200~",
		"\x1b[4294967496~", "\x1b[0;0;50;1;0;1_"} {
		if got := through(100, in); strings.Contains(got, pasteBegins) || begun(got) {
			t.Errorf("%q became %q, which begins a paste", in, got)
		}
	}
}

// Characters of the C1 set and keys as numbers (a sequence that ends in _) do not pass.
func TestGuardSpoilsHiddenControls(t *testing.T) {
	for in, want := range map[string]string{"\u009b": "\x00", "a\xc2\x80b": "a\x00b",
		"\x1b[0;0;27;1;0;1_[200~": "\x1b[0;0;27;1;0;1y[200~"} {
		if got := through(100, in); got != want {
			t.Errorf("%q became %q", in, got)
		}
	}
}

// begun reports whether the key reader sees a paste begin.
func begun(s string) bool {
	_, most := hoard([]byte(s))
	return most >= 0
}

// hoard reads a stream like the screens' key reader. most is the longest paste in bytes, -1 for none; keys are the
// printable keys outside pastes.
func hoard(buf []byte) (keys string, most int) {
	var d uv.EventDecoder
	most, inside := -1, -1
	for len(buf) > 0 {
		n, event := d.Decode(buf)
		switch e := event.(type) {
		case uv.PasteStartEvent:
			inside = 0
		case uv.PasteEndEvent:
			inside = -1
		default:
			if inside >= 0 {
				inside += n
			} else if k, ok := e.(uv.KeyPressEvent); ok {
				keys += k.Text
			}
		}
		most = max(most, inside)
		buf = buf[max(1, n):]
	}
	return keys, most
}

func FuzzGuard(f *testing.F) {
	for _, s := range []string{pasteBegins + "aaaa" + string(pasteEnds) + "b", "\x1b]11;rgb:1/2/3\a", "\x1b[200$",
		"\x9b200~", "\x1b\xc3[200~", "\x1b[M\x1b[200~", "\x1bP\a\x1b[200~é", "\x1b[0;0;27;1;0;1_[200~"} {
		f.Add([]byte(s), uint8(3))
	}
	f.Fuzz(func(t *testing.T, in []byte, cut uint8) {
		g := guard{most: 8}
		var out []byte
		for from := 0; from < len(in); from += int(cut) + 1 {
			out = g.sift(out, in[from:min(len(in), from+int(cut)+1)])
		}
		if len(out) > len(in) {
			t.Fatalf("%q grew to %q", in, out)
		}
		if _, most := hoard(out); most > 8 {
			t.Fatalf("%q leaves %q, a paste of %d bytes", in, out, most)
		}
		ended := g.sift(out, append([]byte("\x1b\\\x1b\\"), pasteEnds...))
		if g.paste || g.state != ground {
			t.Fatalf("%q: a paste does not end", ended)
		}
		if again := g.sift(nil, []byte("3/32")); string(again) != "3/32" {
			t.Fatalf("after %q keys become %q", in, again)
		}
	})
}

// Random streams of the bytes that sequences are made of, read as the screens read them.
func TestGuardAgainstTheReaderOfKeys(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 200))
	words := strings.Split("\x1b [ ] P X _ O M 2 0 1 200 201 ~ $ ; : ? < y \x07 \\ \x00 \x18 \x9b \x9c \xc2 \xc3 \xe2 "+
		"\x80 é a \x7f \x1b[200~ \x1b[201~ \x1b[0;0;91;1;0;1_", " ")
	for range 30_000 {
		var in []byte
		for range 1 + r.IntN(30) {
			in = append(in, words[r.IntN(len(words))]...)
		}
		g := guard{most: 8}
		out := g.sift(nil, in)
		if _, most := hoard(out); most > 8 || len(out) > len(in) {
			t.Fatalf("%q leaves %q, a paste of %d bytes", in, out, most)
		}
	}
}

// FuzzGuardKeys checks that plain typing between pastes and sequences is never lost.
func FuzzGuardKeys(f *testing.F) {
	f.Add("3/32", uint8(1))
	f.Add("é[200~", uint8(2))
	f.Fuzz(func(t *testing.T, keys string, cut uint8) {
		typed := strings.Map(func(r rune) rune {
			if r < 0x20 || r >= 0x7f && r < 0xa0 || r == 0xfffd {
				return -1
			}
			return r
		}, keys)
		in := pasteBegins + strings.Repeat("x", 40) + string(pasteEnds) + typed + "\x1b[A"
		var pieces []string
		for from := 0; from < len(in); from += int(cut) + 1 {
			pieces = append(pieces, in[from:min(len(in), from+int(cut)+1)])
		}
		if got, want := through(8, pieces...), pasteBegins+strings.Repeat("x", 8)+string(pasteEnds)+typed+
			"\x1b[A"; got != want {
			t.Errorf("%q became %q", in, got)
		}
	})
}

// After a pause, a key that looked like the beginning of a sequence counts as a key: after alt and ] typing continues.
func TestInputRecoversAfterAPause(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		from, to := io.Pipe()
		in := newInput(t.Context(), from, &Settings{InputRate: 4000, Paste: 100})
		go func() {
			_, _ = to.Write([]byte("\x1b]"))
			time.Sleep(time.Second)
			for range 10 {
				_, _ = to.Write(bytes.Repeat([]byte("k"), 100))
			}
			_ = to.Close()
		}()
		got, err := io.ReadAll(in)
		if want := "\x1b]" + strings.Repeat("k", 1000); err != nil || string(got) != want {
			t.Errorf("%d bytes, %v", len(got), err)
		}
	})
}

// Input that comes too fast waits and arrives complete; the dropped part of a long paste delays nothing.
func TestInputIsNotFasterThanItMayBe(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		begin := time.Now()
		in := newInput(t.Context(), strings.NewReader(strings.Repeat("k", 20_000)), &Settings{InputRate: 1000,
			Paste: 100})
		got, err := io.ReadAll(in)
		if took := time.Since(begin); err != nil || len(got) != 20_000 || took < 11*time.Second ||
			took > 13*time.Second {
			t.Errorf("%d bytes in %v, %v", len(got), took, err)
		}
		begin = time.Now()
		in = newInput(t.Context(), strings.NewReader(pasteBegins+strings.Repeat("k", 200_000)+string(pasteEnds)+"q"),
			&Settings{InputRate: 4000, Paste: 2000})
		got, err = io.ReadAll(in)
		if took := time.Since(begin); err != nil || len(got) != 2000+2*6+1 || took > time.Second {
			t.Errorf("a long paste: %d bytes in %v, %v", len(got), took, err)
		}
	})
}

// A client that has left leaves no reader behind.
func TestInputEndsWithItsSession(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		ctx, cancel := context.WithCancel(t.Context())
		in := newInput(ctx, strings.NewReader(strings.Repeat("k", 1<<20)), &Settings{InputRate: 1, Paste: 100})
		time.AfterFunc(time.Minute, cancel)
		if got, err := io.ReadAll(in); err != nil || len(got) > burst+1024 {
			t.Errorf("%d bytes, %v", len(got), err)
		}
	})
}
