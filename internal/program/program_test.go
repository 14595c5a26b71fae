package program

import (
	"context"
	"flag"
	"os"
	"os/signal"
	"runtime"
	"strconv"
	"syscall"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"brazebooth/internal/cli"
	"brazebooth/tui"
	"brazebooth/tui/canvas"
)

// patience names the variable with which a test sets how long doctor waits for the terminal.
const patience = "BRAZEBOOTH_TEST_ANSWERS_WITHIN"

// TestMain lets a test run this program as a command in its own process.
func TestMain(m *testing.M) {
	// Most tests wait most of the time. -parallel overrules it.
	_ = flag.Set("test.parallel", strconv.Itoa(4*runtime.GOMAXPROCS(0)))
	testscript.Main(m, map[string]func(){
		"brazebooth": func() {
			ctx, stop := signal.NotifyContext(context.Background(), syscall.SIGTERM) // ends as the program does
			context.AfterFunc(ctx, stop)
			if d, err := time.ParseDuration(os.Getenv(patience)); err == nil {
				answersWithin = d
			}
			os.Exit(Run(ctx, os.Args[1:]))
		},
	})
}

// The command line and the screens have the same themes.
func TestThemesAreTheScreens(t *testing.T) {
	names, themes := cli.Themes(), []tui.Theme{canvas.ThemeAuto, canvas.ThemeDark, canvas.ThemeLight,
		canvas.ThemeContrast, canvas.ThemeNone}
	if len(names) != len(themes) {
		t.Fatalf("%v and %v", names, themes)
	}
	for i, name := range names {
		if tui.Theme(name) != themes[i] {
			t.Errorf("%s and %s", name, themes[i])
		}
	}
}
