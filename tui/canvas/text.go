package canvas

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"brazebooth/internal/plain"
)

// width is how many columns a text takes.
func width(s string) int { return plain.Width(s) }

// cut shortens a text to some columns; what is missing shows as an ellipsis.
func cut(s string, room int) string {
	if room <= 0 {
		return ""
	}
	return plain.Cut(s, room)
}

// first is a text's first character, with what is combined with it, and its columns.
func first(s string) (char string, columns int) {
	if s[0] < 0x80 && (len(s) == 1 || s[1] < 0x80) {
		if s[0] < ' ' || s[0] == 0x7f {
			return s[:1], 0
		}
		return s[:1], 1
	}
	return ansi.FirstGraphemeCluster(s, ansi.WcWidth)
}

// wrap breaks a text at its blanks into lines of at most room columns; a longer word is broken anywhere.
func wrap(s string, room int) []string {
	if room < 1 || s == "" {
		return nil
	}
	if width(s) <= room {
		return []string{s}
	}
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		switch {
		case line == "":
			line = word
		case width(line)+1+width(word) <= room:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
		for width(line) > room {
			head := ansi.TruncateWc(line, room, "")
			if head == "" { // a wide character in one column
				return nil
			}
			lines, line = append(lines, head), line[len(head):]
		}
	}
	return append(lines, line)
}

// widest is the width of the widest line.
func widest(lines []string) int {
	n := 0
	for _, l := range lines {
		n = max(n, width(l))
	}
	return n
}
