// Package plain makes text from users and files safe to show: no control sequence reaches a terminal,
// no formula a spreadsheet.
package plain

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

// gone marks where something was taken out or cut, so that nothing vanishes unseen.
const gone = "…"

// marks is how many combining marks one character may carry. Living scripts need three; more of them
// paint over the lines above and below.
const marks = 4

// Line returns text as one line of at most limit terminal cells. Control characters, escape sequences,
// characters that change the direction of writing or take no room, and broken UTF-8 are taken out; line
// breaks and tabs become blanks; a text that is too long ends in an ellipsis. A limit of 0 or less gives "".
func Line(text string, limit int) string { return Cut(clean(text), limit) }

func clean(text string) string {
	if printable(text) { // true of nearly all text
		return text
	}
	var b strings.Builder
	on := marks // marks since the last character that takes room; at the start there is none to carry one
	for i := 0; i < len(text); {
		if n := sequence(text[i:]); n > 0 {
			i += n
			continue
		}
		r, n := utf8.DecodeRuneInString(text[i:])
		switch {
		case lineBreak(r) && strings.HasPrefix(text[i:], "\r\n"): // the other half counts
		case lineBreak(r), r == '\t':
			b.WriteByte(' ')
			on = 0
		case r == utf8.RuneError && n == 1, hidden(r), combining(r) && on >= marks:
		case combining(r):
			b.WriteRune(r)
			on++
		default:
			b.WriteRune(r)
			on = 0
		}
		i += n
	}
	return b.String()
}

// printable reports whether a text is nothing but visible ASCII and spaces.
func printable(text string) bool {
	for i := range len(text) {
		if text[i] < 0x20 || text[i] > 0x7e {
			return false
		}
	}
	return true
}

// lineBreak reports whether a character ends a line; form feed, next line and the separators do too.
func lineBreak(r rune) bool {
	switch r {
	case '\n', '\r', '\v', '\f', 0x85, 0x2028, 0x2029:
		return true
	}
	return false
}

// hidden reports whether a character shows nothing, changes the direction of its neighbours, or is not
// known, so that nobody can say what a terminal makes of it.
func hidden(r rune) bool {
	return !unicode.IsGraphic(r) || r == 0x034f || r == 0x115f || r == 0x1160 || r == 0x3164 || r == 0xffa0 ||
		r >= 0xfe00 && r <= 0xfe0f || r >= 0xe0100 && r <= 0xe01ef
}

func combining(r rune) bool { return unicode.In(r, unicode.Mn, unicode.Me) }

// Cut shortens a text that Line has cleaned to limit terminal cells, the ellipsis at its end included.
func Cut(s string, limit int) string {
	if Width(s) <= limit {
		return s
	}
	return ansi.TruncateWc(s, limit, gone)
}

// Width returns the terminal cells that a text takes which Line has cleaned, as the screens' library counts them where
// a terminal does not ask for anything else: none for a combining mark, two for wide East Asian characters and emoji,
// one for the rest.
func Width(s string) int {
	if printable(s) {
		return len(s)
	}
	n := 0
	for _, r := range s {
		if wide || !narrow(r) {
			return ansi.StringWidthWc(s)
		}
		n++
	}
	return n
}

// wide is set where the environment says that a terminal shows such signs as ° in two cells, as in East Asia.
var wide = ansi.StringWidthWc("°") != 1

// narrow reports whether a character is one of those beyond ASCII that this program itself writes: letters of Europe,
// dashes, arrows, signs of mathematics, lines and blocks. Each takes one cell. They are counted here because the
// library fills two megabytes of tables at the first of them, which is a third of what a short command takes of memory.
func narrow(r rune) bool {
	switch {
	case r < 0x20, r == 0x7f, r > 0x7f && r < 0xa0, r == 0xad:
		return false
	case r < 0x300, r >= 0x391 && r <= 0x3c9, r >= 0x2010 && r <= 0x2027, r >= 0x2030 && r <= 0x205e:
		return true
	}
	return r >= 0x2190 && r <= 0x22ff && r != 0x231a && r != 0x231b || r >= 0x2500 && r <= 0x25ef
}

// Wrap breaks a text between words into lines of at most room cells; a longer word has a line of its own. No text is
// one empty line.
func Wrap(text string, room int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		switch {
		case line == "":
			line = word
		case Width(line)+1+Width(word) <= room:
			line += " " + word
		default:
			lines = append(lines, line)
			line = word
		}
	}
	return append(lines, line)
}
