package quantity

import "strings"

// Comma writes the decimal points of a text's numbers as commas: "4.23 m/min, .31–.71 in" becomes "4,23 m/min, ,31–,71
// in". The text keeps its length. These only look like numbers and stay as they are: a version or a section (0.1.0), a
// name with digits (M2.5), a wire size as stamped on its spool (.035).
func Comma(text string) string {
	if strings.IndexByte(text, '.') < 0 {
		return text
	}
	out := []byte(text)
	for i := 0; i < len(text); {
		if !begins(text, i) {
			i++
			continue
		}
		end := i
		for end < len(text) && (figure(text[end]) || text[end] == '.') {
			end++
		}
		number := strings.TrimRight(text[i:end], ".")
		to := i + len(number)
		if point := strings.IndexByte(number, '.'); point >= 0 && strings.Count(number, ".") == 1 &&
			!named(text, i, to) && !stamped(text, i, to) {
			out[i+point] = ','
		}
		i = end
	}
	return string(out)
}

// Marked is a text with the decimal mark that its reader chose.
func Marked(text string, comma bool) string {
	if comma {
		return Comma(text)
	}
	return text
}

// begins reports whether a number begins at i: with a digit, or with a point that has a digit after it and no point
// before it.
func begins(text string, i int) bool {
	if figure(text[i]) {
		return true
	}
	return text[i] == '.' && i+1 < len(text) && figure(text[i+1]) && (i == 0 || text[i-1] != '.' && !figure(text[i-1]))
}

// spools are the usual wire diameters as stamped on spools, inches.
const spools = " .020 .025 .030 .035 .040 .045 .052 "

// stamped reports whether a number is a wire size as stamped on a spool. The end of a range is no wire size.
func stamped(text string, from, to int) bool {
	return strings.Contains(spools, " "+text[from:to]+" ") && !strings.HasSuffix(text[:from], "–") &&
		!strings.HasPrefix(text[to:], "–")
}

func figure(c byte) bool { return '0' <= c && c <= '9' }

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
