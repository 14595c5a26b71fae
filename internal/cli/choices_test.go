package cli

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"brazebooth/internal/choice"
	"brazebooth/internal/config"
)

// names are the names of all choices, in alphabetical order.
func names() []string {
	var list []string
	for _, c := range choice.All() {
		list = append(list, c.Name)
	}
	slices.Sort(list)
	return list
}

// card has a flag for every choice, and only these others.
func TestFlagsAreTheChoices(t *testing.T) {
	card, _, err := New(Deps{}).Find([]string{"card"})
	if err != nil {
		t.Fatal(err)
	}
	others := []string{"power-source", "units", "json", "why", "show", "pdf", "png", "svg", "paper", "markdown"}
	var flags []string
	card.LocalNonPersistentFlags().VisitAll(func(f *pflag.Flag) {
		if c := choice.ByName(f.Name); c != nil && f.Usage != c.Help() {
			t.Errorf("--%s says %q, its choice %q", f.Name, f.Usage, c.Help())
		}
		if !slices.Contains(others, f.Name) {
			flags = append(flags, f.Name)
		}
	})
	if !slices.Equal(flags, names()) {
		t.Errorf("flags %q, choices %q", flags, names())
	}
}

// offered is what a shell completes for the value of a flag.
func offered(t *testing.T, command, flag string) []string {
	t.Helper()
	var out, errOut bytes.Buffer
	args := []string{cobra.ShellCompNoDescRequestCmd, command, "--" + flag, ""}
	if code := Run(t.Context(), args, Deps{Out: &out, Err: &errOut}); code != 0 {
		t.Fatalf("--%s: %s", flag, errOut.String())
	}
	lines := strings.Split(strings.TrimSpace(out.String()), "\n")
	return lines[:len(lines)-1] // the last one is for the shell itself
}

// A shell completes the rows of a choice, or shows its usage; for a setting it completes the values.
func TestCompletionsAreTheRows(t *testing.T) {
	for _, c := range choice.All() {
		var want []string
		for _, r := range c.Standard(&choice.Present{}) {
			want = append(want, r.ID)
		}
		switch got := offered(t, "card", c.Name); {
		case c.Name == "hazard": // completed by words, of which several can be joined
		case want == nil && (len(got) != 1 || !strings.HasSuffix(got[0], c.Usage)):
			t.Errorf("--%s: %q, and no word of %q", c.Name, got, c.Usage)
		case want != nil && !slices.Equal(got, want):
			t.Errorf("--%s: %q, its rows are %q", c.Name, got, want)
		}
	}
	for _, k := range config.Keys() {
		command := map[bool]string{true: "--plain", false: "card"}[k.Name == "theme"]
		if k.Values != nil {
			if got := offered(t, command, k.Name); !slices.Equal(got, k.Values) {
				t.Errorf("--%s: %q, it can be %q", k.Name, got, k.Values)
			}
		}
	}
}
