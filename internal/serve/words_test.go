package serve

import (
	"os/exec"
	"slices"
	"strings"
	"testing"
)

func TestSplitQuotes(t *testing.T) {
	for line, want := range map[string][]string{
		"":                               nil,
		"  card \t --json ":              {"card", "--json"},
		`book save --name "tank lid"`:    {"book", "save", "--name", "tank lid"},
		`a '' "" b`:                      {"a", "", "", "b"},
		`it\'s 'it''s' "it\"s" "a\b" \\`: {"it's", "its", `it"s`, `a\b`, `\`},
		"$(x) `x` a;b|c>d & * ~ #e":      {"$(x)", "`x`", "a;b|c>d", "&", "*", "~", "#e"},
	} {
		if got, ok := split(line); !ok || !slices.Equal(got, want) {
			t.Errorf("%s: %q, %v", line, got, ok)
		}
	}
	for _, line := range []string{`"a`, `a 'b`, `a\`} {
		if got, ok := split(line); ok {
			t.Errorf("%s: %q", line, got)
		}
	}
}

// FuzzSplit compares split with a real shell, over characters that are special to it only for quoting.
func FuzzSplit(f *testing.F) {
	for _, s := range []string{`a "b c" 'd e' f\ g`, `''`, `"\"\\" 'x\'`, "\\\n a"} {
		f.Add(s)
	}
	sh, err := exec.LookPath("sh")
	if err != nil {
		f.Skip("no shell to compare with")
	}
	f.Fuzz(func(t *testing.T, line string) {
		if len(line) > 60 || strings.Trim(line, "ab \t'\"\\") != "" {
			t.Skip()
		}
		got, ok := split(line)
		out, err := exec.Command(sh, "-c", "for w in "+line+"\ndo printf '%s\\n' \"$w\"; done").Output()
		if !ok {
			return
		}
		if err != nil {
			t.Fatalf("%q is accepted, but the shell refuses it", line)
		}
		want := strings.TrimSuffix(string(out), "\n")
		if len(got) == 0 && want == "" {
			return
		}
		if strings.Join(got, "\n") != want {
			t.Errorf("%q: %q, the shell %q", line, got, want)
		}
	})
}
