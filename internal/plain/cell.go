package plain

import (
	"regexp"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"
)

// parting are the characters at which a program may split a table into cells and lines, whatever its writer meant by
// them: a spreadsheet with decimal commas splits a table at semicolons, some even within quotes.
const parting = ",;\t\r\n\v\f\u0085\u2028\u2029"

// running are the characters that begin a formula or a command, with their wide, small and mathematical forms.
const running = "=+-@|%＝＋－＠｜％﹦﹢﹣﹫﹪−"

// Cell makes a text harmless in a spreadsheet, whichever of comma, semicolon, tab and line break separates the cells
// there, with quotes or without. A piece between separators that a program would run as a formula gets an apostrophe in
// front. So does a piece that already begins with an apostrophe, so that Uncell can undo it. A formula after blanks,
// quotes or invisible characters is found too, since an import may strip these.
func Cell(s string) string {
	return pieces(s, func(b *strings.Builder, rest string, first bool) string {
		if risky(rest, first) {
			b.WriteByte('\'')
		}
		return rest
	})
}

// Uncell undoes Cell.
func Uncell(s string) string {
	return pieces(s, func(_ *strings.Builder, rest string, first bool) string {
		if bare, ok := strings.CutPrefix(rest, "'"); ok && risky(bare, first) {
			return bare
		}
		return rest
	})
}

// pieces copies a text piece by piece, each with its separator. Before each piece, begin may write something; it
// returns the rest of the text to copy.
func pieces(s string, begin func(b *strings.Builder, rest string, first bool) string) string {
	var b strings.Builder
	for first := true; s != ""; first = false {
		s = begin(&b, s, first)
		n := len(s)
		if i := strings.IndexAny(s, parting); i >= 0 {
			_, sign := utf8.DecodeRuneInString(s[i:])
			n = i + sign
		}
		b.WriteString(s[:n])
		s = s[n:]
	}
	return b.String()
}

// risky reports whether a text's first piece would be run as a formula, or looks as if Cell had escaped it. A tab or a
// line break is risky only at the start of the whole text; further on it only ends an empty piece.
func risky(s string, first bool) bool {
	if s == "" {
		return false
	}
	if s[0] == '\'' {
		return true
	}
	if c, _ := utf8.DecodeRuneInString(s); first && c != ',' && c != ';' && strings.ContainsRune(parting, c) {
		return true
	}
	for s != "" {
		r, n := utf8.DecodeRuneInString(s)
		switch {
		case strings.ContainsRune(parting, r):
			return false
		case strings.ContainsRune(running, r):
			return true
		case r == utf8.RuneError, r == '"', unicode.IsSpace(r), hidden(r):
		default:
			return false
		}
		s = s[n:]
	}
	return false
}

// Signed reports whether a text is a number, with or without a sign, and therefore not a formula: digits, at most one
// point or comma, an exponent. Words such as Inf do not count as numbers.
func Signed(s string) bool { return signed().MatchString(s) }

var signed = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^[+-]?(\d+[.,]?\d*|[.,]\d+)([eE][+-]?\d+)?$`)
})
