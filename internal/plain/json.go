package plain

import (
	"fmt"
	"unicode/utf16"
	"unicode/utf8"
)

// JSON writes invisible characters, and those that change the direction of text, as \u escapes. The document is then
// safe on a terminal and means the same, because characters beyond ASCII occur in JSON only within strings, where
// escapes are allowed.
func JSON(doc []byte) []byte {
	out := make([]byte, 0, len(doc))
	for len(doc) > 0 {
		if doc[0] < 0x7f { // as nearly all of a document
			out, doc = append(out, doc[0]), doc[1:]
			continue
		}
		r, n := utf8.DecodeRune(doc)
		switch {
		case !hidden(r) && !lineBreak(r) && (r != utf8.RuneError || n > 1):
			out = append(out, doc[:n]...)
		case r > 0xffff:
			a, b := utf16.EncodeRune(r)
			out = fmt.Appendf(out, `\u%04x\u%04x`, a, b)
		default:
			out = fmt.Appendf(out, `\u%04x`, r)
		}
		doc = doc[n:]
	}
	return out
}
