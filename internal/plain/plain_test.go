package plain

import (
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

func TestLine(t *testing.T) {
	for in, want := range map[string]string{
		"galvanized":                       "galvanized",
		"\x1b[31mred\x1b[0m":               "red",
		"\x1b]0;title\x07tank":             "tank",
		"\x1b]52;c;aGVsbG8=\x1b\\":         "",
		"\x1bcreset":                       "reset",
		"\x1b(0lines":                      "lines",
		"\x1b[38;5;196":                    "",
		"\x1b[3\u00e9t\u00e9":              "été",
		"\u009d0;title\u009ctank":          "tank",
		"\u0090q\x1b\\tank":                "tank",
		"\x1b]0;no end\nnext":              " next",
		"a\r\nb\u2028c\u0085d":             "a b c d",
		"e\u0301te\u0301":                  "e\u0301te\u0301",
		"\u0301a":                          "a",
		"a" + strings.Repeat("\u0301", 99): "a" + strings.Repeat("\u0301", 4),
		"a\u202eb":                         "ab",
		"a\u200bb":                         "ab",
		"two\nlines\tand tab":              "two lines and tab",
		"\xff\xfeok":                       "ok",
		"\u009b31mcsi":                     "csi",
		"a\u0530\ufffe\ue000b":             "ab",
		"bell\x07":                         "bell",
		"":                                 "",
	} {
		if got := Line(in, 80); got != want {
			t.Errorf("Line(%q) = %q, want %q", in, got, want)
		}
	}
	if got := Line("a long line", 6); got != "a lon…" {
		t.Errorf("cut: %q", got)
	}
	if got := Line("溶接ビード", 5); got != "溶接…" {
		t.Errorf("wide cut: %q", got)
	}
	if got := Line("tank", 0) + Line("tank", -3); got != "" {
		t.Errorf("no room: %q", got)
	}
}

// Widths by Unicode Standard Annex 11: W and F are two cells; combining marks none.
func TestWidth(t *testing.T) {
	for s, want := range map[string]int{"": 0, "18 ga": 5, "e\u0301": 1, "溶接": 4, "ﾋﾞｰﾄﾞ": 5, "한글": 4, "Ａ": 2,
		"–µ°Ω": 4, "🔥": 2} {
		if got := Width(s); got != want {
			t.Errorf("Width(%q) = %d, want %d", s, got, want)
		}
	}
}

func FuzzLine(f *testing.F) {
	for _, s := range []string{"\x1b[", "\x1b]8;;x", "\u202e", "é́", "\x1bP\x1b", strings.Repeat("\x1b[", 50)} {
		f.Add(s, 20)
	}
	f.Fuzz(func(t *testing.T, s string, limit int) {
		limit %= 500
		got := Line(s, limit)
		if w := Width(got); w > max(limit, 0) {
			t.Fatalf("%q: %d cells, limit %d", got, w, limit)
		}
		for _, r := range got {
			if unicode.In(r, unicode.C, unicode.Zl, unicode.Zp) {
				t.Fatalf("%q keeps %U", got, r)
			}
		}
		if Line(got, limit) != got {
			t.Fatalf("%q is not stable", got)
		}
		if !utf8.ValidString(got) || len(got) > (4+4*marks)*max(limit, 0) {
			t.Fatalf("%q from %q: broken or too many bytes", got, s)
		}
	})
}

func BenchmarkLine(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		Line("rainwater tank, lid seam \x1b[31m18 ga", 40)
	}
}

func TestWrap(t *testing.T) {
	for _, x := range []struct {
		text string
		want []string
	}{
		{"", []string{""}},
		{"one  two\tthree", []string{"one two", "three"}},
		{"a verylongword b", []string{"a", "verylongword", "b"}},
		{"12345678 é", []string{"12345678", "é"}},
		{"1234567 é", []string{"1234567 é"}},
	} {
		if got := Wrap(x.text, 9); !slices.Equal(got, x.want) {
			t.Errorf("%q in lines of nine: %q, not %q", x.text, got, x.want)
		}
	}
}

// Width counts its own characters one by one as the screens' library does.
func TestNarrowIsOneCell(t *testing.T) {
	counted := 0
	for r := range rune(0x30000) {
		if !narrow(r) {
			continue
		}
		counted++
		if got := ansi.StringWidthWc(string(r)); got != 1 {
			t.Errorf("%U takes %d cells", r, got)
		}
	}
	if counted < 1000 {
		t.Errorf("only %d characters are counted at once", counted)
	}
}
