package plain

import (
	"fmt"
	"unicode/utf16"
	"unicode/utf8"
)

// JSON writes what shows nothing or turns the direction of a line as \u escapes, so that a document is safe on a terminal
// and still the same document. Characters beyond ASCII stand in JSON only within strings, where such escapes are allowed.
func JSON(doc []byte) []byte { return AppendJSON(make([]byte, 0, len(doc)), doc) }

// AppendJSON is JSON behind what is there already.
func AppendJSON(out, doc []byte) []byte {
	for len(doc) > 0 {
		if n := visible(doc); n > 0 { // nearly all of it
			out, doc = append(out, doc[:n]...), doc[n:]
			continue
		}
		r, n := utf8.DecodeRune(doc)
		switch {
		case r != 0x7f && !hidden(r) && !lineBreak(r) && (r != utf8.RuneError || n > 1):
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

// visible counts the bytes of ASCII without the delete sign that a document begins with; its line breaks stay.
func visible(doc []byte) int {
	for i, c := range doc {
		if c >= 0x7f {
			return i
		}
	}
	return len(doc)
}
