// Package plain makes text from users and files safe to show: no control sequence reaches a terminal,
// no formula a spreadsheet.
package plain

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// gone stands where something was taken out or cut, so that nothing vanishes unseen.
const gone = "…"

// Line returns text as one line of at most limit terminal cells. Control characters, escape sequences,
// characters that turn the direction of writing or take no room, and broken UTF-8 are taken out; line
// breaks and tabs become blanks; what is too long ends in an ellipsis.
func Line(text string, limit int) string { return cut(clean(text, false), limit) }

// Text is Line for several lines: line breaks stay, and limit counts cells of the whole.
func Text(text string, limit int) string { return cut(clean(text, true), limit) }

func clean(text string, breaks bool) string {
	var b strings.Builder
	for i := 0; i < len(text); {
		r, n := utf8.DecodeRuneInString(text[i:])
		switch {
		case r == 0x1b || r >= 0x80 && r <= 0x9f && n > 1:
			i += sequence(text[i+n:])
		case r == '\n' && breaks:
			b.WriteByte('\n')
		case r == '\n' || r == '\t' || r == '\r':
			b.WriteByte(' ')
		case r == utf8.RuneError && n == 1, unicode.IsControl(r), hidden(r):
		default:
			b.WriteRune(r)
		}
		i += n
	}
	return b.String()
}

// sequence returns how many bytes after an escape belong to its sequence: a control sequence to its
// final byte, a string (title, clipboard, link) to its terminator or, where none comes, to the end of
// the line.
func sequence(rest string) int {
	if rest == "" {
		return 0
	}
	switch rest[0] {
	case '[':
		for i := 1; i < len(rest); i++ {
			if rest[i] >= 0x40 && rest[i] <= 0x7e {
				return i + 1
			}
			if rest[i] < 0x20 || rest[i] > 0x7e {
				return i
			}
		}
		return len(rest)
	case ']', 'P', '^', '_', 'X':
		for i := 1; i < len(rest); i++ {
			if rest[i] == 0x07 {
				return i + 1
			}
			if rest[i] == 0x1b || rest[i] == '\n' {
				return i
			}
		}
		return len(rest)
	}
	return 0
}

// hidden reports a character that shows nothing or turns the direction of what stands beside it.
func hidden(r rune) bool {
	return unicode.In(r, unicode.Cf, unicode.Co, unicode.Cs, unicode.Zl, unicode.Zp) ||
		r == 0x034f || r == 0x115f || r == 0x1160 || r == 0x3164 || r == 0xffa0 ||
		r >= 0xfe00 && r <= 0xfe0f || r >= 0xe0100 && r <= 0xe01ef
}

// cut shortens s to limit cells, the ellipsis included.
func cut(s string, limit int) string {
	if limit <= 0 {
		return ""
	}
	if Width(s) <= limit {
		return s
	}
	w := 0
	for i, r := range s {
		w += cells(r)
		if w > limit-1 {
			return s[:i] + gone
		}
	}
	return s
}

// Width returns the terminal cells that s takes: none for a combining mark, two for wide East Asian
// characters and emoji, one for the rest. It counts runes one by one: a family emoji joined from four
// counts as four. Screens use their library's measure; this one serves messages and files.
func Width(s string) int {
	n := 0
	for _, r := range s {
		n += cells(r)
	}
	return n
}

func cells(r rune) int {
	switch {
	case unicode.In(r, unicode.Mn, unicode.Me):
		return 0
	case r >= 0x1100 && (r <= 0x115f || r >= 0x2e80 && r <= 0xa4cf && r != 0x303f || r >= 0xac00 && r <= 0xd7a3 ||
		r >= 0xf900 && r <= 0xfaff || r >= 0xfe30 && r <= 0xfe6f || r >= 0xff00 && r <= 0xff60 ||
		r >= 0xffe0 && r <= 0xffe6 || r >= 0x1f300 && r <= 0x1faff || r >= 0x20000 && r <= 0x3fffd):
		return 2
	}
	return 1
}
