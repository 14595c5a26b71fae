package quantity

import "strings"

// Comma writes the decimal points of a text's numbers as commas: "4.23 m/min, 3.66–5.54" becomes "4,23 m/min, 3,66–5,54".
// It takes as much room as before. What only looks like a number stays: a version or a section (0.1.0), a name with digits
// (M2.5), a wire as its spool is stamped (.035).
func Comma(text string) string {
	if strings.IndexByte(text, '.') < 0 {
		return text
	}
	var out []byte
	for i := 0; i < len(text); {
		if !figure(text[i]) {
			i++
			continue
		}
		end := i
		for end < len(text) && (figure(text[end]) || text[end] == '.') {
			end++
		}
		number := strings.TrimRight(text[i:end], ".")
		if point := strings.IndexByte(number, '.'); point > 0 && strings.Count(number, ".") == 1 && !named(text, i, i+len(number)) {
			if out == nil {
				out = []byte(text)
			}
			out[i+point] = ','
		}
		i = end
	}
	if out == nil {
		return text
	}
	return string(out)
}

func figure(c byte) bool { return '0' <= c && c <= '9' }

// named reports a number that is part of a name: a letter, a point or an underscore stands right before it.
func named(text string, from, to int) bool {
	if from > 0 {
		if c := text[from-1]; letterByte(c) || c == '_' || c == '.' {
			return true
		}
	}
	return to < len(text) && text[to] == '_'
}

func letterByte(c byte) bool { return 'a' <= c|0x20 && c|0x20 <= 'z' }
