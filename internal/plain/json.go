package plain

import (
	"fmt"
	"unicode/utf16"
	"unicode/utf8"
)

// JSON writes invisible characters, and those that change the direction of a line, as \u escapes. The document is
// then safe on a terminal and still the same: characters beyond ASCII occur in JSON only within strings, where
// escapes are allowed.
func JSON(doc []byte) []byte { return AppendJSON(make([]byte, 0, len(doc)), doc) }

// AppendJSON is JSON, appended to what is there already.
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

// visible counts the bytes at a document's start that are ASCII other than the delete sign; line breaks count as
// visible.
func visible(doc []byte) int {
	for i, c := range doc {
		if c >= 0x7f {
			return i
		}
	}
	return len(doc)
}
