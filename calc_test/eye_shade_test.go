package calc_test

import (
	"testing"

	"brazebooth/tables"
)

// 29 CFR 1910.133(a)(5) (read): minimum shade by current; ANSI Z49.1 guide as reproduced (read): suggested.
func TestShades(t *testing.T) {
	for _, c := range []struct{ amps, minimum, suggested float64 }{{50, 7, 0}, {93, 10, 11}, {200, 10, 12}, {300, 10,
		14}} {
		row, ok := tables.ShadeFor(c.amps)
		if !ok {
			t.Fatalf("no shade at %g A", c.amps)
		}
		check(t, at("%g A minimum", c.amps), row.Minimum.V, c.minimum, 0)
		check(t, at("%g A suggested", c.amps), row.Suggested.V, c.suggested, 0)
	}
}

// 29 CFR 1910.1000 Table Z-1 and the documents named in each row: limits in mg/m3.
func TestExposureLimits(t *testing.T) {
	for _, c := range []struct {
		agent string
		by    tables.Body
		over  tables.Span
		want  float64
	}{
		{"zinc-oxide", tables.OSHA, tables.ShiftMean, 5}, {"zinc-oxide", tables.NIOSH, tables.ShortTerm, 10},
		{"copper", tables.OSHA, tables.ShiftMean, 0.1},
		{"manganese", tables.OSHA, tables.Ceiling, 5}, {"chromium-vi", tables.OSHA, tables.ShiftMean, 0.005}, {"lead",
			tables.OSHA, tables.ShiftMean, 0.05},
	} {
		row, ok := limitFor(c.agent, c.by, c.over)
		if !ok {
			t.Fatal(c.agent)
		}
		check(t, at("%s %s %s", c.agent, c.by, c.over), row.Limit.V, c.want, 0)
	}
}
