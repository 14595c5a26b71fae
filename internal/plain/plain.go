// Package plain makes text from users and files safe to show: no control sequence reaches a terminal, and no formula
// reaches a spreadsheet.
package plain

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

// gone marks where a text was cut.
const gone = "…"

// marks is how many combining marks one character may have. Living scripts need three; more of them would draw over the
// lines above and below.
const marks = 4

// Line returns text as one line of at most limit terminal cells. It removes control characters, escape sequences,
// invisible characters, those that change the direction of writing, and invalid UTF-8; line breaks and tabs become
// blanks; a text that is too long ends in an ellipsis. A limit of 0 or less gives "".
func Line(text string, limit int) string { return Cut(clean(text), limit) }

func clean(text string) string {
	if printable(text) { // true of nearly all text
		return text
	}
	var b strings.Builder
	on := marks // marks since the last visible character; at the start there is none that could have one
	for i := 0; i < len(text); {
		if n := sequence(text[i:]); n > 0 {
			i += n
			continue
		}
		r, n := utf8.DecodeRuneInString(text[i:])
		switch {
		case lineBreak(r) && strings.HasPrefix(text[i:], "\r\n"): // the line feed counts
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

// printable reports whether a text has only visible ASCII and spaces.
func printable(text string) bool {
	for i := range len(text) {
		if text[i] < 0x20 || text[i] > 0x7e {
			return false
		}
	}
	return true
}

// lineBreak reports whether a character ends a line, including form feed, next line and Unicode's separators.
func lineBreak(r rune) bool {
	return strings.ContainsRune("\n\r\v\f\u0085\u2028\u2029", r)
}

// hidden reports whether a character is invisible, changes the direction of its neighbours, or is unassigned, so that
// its display is unknown.
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

// Width is the width in terminal cells of a text that Line has cleaned, as the screens' library counts by default: none
// for a combining mark, two for wide East Asian characters and emoji, one for the rest.
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

// wide is set if the environment says that a terminal shows characters such as ° in two cells, as in East Asia.
var wide = ansi.StringWidthWc("°") != 1

// narrow reports whether a character is one of those beyond ASCII that this program itself writes: European letters,
// dashes, arrows, mathematical signs, lines and blocks. Each takes one cell. They are counted here because the library
// fills two megabytes of tables for its first one, a third of a short command's memory.
func narrow(r rune) bool {
	switch {
	case r < 0x20, r == 0x7f, r > 0x7f && r < 0xa0, r == 0xad:
		return false
	case r < 0x300, r >= 0x391 && r <= 0x3c9, r >= 0x2010 && r <= 0x2027, r >= 0x2030 && r <= 0x205e:
		return true
	}
	return r >= 0x2190 && r <= 0x22ff && r != 0x231a && r != 0x231b || r >= 0x2500 && r <= 0x25ef
}

// Wrap breaks a text between words into lines of at most room cells; a longer word gets a line of its own. An empty
// text gives one empty line.
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
