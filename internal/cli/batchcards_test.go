package cli

import (
	"bytes"
	"context"
	"path/filepath"
	"strings"
	"testing"
)

// A wrong row is reported, and the other rows still use the power source from the settings.
func TestWrongRowKeepsPowerSourceOfOthers(t *testing.T) {
	source, book := "A", filepath.Join(t.TempDir(), "book.db")
	run := func(in string, args ...string) string {
		var out, told bytes.Buffer
		code := Run(context.Background(), args, Deps{In: strings.NewReader(in), Out: &out, Err: &told, Book: book,
			Env: func(name string) string { return map[string]string{"BRAZEBOOTH_POWER_SOURCE": source}[name] }})
		if code != 0 && in == "" {
			t.Fatal(args, told.String())
		}
		return out.String()
	}
	run("", "book", "reading", "--power-source", "A", "--feed", "6", "--stickout", "12mm", "--amps", "97")
	last := func(rows string) string {
		out := run("metal,gauge,feed,travel\n"+rows, "batch", "-", "--format", "csv", "--keep-going")
		lines := strings.Split(strings.TrimSpace(out), "\n")
		return lines[len(lines)-1]
	}
	const good = "mild-steel,18ga,6,9\n"
	alone := last(good)
	if after := last("galvanized,7ga,6,9\n" + strings.Repeat(good, 60)); after != alone {
		t.Errorf("alone\n%s\nafter a wrong one\n%s", alone, after)
	}
	if source = ""; last(good) == alone {
		t.Error("the power source that is set changes nothing")
	}
}
