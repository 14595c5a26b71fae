package serve

import "strings"

// split splits a command line into words by a shell's rules of quoting (POSIX.1-2017, Shell Command Language, 2.2) and
// by no others: there is no shell here, so $, `, ;, |, > and * are ordinary characters. ok is false if a quotation has
// no end. The library's own function loses empty words and ignores an open quotation.
func split(line string) (words []string, ok bool) {
	var w strings.Builder
	quote, in, escape := rune(0), false, false
	for _, r := range line {
		switch {
		case escape:
			if quote == '"' && !strings.ContainsRune("$`\"\\\n", r) {
				w.WriteByte('\\')
			}
			if r != '\n' {
				w.WriteRune(r)
			}
			escape = false
		case r == '\\' && quote != '\'':
			escape, in = true, true
		case quote != 0 && r == quote:
			quote = 0
		case quote != 0:
			w.WriteRune(r)
		case r == '\'' || r == '"':
			quote, in = r, true
		case strings.ContainsRune(" \t\n\r", r):
			if in {
				words = append(words, w.String())
			}
			w.Reset()
			in = false
		default:
			w.WriteRune(r)
			in = true
		}
	}
	if in {
		words = append(words, w.String())
	}
	return words, quote == 0 && !escape
}
