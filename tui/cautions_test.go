package tui

import "testing"

// A caution without enough room is shown by whole clauses: as many as fit, and always the first.
func TestClauses(t *testing.T) {
	const text = "STOP: Do not: it melts; it burns. Use solder."
	for _, x := range []struct {
		w, lines int
		want     string
	}{
		{60, 1, text}, {35, 1, "STOP: Do not: it melts; it burns. …"}, {34, 1, "STOP: Do not: it melts; …"}, {25, 1,
			"STOP: Do not: it melts; …"},
		{15, 1, "STOP: Do not: …"}, {4, 1, "STOP: Do not: …"},
		{25, 2, text},
	} {
		if got := clauses(text, ";:.", func(s string) bool { return len(wrap(s, x.w)) <= x.lines }); got != x.want {
			t.Errorf("in %d lines of %d: %q, want %q", x.lines, x.w, got, x.want)
		}
	}
	none := func(string) bool { return false }
	if got := clauses("no clause in here at all", ";:.", none); got != "no clause in here at all" {
		t.Errorf("%q", got)
	}
}
