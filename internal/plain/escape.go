package plain

import "strings"

// sequence is the length in bytes of a control sequence (ECMA-48) at the start of s, 0 if there is none: an escape or
// its one-character form from the C1 set, with the characters that belong to it. An incomplete sequence ends at the
// first character that cannot belong to it, so that the text after it survives.
func sequence(s string) int {
	switch {
	case strings.HasPrefix(s, "\x1b"):
		return 1 + escaped(s[1:])
	case len(s) < 2 || s[0] != 0xc2:
		return 0
	}
	switch s[1] {
	case 0x9b:
		return 2 + parameters(s[2:])
	case 0x90, 0x98, 0x9d, 0x9e, 0x9f:
		return 2 + untilEnd(s[2:])
	}
	return 0
}

// escaped is the length of what follows an escape: a control sequence, a string, or intermediate bytes and a final one.
func escaped(s string) int {
	if s == "" {
		return 0
	}
	switch s[0] {
	case '[':
		return 1 + parameters(s[1:])
	case ']', 'P', 'X', '^', '_':
		return 1 + untilEnd(s[1:])
	}
	return ended(s, 0x2f, 0x30)
}

// parameters is the length of a control sequence: parameter bytes, intermediate bytes, a final one.
func parameters(s string) int { return ended(s, 0x3f, 0x40) }

// untilEnd is the length of a control string (title, clipboard, link) up to its terminator, which is removed like any
// other control character or escape; without a terminator, to the end of the line.
func untilEnd(s string) int {
	n := len(s)
	if i := strings.IndexAny(s, "\a\x1b\n\r\u009c"); i >= 0 {
		n = i
	}
	return n
}

// ended counts the bytes at the start of s that are between blank and last, and one after them that is between final
// and ~.
func ended(s string, last, final byte) int {
	n := 0
	for n < len(s) && s[n] >= ' ' && s[n] <= last {
		n++
	}
	if n < len(s) && s[n] >= final && s[n] <= '~' {
		n++
	}
	return n
}
