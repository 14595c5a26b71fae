package cli

import (
	"bytes"
	"context"
	"slices"
	"strings"
	"testing"
)

// answering runs doctor at a terminal that gives these answers.
func answering(t *testing.T, a Answers, args ...string) (out string, code int) {
	t.Helper()
	var told, wrong bytes.Buffer
	code = Run(context.Background(), append([]string{"doctor"}, args...), Deps{Out: &told, Err: &wrong,
		Book: t.TempDir() + "/book.db", Beside: t.TempDir() + "/offline.db", Config: t.TempDir() + "/config.toml",
		Terminal: func() Terminal {
			return Terminal{In: true, Out: true, Places: true, Width: 80, Height: 24, Name: "xterm", UTF8: true}
		},
		Asking: &Asking{Signs: "█▲°", Ask: func(context.Context) Answers { return a },
			Samples: func(theme, background string) []Sample {
				return []Sample{{"blocks", []string{"█", "▲"}, "solid in " + theme, "a font for " + background}}
			}}})
	return told.String(), code
}

func TestDoctorAsksHowWideSignsAre(t *testing.T) {
	for _, c := range []struct {
		columns []int
		want    string
		code    int
	}{
		{[]int{1, 1, 1}, "ok    widths       all 3 signs", 0},
		{nil, "note  widths       the terminal did not say", 0},
		{[]int{1, 1}, "note  widths       the terminal did not say", 0},
		{[]int{1, 2, 2}, "mend  widths       signs that take two columns where the screens count on one (2): ▲ °", 1},
		{[]int{3, 3, 2}, "mend  widths       the terminal does not read UTF-8", 1},
		{[]int{0, 1, 1}, "mend  widths       signs that do not take the one column that the screens count on (1): █",
			1},
		{[]int{1 << 40, -1, 1}, "mend  widths       signs that do not take the one column that the screens count " +
			"on (2): █ ▲", 1},
	} {
		out, code := answering(t, Answers{Columns: c.columns, Background: "light"})
		if code != c.code || !strings.Contains(out, "  "+c.want) || c.code == 1 && !strings.Contains(out, "→ ") {
			t.Errorf("%v: exit code %d\n%s", c.columns, code, out)
		}
		if !strings.Contains(out, "ok    background   light") || !strings.HasSuffix(out, "look at these\n"+
			"  blocks     █\n             ▲\n             solid in auto\n             if not: a font for light\n") {
			t.Errorf("samples:\n%s", out)
		}
	}
	if out, code := answering(t, Answers{Columns: []int{1, 1, 2}}, "--json"); code != 1 || strings.Contains(out,
		"solid") ||
		!strings.Contains(out, "count on one (1): °") {
		t.Errorf("exit code %d\n%s", code, out)
	}
}

// Only a dozen of many signs are listed.
func TestSome(t *testing.T) {
	if got := some(slices.Repeat([]string{"x"}, 13)); got != strings.Repeat("x ", 12)+"…" {
		t.Error(got)
	}
}
