package serve

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"testing/iotest"
	"unicode/utf8"

	"pgregory.net/rapid"

	"brazebooth/internal/deep"
)

func TestMain(m *testing.M) { deep.Main(m, 100) }

func TestLineInput(t *testing.T) {
	for _, x := range []struct{ keys, lines, shown string }{
		{"steel\r", "steel\n", "steel\n"},
		{"a\r\nb\nc\r\r", "a\nb\nc\n\n", "a\nb\nc\n\n"},
		{"stex\x7fel\r", "steel\n", "stex\b \bel\n"},
		{"x\x7f\x7f\bok\r", "ok\n", "x\b \bok\n"},
		{"wrong\x15y\r", "y\n", "wrong" + strings.Repeat("\b \b", 5) + "y\n"},
		{"up\x1b[A\x1bOB\x1b[200~down\r", "updown\n", "updown\n"},
		{"\x1b]0;title\a!\r", "!\n", "!\n"},
		{"for\xc3\xaat\xc3\xaa\x7f\r", "for\u00eat\n", "for\u00eat\u00ea\b \b\n"},
		{"\u9244\x7f\r", "\n", "\u9244\b \b\b \b\n"},
		{"\u202e\xff\u009b2J.\r", "\u202e\xff\u009b2J.\n", "2J.\n"},
		{"half\x03more\r", "", "half"},
		{"\x04", "", ""},
		{"a\x04\rb", "a\n", "a\nb"},
		{strings.Repeat("x", longestInput+9) + "\r", strings.Repeat("x", longestInput) + "\n",
			strings.Repeat("x", longestInput) + "\n"},
	} {
		for _, from := range []io.Reader{strings.NewReader(x.keys), iotest.OneByteReader(strings.NewReader(x.keys))} {
			var shown bytes.Buffer
			lines, err := io.ReadAll(newLineInput(from, &shown))
			if err != nil || string(lines) != x.lines || shown.String() != x.shown {
				t.Errorf("%.40q: lines %.40q, shown %.60q, %v", x.keys, lines, shown.String(), err)
			}
		}
	}
}

// Whatever is typed, the echo has no control characters except backspace and line breaks.
func TestLineInputShowsNoSequence(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		keys := rapid.SliceOfN(rapid.Byte(), 0, 400).Draw(r, "keys")
		var shown bytes.Buffer
		lines, err := io.ReadAll(newLineInput(bytes.NewReader(keys), &shown))
		if err != nil {
			r.Fatal(err)
		}
		if len(lines) > len(keys) {
			r.Fatalf("%d bytes make %d", len(keys), len(lines))
		}
		if !utf8.Valid(shown.Bytes()) {
			r.Fatalf("%q is shown", shown.Bytes())
		}
		for _, c := range shown.String() {
			if c < ' ' && c != '\n' && c != '\b' || c >= 0x7f && c < 0xa0 {
				r.Fatalf("%q is shown", c)
			}
		}
	})
}
