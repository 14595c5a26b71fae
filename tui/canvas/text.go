package canvas

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"brazebooth/internal/plain"
)

func width(s string) int { return plain.Width(s) }

// cut shortens a text to some columns, and ends it with an ellipsis if something is missing.
func cut(s string, room int) string { return plain.Cut(s, room) }

// first is a text's first character, with the characters combined with it, and its width in columns.
func first(s string) (char string, columns int) {
	if s[0] < 0x80 && (len(s) == 1 || s[1] < 0x80) {
		if s[0] < ' ' || s[0] == 0x7f {
			return s[:1], 0
		}
		return s[:1], 1
	}
	return ansi.FirstGraphemeCluster(s, ansi.WcWidth)
}

// Wrap breaks a text at blanks into lines of at most room cells. A word longer than a line is broken anywhere, so that
// nothing is lost.
func Wrap(s string, room int) []string {
	var words []string
	for word := range strings.FieldsSeq(s) {
		for width(word) > room {
			head := ansi.TruncateWc(word, room, "")
			if room < 1 || head == "" {
				return nil // a character wider than the room
			}
			words, word = append(words, head), word[len(head):]
		}
		words = append(words, word)
	}
	if words == nil {
		return nil
	}
	return plain.Wrap(strings.Join(words, " "), room)
}
