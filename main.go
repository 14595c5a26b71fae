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
		Patient: term.IsTerminal(os.Stderr.Fd()), Book: inData("book.db"), Beside: inData("offline.db"), Who: shortName(), Where: hostName(),
		Config: configFile(), Env: os.Getenv, Terminal: terminalHere, HostKey: inData(serve.HostKeyFile)}
	d.RunPlain = func(ctx context.Context, given cli.ScreenOptions) error {
		return questions(ctx, given, deskAt(given.Book, given.Who), os.Stdin, os.Stdout)
	}
	switch {
	case canShow():
		d.RunScreens = screens
	case canAsk():
		d.RunScreens = d.RunPlain
	}
	return cli.Run(ctx, args, d)
}

// inData names a file in the user's folder for a program's data: book.db is their own book, offline.db takes what a book's
// server cannot while it is away.
func inData(name string) string {
	if xdg.DataHome == "" {
		return ""
	}
	return filepath.Join(xdg.DataHome, "brazebooth", name)
}

// configFile holds the user's settings.
func configFile() string {
	if xdg.ConfigHome == "" {
		return ""
	}
	return filepath.Join(xdg.ConfigHome, "brazebooth", "config.toml")
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
	o := tui.Options{Units: given.Units, Theme: tui.Theme(given.Theme), Comma: given.Comma, Walk: firstWalk(given.Book)}
	d := deskAt(given.Book, given.Who)
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
