package plain

import (
	"regexp"
	"sync"
)

// sequences is a control sequence (ECMA-48) at the start of a text: an escape or its one-character form from the C1
// set, with the characters that belong to it. It is a sequence of parameter and intermediate bytes with a final one, a
// control string (title, clipboard, link) up to its terminator or the end of the line, or intermediate bytes with a
// final one. An incomplete sequence ends at the first character that cannot belong to it, so that the text after it
// survives.
var sequences = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(?:(?:\x1b\[|\x{9b})[ -?]*[@-~]?|` +
		`(?:\x1b[\]PX^_]|[\x{90}\x{98}\x{9d}-\x{9f}])[^\a\x1b\n\r\x{9c}]*|\x1b[ -/]*[0-~]?)`)
})

// sequence is the length in bytes of a control sequence at the start of s, 0 if there is none.
func sequence(s string) int {
	if s[0] != '\x1b' && s[0] != '\xc2' { // true of nearly all text
		return 0
	}
	return len(sequences().FindString(s))
}
