package cli

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// answered are right arguments for each command, so that only what a test adds to them can be wrong; the other commands
// need no arguments.
var answered = map[string]string{
	"card": "--gauge 18ga --feed 5 --travel 8", "window": "--gauge 20ga", "gap": "--metal mild-steel --gauge 16ga " +
		"--joint butt --gap 2mm",
	"batch": "jobs.csv", "correct": "--seen rolled-edge --feed 5 --travel 9", "practice": "--level 1",
	"pulse": "--mode pulsed", "gauge": "16", "completion": "bash", "help": "card",
	"book save": "--name rim --gauge 18ga --feed 5 --travel 8", "book print": "lid", "book show": "lid",
	"book history": "lid", "book edit": "edited", "book procedure": "lid",
	"book compare": "lid lid", "book recompute": "lid", "book delete": "gone", "book find": "lid",
	"book trial": "lid --verdict good", "book restore": "gone", "book import": "cards.jsonl",
	"config set": "name ada", "config unset": "name",
}

// counter is a folder with a book of a few cards, an export and a batch's jobs.
type counter struct{ dir string }

func newShop(t *testing.T) *counter {
	t.Helper()
	s := &counter{t.TempDir()}
	t.Chdir(s.dir)
	t.Setenv("TMPDIR", t.TempDir()) // for files that a server's book cannot take
	for _, name := range []string{"lid", "edited", "gone"} {
		if got := s.run("book", "save", "--name", name, "--gauge", "18ga", "--feed", "5", "--travel",
			"8"); got.code != 0 {
			t.Fatal(got)
		}
	}
	if got := s.run("book", "export", "cards.jsonl"); got.code != 0 {
		t.Fatal(got)
	}
	if err := os.WriteFile("jobs.csv", []byte(jobs), 0o600); err != nil {
		t.Fatal(err)
	}
	return s
}

const jobs = "id,gauge,feed,travel\n1,18ga,5,8\n"

func (s *counter) run(args ...string) said {
	var out, errOut bytes.Buffer
	code := Run(context.Background(), args, Deps{In: strings.NewReader(""), Out: &out, Err: &errOut, Title: "example",
		Example: calc.Job{Metal: "galvanized", Gauge: 16},
		Book:    filepath.Join(s.dir, "book.db"), Config: filepath.Join(s.dir, "config.toml"), Who: "ada"})
	return said{code, out.String(), errOut.String()}
}

// files are the names in the folder, without the book's own and the settings.
func (s *counter) files(t *testing.T) []string {
	t.Helper()
	list, err := os.ReadDir(s.dir)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, f := range list {
		if !strings.HasPrefix(f.Name(), "book.db") && f.Name() != "config.toml" {
			names = append(names, f.Name())
		}
	}
	return names
}

// way is one command line that names a file to a command: as the value of one of its flags, or as an argument.
type way struct {
	cmd, flag, usage string
	args             []string
}

func waysOf(root *cobra.Command, file string) []way {
	var list []way
	var walk func(c *cobra.Command)
	walk = func(c *cobra.Command) {
		name := strings.TrimPrefix(strings.TrimPrefix(c.CommandPath(), root.Name()), " ")
		if c.Runnable() {
			args := append(strings.Fields(name), strings.Fields(answered[name])...)
			list = append(list, way{name, "", c.Short, append(slices.Clone(args), file)})
			c.InheritedFlags() // cobra merges them here
			c.Flags().VisitAll(func(f *pflag.Flag) {
				if f.Value.Type() != "bool" {
					list = append(list, way{name, f.Name, f.Usage, append(slices.Clone(args), "--"+f.Name+"="+file)})
				}
			})
		}
		for _, sub := range c.Commands() {
			walk(sub)
		}
	}
	walk(root)
	return list
}

// saysNew matches the help of a flag or a command that makes a file.
var saysNew = regexp.MustCompile(`\bnew (file|one)|in a file that is not there yet|^Every revision`)

// someWays are all ways whose help says that they make a file, and a sample of the others.
func someWays(t *testing.T, name string) []way {
	var makes, others []way
	for _, w := range waysOf(New(Deps{}), name) {
		if saysNew.MatchString(w.usage) {
			makes = append(makes, w)
		} else {
			others = append(others, w)
		}
	}
	return append(makes, deep.Of(t, others, 4)...)
}

// No command overwrites a file, whatever flag or argument names it. The ways to name one are found by walking the tree
// of commands, and trying them shows which make a file.
func TestNoCommandOverwritesAFile(t *testing.T) {
	deep.Turn(t)
	s := newShop(t)
	made := 0
	for _, w := range someWays(t, "made.out") {
		if w.flag == "book" {
			continue // where the book is, not a file beside it
		}
		s.run(w.args...)
		_, err := os.Lstat("made.out")
		if is := err == nil; is != saysNew.MatchString(w.usage) {
			t.Errorf("%s: a file is made: %v; its help says: %s", strings.Join(w.args, " "), is, w.usage)
		}
		if err == nil {
			made++
			t.Log(strings.Join(w.args, " "))
			if err := os.Remove("made.out"); err != nil {
				t.Fatal(err)
			}
		}
	}
	if made < 9 {
		t.Errorf("only %d ways make a file", made)
	}
	before := s.files(t)
	for _, file := range []string{"jobs.csv", "cards.jsonl"} {
		was, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range someWays(t, file) {
			got := s.run(w.args...)
			if now, err := os.ReadFile(file); err != nil || !bytes.Equal(now, was) {
				t.Fatalf("%s: the file is now %.100q, %v", strings.Join(w.args, " "), now, err)
			}
			if saysNew.MatchString(w.usage) && (got.code != 2 || !strings.Contains(got.err,
				file+" is there already\nname another file, such as ")) {
				t.Errorf("%s: code %d, %q", strings.Join(w.args, " "), got.code, got.err)
			}
		}
	}
	if after := s.files(t); !slices.Equal(before, after) {
		t.Errorf("the folder holds %q, before %q", after, before)
	}
}

// The book itself is not overwritten either.
func TestNoCommandOverwritesTheBook(t *testing.T) {
	s := newShop(t)
	for _, w := range waysOf(New(Deps{}), "book.db") {
		if saysNew.MatchString(w.usage) {
			if got := s.run(w.args...); got.code != 2 || !strings.Contains(got.err, "is there already") {
				t.Errorf("%s: code %d, %q", strings.Join(w.args, " "), got.code, got.err)
			}
		}
	}
	if got := s.run("book", "check"); got.code != 0 {
		t.Errorf("%+v", got)
	}
}
