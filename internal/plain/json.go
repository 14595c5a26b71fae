package plain

import (
	"fmt"
	"unicode/utf16"
	"unicode/utf8"
)

// JSON writes what shows nothing or turns the direction of a line as \u escapes, so that a document is safe on a terminal
// and still the same document. Characters beyond ASCII stand in JSON only within strings, where such escapes are allowed.
func JSON(doc []byte) []byte {
	out := make([]byte, 0, len(doc))
	for len(doc) > 0 {
		r, n := utf8.DecodeRune(doc)
		switch {
		case r < utf8.RuneSelf && r != 0x7f || r != 0x7f && !hidden(r) && !lineBreak(r) && (r != utf8.RuneError || n > 1):
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
