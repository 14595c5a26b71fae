package main

import (
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// TestMain lets a script run this program as a command of its own.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"brazebooth": func() { os.Exit(run(os.Args[1:])) },
	})
}

// TestScripts runs every command as a user does, its errors included.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{Dir: "testdata/script", Setup: func(e *testscript.Env) error {
		e.Setenv("ESC", "\x1b")
		return nil
	}})
}
