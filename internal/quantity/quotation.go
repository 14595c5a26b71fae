package quantity

import (
	"unicode"
	"unicode/utf8"
)

// part is a part of a text, in bytes.
type part struct{ from, to int }

// closings are the closing quotes of each opening quote.
var closings = map[rune]rune{'"': '"', '\'': '\'', '“': '”', '‘': '’', '„': '“', '«': '»'}

// quotations are the parts of a text between a pair of quotes: they repeat what somebody typed or named. A quote after
// a letter or a digit opens no quotation: it is an apostrophe or an inch mark.
func quotations(text string) (list []part) {
	before := ' '
	for at := 0; at < len(text); {
		r, size := utf8.DecodeRuneInString(text[at:])
		if closing, ok := closings[r]; ok && !inWord(before) {
			if n := quotedLength(text[at+size:], closing); n >= 0 {
				list = append(list, part{at, at + size + n})
				size += n + utf8.RuneLen(closing)
				r = closing
			}
		}
		before = r
		at += size
	}
	return list
}

// quotedLength is the distance to the closing quote, -1 if there is none. A quote before a letter or a digit is an
// apostrophe. A straight quote after a backslash belongs to the quoted text.
func quotedLength(text string, closing rune) int {
	escaped := false
	for at := 0; at < len(text); {
		r, size := utf8.DecodeRuneInString(text[at:])
		next, _ := utf8.DecodeRuneInString(text[at+size:])
		if r == closing && !escaped && !inWord(next) {
			return at
		}
		escaped = closing == '"' && r == '\\' && !escaped
		at += size
	}
	return -1
}

func inWord(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }
