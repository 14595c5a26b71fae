// Package docs holds README.md and what lies in this folder to the program.
package docs

import (
	"bytes"
	"context"
	"flag"
	"os"
	"strings"
	"testing"

	"brazebooth/internal/cli"
)

var update = flag.Bool("update", false, "rewrite README.md's examples by what the program prints")

const (
	readme = "../README.md"
	fence  = "```"
	prompt = "$ go run . "
	cut    = "..."   // last line of an example that is not shown to its end
	above  = "<!-- " // what stands above a screen: the golden file that holds it
	ending = " -->\n"
)

// An example that is typed once is wrong after the next change of a formula: the README's commands must
// print what stands below them, and a screen under a comment must be the golden file that the comment names.
func TestReadmeShowsWhatIsPrinted(t *testing.T) {
	b, err := os.ReadFile(readme)
	if err != nil {
		t.Fatal(err)
	}
	parts := strings.Split(string(b), fence) // text, block, text, block ...
	commands, screens := 0, 0
	for i := 1; i < len(parts); i += 2 {
		want := parts[i]
		switch {
		case strings.HasPrefix(parts[i], "\n"+prompt):
			want = example(t, parts[i])
			commands++
		case strings.HasSuffix(parts[i-1], ending):
			want = "\n" + golden(t, parts[i-1])
			screens++
		}
		if parts[i] != want && !*update {
			t.Errorf("README.md shows%s\nwhich is now%s\nafter a change that is meant: go test ./docs -run Readme -update", parts[i], want)
		}
		parts[i] = want
	}
	if commands < 1 || screens < 1 || len(parts)%2 == 0 {
		t.Errorf("README.md has %d commands and %d screens in %d parts", commands, screens, len(parts))
	}
	if *update && !t.Failed() {
		if err := os.WriteFile(readme, []byte(strings.Join(parts, fence)), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// example runs a block's command and returns the block as it should be, cut where it was cut.
func example(t *testing.T, block string) string {
	t.Helper()
	head, shown, _ := strings.Cut(strings.TrimPrefix(block, "\n"), "\n")
	var out, errOut bytes.Buffer
	args := strings.Fields(strings.TrimPrefix(head, prompt))
	if code := cli.Run(context.Background(), args, cli.Deps{Out: &out, Err: &errOut}); code != 0 {
		t.Fatalf("%s: code %d, %s", head, code, errOut.String())
	}
	text := out.String()
	if strings.HasSuffix(shown, cut+"\n") {
		lines := strings.SplitAfter(text, "\n")
		text = strings.Join(lines[:min(len(lines), strings.Count(shown, "\n")-1)], "") + cut + "\n"
	}
	return "\n" + head + "\n" + text
}

// golden reads the file that the comment at the end of the text names.
func golden(t *testing.T, text string) string {
	t.Helper()
	name := strings.TrimSuffix(text[strings.LastIndex(text, above)+len(above):], ending)
	b, err := os.ReadFile("../" + name)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}
