package plain

import (
	"strings"
	"unicode/utf8"
)

// Cell makes a text harmless in a spreadsheet: one that a program would run as a formula gets an
// apostrophe before it, and so does one that begins with an apostrophe already, so that Uncell can tell.
// Blanks before the sign do not hide it, since an import may trim them; the wide forms of East Asian
// keyboards count like the narrow ones.
func Cell(s string) string {
	if risky(s) {
		return "'" + s
	}
	return s
}

// Uncell undoes Cell.
func Uncell(s string) string {
	if rest, ok := strings.CutPrefix(s, "'"); ok && risky(rest) {
		return rest
	}
	return s
}

func risky(s string) bool {
	if s == "" {
		return false
	}
	switch s[0] {
	case '\'', '\t', '\r', '\n':
		return true
	}
	first, _ := utf8.DecodeRuneInString(strings.TrimLeft(s, " \u00a0\t\r\n"))
	return strings.ContainsRune("=+-@|%＝＋－＠", first)
}
