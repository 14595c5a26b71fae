package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/adrg/xdg"
	"github.com/rogpeppe/go-internal/testscript"

	"brazebooth/internal/deep"
)

// TestMain lets a script run this program in its own process: exec brazebooth.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"brazebooth": func() { os.Exit(run(os.Args[1:])) },
	})
}

// inTurn runs the scripts one after another, since "run" in a script uses this process's folder, environment and files.
type inTurn struct{ *testing.T }

func (inTurn) Parallel() {}

func (inTurn) Verbose() bool { return testing.Verbose() }

func (t inTurn) Run(name string, f func(testscript.T)) {
	t.T.Run(name, func(t *testing.T) { f(inTurn{t}) })
}

// TestScripts runs every command as a user does, its errors included. In a script "run brazebooth" calls the program in
// this process, which is faster and shares its cache; "exec brazebooth" starts it in its own process, for commands that
// need a standard input or a shell.
func TestScripts(t *testing.T) {
	const dir = "testdata/script"
	names := variables(t, dir)
	testscript.RunT(inTurn{t}, testscript.Params{
		Dir: dir,
		Setup: func(e *testscript.Env) error {
			e.Setenv("ESC", "\x1b")
			return nil
		},
		// A line that begins with [deep] takes seconds, and is also tested in its own room.
		Condition: func(name string) (bool, error) {
			if name != "deep" {
				return false, fmt.Errorf("%q is not a condition", name)
			}
			return deep.Run(), nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"run": func(ts *testscript.TestScript, neg bool, args []string) { called(ts, names, neg, args) },
		},
	})
}

// variables are the names of the environment variables that the scripts set, and of those that a script starts with.
func variables(t *testing.T, dir string) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "*.txtar"))
	if err != nil || len(files) == 0 {
		t.Fatal("no scripts", err)
	}
	names := []string{"PATH", "HOME", "TMPDIR", "devnull", "SYSTEMROOT", "APPDATA", "USERPROFILE"}
	set := regexp.MustCompile(`(?m)^(?:\[.*\] *)?env +([A-Za-z_]+)=`)
	for _, file := range files {
		b, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range set.FindAllSubmatch(b, -1) {
			names = append(names, string(m[1]))
		}
	}
	return names
}

// called runs the program in this process with a script's folder and environment, and gives its output to the script.
func called(ts *testscript.TestScript, names []string, neg bool, args []string) {
	if len(args) == 0 || args[0] != "brazebooth" {
		ts.Fatalf("usage: run brazebooth [args...]")
	}
	code, err := inside(ts, names, args[1:])
	ts.Check(err)
	if (code != 0) != neg {
		ts.Fatalf("exit code %d", code)
	}
}

func inside(ts *testscript.TestScript, names, args []string) (code int, err error) {
	here, err := os.Getwd()
	if err != nil {
		return 0, err
	}
	in, err := os.Open(os.DevNull)
	if err != nil {
		return 0, err
	}
	out, told := scratch(ts), scratch(ts)
	oldIn, oldOut, oldErr, oldEnv := os.Stdin, os.Stdout, os.Stderr, os.Environ()
	defer func() {
		os.Stdin, os.Stdout, os.Stderr = oldIn, oldOut, oldErr
		setEnviron(oldEnv)
		_, outErr := io.Copy(ts.Stdout(), out)
		_, toldErr := io.Copy(ts.Stderr(), told)
		err = errors.Join(err, outErr, toldErr, os.Chdir(here), in.Close(), discard(out), discard(told))
	}()
	var environ []string
	for _, name := range names {
		environ = append(environ, name+"="+ts.Getenv(name))
	}
	setEnviron(environ)
	if err := os.Chdir(ts.MkAbs(".")); err != nil {
		return 0, err
	}
	os.Stdin, os.Stdout, os.Stderr = in, out, told
	code = run(args)
	_, outErr := out.Seek(0, io.SeekStart)
	_, toldErr := told.Seek(0, io.SeekStart)
	return code, errors.Join(outErr, toldErr)
}

// scratch is an empty file outside the script's folder.
func scratch(ts *testscript.TestScript) *os.File {
	f, err := os.CreateTemp("", "brazebooth-script-")
	ts.Check(err)
	return f
}

func discard(f *os.File) error { return errors.Join(f.Close(), os.Remove(f.Name())) }

// setEnviron sets this process's environment to a list of name=value, and updates the library for user folders.
func setEnviron(list []string) {
	os.Clearenv()
	for _, v := range list {
		if name, value, ok := strings.Cut(v, "="); ok && name != "" {
			_ = os.Setenv(name, value)
		}
	}
	xdg.Reload()
}
