package cli

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/cobra"
)

// completed is what a shell gets for the last of the words, without descriptions.
func completed(t *testing.T, d Deps, words ...string) []string {
	t.Helper()
	var out, errOut bytes.Buffer
	d.Out, d.Err = &out, &errOut
	if code := Run(context.Background(), append([]string{cobra.ShellCompNoDescRequestCmd}, words...), d); code != 0 {
		t.Fatalf("%q: code %d, %s", words, code, errOut.String())
	}
	lines := strings.Split(strings.TrimSpace(out.String()), "\n")
	return lines[:len(lines)-1] // the last one is for the shell itself
}

func TestCompletions(t *testing.T) {
	for line, want := range map[string]string{
		"card --metal galv": "galvanized galvannealed", "card --metal2 copp": "copper", "card --gauge 18": "18ga",
		"card --gauge2 2": "20ga 21ga 22ga 23ga 24ga 25ga 26ga 27ga 28ga 29ga",
		"card --wire .03": ".030 .035", "card --mode ": "dip pulsed timed", "card --joint t": "tee",
		"card --position vert": "vertical-up vertical-down",
		"card --units ":        "metric inch both", "card --decimal c": "comma", "card --show str": "strength",
		"card --show fit,str":            "fit,strength",
		"correct --seen rolled-edge,por": "rolled-edge,pores", "card --paper ": "a4 letter",
		"book list --kind s": "source spool", "batch x --format j": "jsonl",
		"gauge 3": "30", "words thr": "throat", "tables fil": "fillers filler-rules", "config set de": "decimal",
		"config set decimal ": "point comma", "config set decimal comma ": "", "config unset na": "name",
		"completion ": "bash zsh fish powershell", "help ca": "card", "help book pri": "print", "boo": "book",
		"book pro": "procedure", "card extra": "", "version ": "",
		"card --power-source ": "", "book show ": "", "book history x": "", "card --hazard none,vehi": "none,vehicle",
		"fit --use w": "wear",
	} {
		words := strings.Split(line, " ")
		got := completed(t, Deps{Book: filepath.Join(t.TempDir(), "book.db")}, words...)
		for i := range got {
			got[i], _, _ = strings.Cut(got[i], "\t")
		}
		if all := strings.Join(got, " "); all != want {
			t.Errorf("%q: %q, want %q", line, all, want)
		}
	}
}

// Sizes cannot be listed: the shell shows what to type.
func TestSizesAreExplained(t *testing.T) {
	if got := strings.Join(completed(t, Deps{}, "card", "--feed", ""), "\n"); !strings.Contains(got,
		"250ipm or 6.3m/min") {
		t.Errorf("got %q", got)
	}
}

// Names in the book are completed too; completing never makes a book.
func TestCompletionsOfTheBook(t *testing.T) {
	where := filepath.Join(t.TempDir(), "book.db")
	d := Deps{Book: where}
	completed(t, d, "book", "show", "")
	completed(t, d, "card", "--power-source", "")
	if _, err := os.Stat(where); err == nil {
		t.Fatal("completing made a book")
	}
	for _, line := range [][]string{
		{"book", "save", "--name", "tank lid", "--gauge", "20ga", "--feed", "4", "--travel", "8"}, {"book", "save",
			"--name", "stove", "--gauge", "18ga", "--feed", "5", "--travel", "8"},
		{"book", "source", "--name", "booth 1"}, {"book", "person", "Ada"}, {"book", "delete", "stove"},
	} {
		var out, errOut bytes.Buffer
		if code := Run(context.Background(), line, Deps{Out: &out, Err: &errOut, Book: where, Who: "Ada"}); code != 0 {
			t.Fatalf("%q: %s", line, errOut.String())
		}
	}
	for line, want := range map[string]string{
		"book show ": "tank lid", "book print ta": "tank lid", "card --power-source b": "booth 1",
		"book source --name ": "booth 1", "batch x --power-source ": "booth 1",
		"book show --kind source ": "booth 1", "book show x": "",
	} {
		if got := strings.Join(completed(t, d, strings.Split(line, " ")...), " "); got != want {
			t.Errorf("%q: %q, want %q", line, got, want)
		}
	}
	if got := completed(t, d, "book", "restore", ""); len(got) != 1 || len(got[0]) < 8 {
		t.Errorf("restore: %q", got)
	}
	if got := completed(t, d, "--book", where, "book", "show", "ta"); len(got) != 1 {
		t.Errorf("--book: %q", got)
	}
}

// The script of every shell asks the program itself.
func TestEveryShellGetsAScript(t *testing.T) {
	for _, shell := range shells {
		got := run("completion", shell)
		if got.code != 0 || !strings.Contains(got.out, "__complete") || got.err != "" {
			t.Errorf("%s: code %d, %d bytes, %s", shell, got.code, len(got.out), got.err)
		}
	}
}
