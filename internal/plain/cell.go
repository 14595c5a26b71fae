package plain

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// parting are the signs at which a program may part the cells and lines of a table, whatever the one that wrote it meant by
// them: a spreadsheet with decimal commas parts a table of commas at its semicolons, some even within quotes.
const parting = ",;\t\r\n\v\f\u0085\u2028\u2029"

// running are the signs with which a formula or a command begins, with their wide, small and mathematical forms.
const running = "=+-@|%＝＋－＠｜％﹦﹢﹣﹫﹪−"

// Cell makes a text harmless in a spreadsheet, at whichever of comma, semicolon, tab and line break that parts the cells, and
// whether or not it knows quotes: a piece between such signs that a program would run as a formula gets an apostrophe before
// it, and so does one that begins with an apostrophe already, so that Uncell can tell. Blanks, quotes and signs that show
// nothing do not hide a formula, since an import may take them off.
func Cell(s string) string {
	if !suspicious(s) { // as nearly all text is
		return s
	}
	return pieces(s, func(b *strings.Builder, rest string, first bool) string {
		if risky(rest, first) {
			b.WriteByte('\'')
		}
		return rest
	})
}

// Uncell undoes Cell.
func Uncell(s string) string {
	if strings.IndexByte(s, '\'') < 0 {
		return s
	}
	return pieces(s, func(_ *strings.Builder, rest string, first bool) string {
		if bare, ok := strings.CutPrefix(rest, "'"); ok && risky(bare, first) {
			return bare
		}
		return rest
	})
}

// suspicious reports a text in which something may have to be escaped.
func suspicious(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] >= utf8.RuneSelf || strings.IndexByte("=+-@|%',;", s[i]) >= 0 {
			return true
		}
	}
	return false
}

// pieces copies a text piece by piece, each up to and with the sign that parts it from the next. Before each, begin may write
// something and says with what the text goes on.
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

// risky reports a text whose first piece would be run, or reads as if Cell had been at it. A tab or a line break is risky at
// the start of a whole text only: within it the piece before a sign is merely empty.
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

// Signed reports a number, with or without a sign, which is no formula and may stand in a table as it is: digits, at most one
// point or comma, an exponent. Words for numbers, as Inf, are none.
func Signed(s string) bool {
	whole, power, scaled := strings.Cut(strings.ToLower(unsigned(s)), "e")
	before, behind, _ := strings.Cut(strings.Replace(whole, ",", ".", 1), ".")
	return digits(before+behind) && (!scaled || digits(unsigned(power)))
}

func unsigned(s string) string {
	if s != "" && (s[0] == '+' || s[0] == '-') {
		return s[1:]
	}
	return s
}

func digits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }
