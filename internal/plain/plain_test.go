package plain

import (
	"strings"
	"testing"
	"unicode"
)

func TestLine(t *testing.T) {
	for in, want := range map[string]string{
		"galvanized":               "galvanized",
		"\x1b[31mred\x1b[0m":       "red",
		"\x1b]0;title\x07tank":     "tank",
		"\x1b]52;c;aGVsbG8=\x1b\\": `\`,
		"a\u202eb":                 "ab",
		"a\u200bb":                 "ab",
		"two\nlines\tand tab":      "two lines and tab",
		"\xff\xfeok":               "ok",
		"\u009b31mcsi":             "31mcsi",
		"bell\x07":                 "bell",
		"":                         "",
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
	if got := Text("a\nb\x1b[2Jc", 80); got != "a\nbc" {
		t.Errorf("Text: %q", got)
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
			if unicode.IsControl(r) || hidden(r) {
				t.Fatalf("%q keeps %U", got, r)
			}
		}
		if Line(got, limit) != got {
			t.Fatalf("%q is not stable", got)
		}
	})
}

func FuzzCell(f *testing.F) {
	for _, s := range []string{"=1+1", "'x", "''=x", "", "tank", "-3"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		c := Cell(s)
		if Uncell(c) != s {
			t.Fatalf("%q → %q → %q", s, c, Uncell(c))
		}
		if c != "" && strings.ContainsRune("=+-@\t\r\n", rune(c[0])) {
			t.Fatalf("%q would run", c)
		}
	})
}
