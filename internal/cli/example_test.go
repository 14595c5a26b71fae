package cli

import (
	"slices"
	"strings"
	"testing"

	"github.com/spf13/cobra"
)

// Every command has an example, and the program accepts every example: its command and its flags exist.
func TestExamplesOfHelp(t *testing.T) {
	bare := []string{"help", "version", "path", "show"} // they need no arguments
	var visit func(*cobra.Command)
	visit = func(c *cobra.Command) {
		if c.HasParent() && c.Example == "" && !slices.Contains(bare, c.Name()) {
			t.Errorf("%s has no example", c.CommandPath())
		}
		for line := range strings.Lines(c.Example) {
			_, typed, ok := strings.Cut(strings.TrimSpace(line), "brazebooth ")
			if !ok || strings.HasPrefix(typed, "completion ") {
				continue
			}
			var words []string
			for i, part := range strings.Split(strings.TrimSpace(typed), `"`) { // quoted text is one word
				if i%2 == 1 {
					words = append(words, part)
				} else {
					words = append(words, strings.Fields(part)...)
				}
			}
			if end := slices.Index(words, ">"); end >= 0 {
				words = words[:end]
			}
			root := New(Deps{})
			cmd, rest, err := root.Find(words)
			if err == nil {
				err = cmd.ParseFlags(rest)
			}
			if err == nil && cmd.Args != nil {
				err = cmd.ValidateArgs(cmd.Flags().Args())
			}
			if err != nil || cmd == root {
				t.Errorf("%s: %q is not taken: %v", c.CommandPath(), typed, err)
			}
		}
		for _, sub := range c.Commands() {
			visit(sub)
		}
	}
	visit(New(Deps{}))
}
