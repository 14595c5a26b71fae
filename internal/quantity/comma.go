package quantity

import (
	"regexp"
	"strings"
	"sync"
)

// Comma writes the decimal points of a text's numbers as commas: "4.23 m/min, .31–.71 in" becomes "4,23 m/min, ,31–,71
// in". The text keeps its length. These only look like numbers and stay as they are: a version or a section (0.1.0), a
// name with digits (M2.5), a wire size as stamped on its spool (.035).
func Comma(text string) string {
	if strings.IndexByte(text, '.') < 0 {
		return text
	}
	out := []byte(text)
	for _, at := range digits().FindAllStringIndex(text, -1) {
		number := strings.TrimRight(text[at[0]:at[1]], ".")
		to := at[0] + len(number)
		if strings.Count(number, ".") == 1 && !named(text, at[0], to) && !stamped(text, at[0], to) {
			out[at[0]+strings.IndexByte(number, '.')] = ','
		}
	}
	return string(out)
}

// digits is what looks like a number: digits and points, of which at most one is before the first digit.
var digits = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\.?\d[\d.]*`) })

// Marked is a text with the decimal mark that its reader chose.
func Marked(text string, comma bool) string {
	if comma {
		return Comma(text)
	}
	return text
}

// spools are the usual wire diameters as stamped on spools, inches.
const spools = " .020 .025 .030 .035 .040 .045 .052 "

// stamped reports whether a number is a wire size as stamped on a spool. The end of a range is no wire size.
func stamped(text string, from, to int) bool {
	return strings.Contains(spools, " "+text[from:to]+" ") && !strings.HasSuffix(text[:from], "–") &&
		!strings.HasPrefix(text[to:], "–")
}

// named reports whether a number is part of a name: right before it stands a letter, a point or an underscore.
func named(text string, from, to int) bool {
	if from > 0 {
		if c := text[from-1]; letter(c) || c == '_' || c == '.' {
			return true
		}
	}
	return to < len(text) && text[to] == '_'
}

func letter(c byte) bool { return 'a' <= c|0x20 && c|0x20 <= 'z' }
