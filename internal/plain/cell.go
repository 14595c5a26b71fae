package plain

// Cell makes a text harmless in a spreadsheet: one that a program would run as a formula gets an
// apostrophe before it, and so does one that begins with an apostrophe already, so that Uncell can tell.
func Cell(s string) string {
	if s == "" {
		return s
	}
	switch s[0] {
	case '=', '+', '-', '@', '\t', '\r', '\n', '\'', '|', '%':
		return "'" + s
	}
	return s
}

// Uncell undoes Cell.
func Uncell(s string) string {
	if len(s) > 1 && s[0] == '\'' && Cell(s[1:]) == s {
		return s[1:]
	}
	return s
}
