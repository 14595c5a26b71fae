// Brazebooth finds settings for gas metal arc brazing: without arguments it opens the screens, with a
// command it prints an answer.
package main

import (
	"context"
	"errors"
	"os"
	"os/signal"
	"os/user"
	"path/filepath"
	"runtime"
	"syscall"

	"github.com/adrg/xdg"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/term"

	"brazebooth/internal/cli"
	"brazebooth/internal/serve"
	"brazebooth/tui"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	code := run(ctx, os.Args[1:])
	stop()
	os.Exit(code)
}

func run(ctx context.Context, args []string) int {
	d := cli.Deps{In: os.Stdin, Out: os.Stdout, Serve: serve.Bind(serving()), Err: os.Stderr, Example: tui.ExampleJob(), Title: tui.ExampleTitle,
		Patient: term.IsTerminal(os.Stderr.Fd()), Book: bookFile(), Beside: besideFile(), Who: shortName(), Where: hostName()}
	d.RunPlain = func(ctx context.Context, given cli.ScreenOptions) error {
		return questions(ctx, given.Units, deskAt(given.Book), os.Stdin, os.Stdout)
	}
	switch {
	case canShow():
		d.RunScreens = screens
	case canAsk():
		d.RunScreens = d.RunPlain
	}
	return cli.Run(ctx, args, d)
}

// bookFile is where the user's own book lies: BRAZEBOOTH_BOOK, or a file in the folder for a program's data.
func bookFile() string {
	if where := os.Getenv("BRAZEBOOTH_BOOK"); where != "" {
		return where
	}
	if xdg.DataHome == "" {
		return ""
	}
	return filepath.Join(xdg.DataHome, "brazebooth", "book.db")
}

// besideFile takes what a book's server cannot while it is away.
func besideFile() string {
	if xdg.DataHome == "" {
		return ""
	}
	return filepath.Join(xdg.DataHome, "brazebooth", "offline.db")
}

// shortName is who works here, by the name of the login.
func shortName() string {
	u, err := user.Current()
	if err != nil {
		return ""
	}
	return u.Username
}

func hostName() string {
	name, err := os.Hostname()
	if err != nil {
		return ""
	}
	return name
}

// canShow reports whether there is a terminal that can place text; one of Windows can and has no name.
func canShow() bool {
	name := os.Getenv("TERM")
	named := name != "" || runtime.GOOS == "windows"
	return named && name != "dumb" && canAsk()
}

// canAsk reports whether somebody sits at a terminal of any kind.
func canAsk() bool { return term.IsTerminal(os.Stdin.Fd()) && term.IsTerminal(os.Stdout.Fd()) }

func screens(ctx context.Context, given cli.ScreenOptions) error {
	o := tui.Options{Units: given.Units, Theme: tui.Theme(given.Theme)}
	d := deskAt(given.Book)
	if d != nil {
		o.Book = *d
	}
	if os.Getenv("NO_COLOR") != "" { // any value counts
		o.Profile = colorprofile.Ascii
	}
	err := tui.Run(ctx, o, os.Stdin, os.Stdout)
	if d != nil {
		d.saving.Wait() // it ends by itself: a server that says nothing is given up, and what was to be saved goes beside
	}
	if errors.Is(err, tea.ErrInterrupted) {
		return nil // ctrl+c is a way to leave
	}
	return err
}
