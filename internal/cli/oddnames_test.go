package cli

import (
	"os"
	"slices"
	"strings"
	"testing"

	"brazebooth/internal/deep"
)

// Every command refuses an impossible place for a book with what to type instead, and makes nothing there.
func TestOddNamesOfBooks(t *testing.T) {
	s := newShop(t)
	must(t, os.WriteFile("file", nil, 0o600))
	before := s.files(t)
	for name, code := range map[string]int{"-": 2, "\n": 2, "\x1b[31mred\a": 2, "a\x00b": 2, "\u202egalv": 2,
		"\xff\xfe": 2, "a\u200bb": 2, strings.Repeat("n", 300): 1, strings.Repeat("/n", 3000): 1,
		"file/book.db": 1, "/dev/null/book.db": 1, ".": 1, "/": 1} {
		for _, line := range []string{"book list", "book save --name x --gauge 18ga --feed 5 --travel 8",
			"book person Ada", "book check", "book export -", "book source --name A",
			"book spool --lot L --filler cusi3 --wire .035 --full 4540"} {
			got := s.run(append(strings.Fields(line), "--book", name)...)
			lines := strings.Split(strings.TrimSpace(got.err), "\n")
			if got.code != code || got.out != "" || len(lines) != 2 || !strings.Contains(lines[1], "--book") ||
				len(got.err) > 600 {
				t.Errorf("%s --book %.40q: code %d, %s%s", line, name, got.code, got.out, got.err)
			}
		}
	}
	if after := s.files(t); !slices.Equal(before, after) {
		t.Errorf("the folder holds %q, before %q", after, before)
	}
}

// However long a text is, the error about it is only a few lines.
func TestErrorsAreShort(t *testing.T) {
	s := newShop(t)
	// the other commands have the flags of card
	ways := slices.DeleteFunc(waysOf(New(Deps{}), strings.Repeat("/n ", 3000)), func(w way) bool {
		return !slices.Contains([]string{"card", "book save", "book trial", "correct", "practice", "gap",
			"config set", "book list", ""}, w.cmd)
	})
	for _, w := range deep.Of(t, ways, 30) {
		if got := s.run(w.args...); len(got.err) > 1300 {
			t.Errorf("%s --%s: %d bytes of error: %.200s", w.cmd, w.flag, len(got.err), got.err)
		}
	}
}
