package cli

import (
	"bytes"
	"context"
	"errors"
	"io"
	"io/fs"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// narrow is a standard output that takes left bytes and then fails.
type narrow struct {
	left int
	err  error
}

func (n *narrow) Write(p []byte) (int, error) {
	if len(p) <= n.left {
		n.left -= len(p)
		return len(p), nil
	}
	took := n.left
	n.left = 0
	return took, n.err
}

// into runs a command line with out as its standard output, after undoing an earlier run of the same command.
func (s *counter) into(out io.Writer, args ...string) said {
	for undone, undo := range map[string]string{"book delete": "book restore gone",
		"book restore": "book delete gone", "config unset": "config set name ada"} {
		if strings.HasPrefix(strings.Join(args, " "), undone) {
			s.run(strings.Fields(undo)...)
		}
	}
	var errOut bytes.Buffer
	code := Run(context.Background(), args, Deps{In: strings.NewReader(""), Out: out, Err: &errOut, Title: "example",
		Example: calc.Job{Metal: "galvanized", Gauge: 16},
		Book:    filepath.Join(s.dir, "book.db"), Config: filepath.Join(s.dir, "config.toml"), Who: "ada"})
	return said{code: code, err: errOut.String()}
}

// everyAnswer are command lines that print something: every command's answer, its help and its JSON.
func everyAnswer() [][]string {
	list := [][]string{{"help"}, {"--help"}, {"help", "book", "save"}, {"__complete", "card", "--gauge", ""},
		{"__complete", ""}, {"tables", "fillers"}, {"words", "throat"},
		{"card", "--gauge=18ga", "--feed=5", "--travel=8", "--pdf=-"}, {"window", "--gauge=20ga", "--png=-"}, {"book",
			"export", "-"}, {"book", "export", "--csv", "-"}, {"book", "print", "lid", "--pdf=-"}}
	root := New(Deps{})
	for _, w := range waysOf(root, "") {
		if w.flag == "" {
			args := w.args[:len(w.args)-1]
			list = append(list, append(strings.Fields(w.cmd), "--help"), args)
			if cmd, _, err := root.Find(strings.Fields(w.cmd)); err == nil && cmd.Flags().Lookup("json") != nil {
				list = append(list, append(args[:len(args):len(args)], "--json"))
			}
		}
	}
	return list
}

// A command whose answer could not be written in full exits with 1 and says why on standard error, but prints nothing
// where the reader has closed the pipe.
func TestUnwrittenAnswersExitWith1(t *testing.T) {
	s := newShop(t)
	full := &fs.PathError{Op: "write", Path: "/dev/stdout", Err: syscall.ENOSPC}
	printed, lines := 0, deep.Of(t, everyAnswer(), 16)
	for _, args := range lines {
		whole := new(bytes.Buffer)
		if s.into(whole, args...); whole.Len() == 0 {
			continue
		}
		printed++
		for _, room := range []int{0, 1, whole.Len() / 2} {
			got := s.into(&narrow{room, full}, args...)
			if got.code != 1 || !strings.Contains(got.err, "the answer could not be written whole: no space left "+
				"on device") || strings.Contains(got.err, "/dev/") {
				t.Errorf("%q with room for %d of %d bytes: code %d, %q", args, room, whole.Len(), got.code, got.err)
			}
		}
		quiet := s.into(&narrow{0, &fs.PathError{Op: "write", Path: "|1", Err: syscall.EPIPE}}, args...)
		if quiet.code != 1 || strings.Contains(quiet.err, "written whole") || strings.Contains(quiet.err, "pipe") {
			t.Errorf("%q for a reader who left: code %d, %q", args, quiet.code, quiet.err)
		}
	}
	if printed < len(lines)*2/3 {
		t.Errorf("only %d of %d answer", printed, len(lines))
	}
}

// After an error nothing more is written; a writer that takes less than it was given has failed too.
func TestOutletStopsAtAFault(t *testing.T) {
	fault := errors.New("gone")
	n := &narrow{3, fault}
	o := &outlet{w: n}
	if _, err := o.Write([]byte("abcdef")); !errors.Is(err, fault) {
		t.Error(err)
	}
	n.left = 100
	if k, err := o.Write([]byte("g")); k != 0 || !errors.Is(err, fault) || n.left != 100 {
		t.Error(k, err, n.left)
	}
	short := &outlet{w: &narrow{1, nil}}
	if _, err := short.Write([]byte("ab")); !errors.Is(err, io.ErrShortWrite) || !errors.Is(short.err,
		io.ErrShortWrite) {
		t.Error(err)
	}
}
