// Package docs checks README.md, DEVELOPERS.md and this folder's documents against the program.
package docs

import (
	"bytes"
	"context"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"brazebooth/internal/cli"
)

var update = flag.Bool("update", false, "write the examples, pictures and the walk anew, as the program shows them")

const (
	fence  = "```"
	prompt = "$ go run . "
	typed  = "go run . "
	file   = "$ cat "
	cut    = "...\n" // last line of an example that is shown only in part
)

// documents are the project's texts for readers, except docs/walk.md, which TestWalkIsRecorded writes.
func documents(t *testing.T) []string {
	t.Helper()
	var all []string
	for _, pattern := range []string{"../*.md", "*.md"} {
		found, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, found...)
	}
	if len(all) < 8 {
		t.Fatalf("only %v", all)
	}
	return all
}

func read(t *testing.T, path string) string {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// blocks are the texts between fences; each begins with the rest of its opening fence's line.
func blocks(text string) []string {
	var found []string
	for i, part := range strings.Split(text, fence) {
		if i%2 == 1 {
			found = append(found, part)
		}
	}
	return found
}

// The documents' commands must print what is shown below them, since an example that was typed by hand is wrong after
// the next change of a formula.
func TestExamplesShowWhatIsPrinted(t *testing.T) {
	commands := 0
	for _, path := range documents(t) {
		parts := strings.Split(read(t, path), fence) // text, block, text, block ...
		if len(parts)%2 == 0 {
			t.Errorf("%s: a block has no end", path)
		}
		changed := false
		for i := 1; i < len(parts); i += 2 {
			if !strings.HasPrefix(parts[i], "\n"+prompt) {
				continue
			}
			commands++
			want := example(t, parts[i])
			if parts[i] == want {
				continue
			}
			if !*update {
				t.Errorf("%s shows%s\nwhich is now%s\nafter an intended change: go test ./docs -run Examples "+
					"-update",
					path, parts[i], want)
			}
			parts[i], changed = want, true
		}
		if changed && *update {
			if err := os.WriteFile(path, []byte(strings.Join(parts, fence)), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
	if commands < 4 {
		t.Errorf("the documents show %d commands", commands)
	}
}

// example runs a block's command and returns the block as it should be, shortened where it was shortened.
func example(t *testing.T, block string) string {
	t.Helper()
	head, shown, _ := strings.Cut(strings.TrimPrefix(block, "\n"), "\n")
	var out, errOut bytes.Buffer
	args := strings.Fields(strings.TrimPrefix(head, prompt))
	if code := cli.Run(context.Background(), args, cli.Deps{Out: &out, Err: &errOut}); code != 0 {
		t.Fatalf("%s: code %d, %s", head, code, errOut.String())
	}
	text := out.String()
	if strings.HasSuffix(shown, cut) {
		lines := strings.SplitAfter(text, "\n")
		text = strings.Join(lines[:min(len(lines), strings.Count(shown, "\n")-1)], "") + cut
	}
	return "\n" + head + "\n" + text
}

// Every command in a block works when a document is typed from top to bottom, in one folder, with one book.
func TestCommandsWork(t *testing.T) {
	if testing.Short() {
		t.Skip("computes maps and timed arcs")
	}
	run := 0
	for _, path := range documents(t) {
		lines := commandLines(read(t, path))
		if len(lines) == 0 {
			continue
		}
		t.Run(filepath.Base(path), func(t *testing.T) {
			t.Chdir(t.TempDir())
			for _, line := range lines {
				run += works(t, line)
			}
		})
	}
	if run < 25 {
		t.Errorf("only %d commands were run", run)
	}
}

// commandLines are the lines of a document's blocks that run the program. A file that a block shows comes before its
// command. Examples with output are compared elsewhere and not run again.
func commandLines(text string) []string {
	var lines []string
	for _, b := range blocks(text) {
		if strings.HasPrefix(b, "\n"+file) {
			lines = append(lines, b)
			continue
		}
		for line := range strings.Lines(b) {
			if strings.HasPrefix(line, typed) {
				lines = append(lines, line)
			}
		}
	}
	return lines
}

// works runs a line; it returns 0 if the line cannot be run here.
func works(t *testing.T, line string) int {
	t.Helper()
	if strings.HasPrefix(line, "\n"+file) {
		line = laid(t, line)
	}
	line, _, _ = strings.Cut(strings.TrimSpace(line), " #")
	args := words(strings.TrimPrefix(line, typed))
	if len(args) == 0 || strings.HasPrefix(args[0], "-") {
		return 0 // the screens, and the questions line by line: they need a user
	}
	var out, errOut bytes.Buffer
	d := cli.Deps{Out: &out, Err: &errOut, Book: "book.db", Who: "ann", Where: "booth"}
	if code := cli.Run(t.Context(), args, d); code != 0 {
		t.Errorf("%s: code %d, %s", line, code, errOut.String())
	}
	return 1
}

// laid writes the file that a block shows first, and returns the command after it.
func laid(t *testing.T, block string) string {
	t.Helper()
	name, rest, _ := strings.Cut(strings.TrimPrefix(block, "\n"+file), "\n")
	content, command, ok := strings.Cut(rest, prompt)
	if !ok {
		t.Fatalf("no command after the file %s", name)
	}
	if err := os.WriteFile(name, []byte(content), 0o600); err != nil {
		t.Fatal(err)
	}
	return typed + command
}

// words splits a command line at its blanks; quoted text stays together.
func words(line string) []string {
	quoted := false
	return strings.FieldsFunc(line, func(r rune) bool {
		if r == '"' {
			quoted = !quoted
		}
		return r == '"' || r == ' ' && !quoted
	})
}

// The table of commands in README.md has every command.
func TestReadmeNamesEveryCommand(t *testing.T) {
	named := map[string]bool{}
	for line := range strings.Lines(read(t, "../README.md")) {
		cell, _, _ := strings.Cut(strings.TrimPrefix(line, "| "), " |")
		for _, name := range strings.Split(cell, ", ") {
			named[name] = true
		}
	}
	for _, c := range cli.New(cli.Deps{}).Commands() {
		if !c.Hidden && !named["`"+c.Name()+"`"] {
			t.Errorf("the table of commands has no row for %s", c.Name())
		}
	}
}
