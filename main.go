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
	"sync"
	"syscall"

	"github.com/adrg/xdg"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/term"

	"brazebooth/internal/book"
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
	if canShow() {
		d.RunScreens = screens
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

// canShow reports whether there is a terminal that can place text.
func canShow() bool {
	name := os.Getenv("TERM")
	return name != "" && name != "dumb" && term.IsTerminal(os.Stdin.Fd()) && term.IsTerminal(os.Stdout.Fd())
}

func screens(ctx context.Context, given cli.ScreenOptions) error {
	o := tui.Options{Units: given.Units, Theme: tui.Theme(given.Theme), Comma: given.Comma}
	var saving sync.WaitGroup
	if given.Book != "" {
		o.Book = desk{where: given.Book, beside: inData("offline.db"), author: book.Author{Who: given.Who, Where: hostName(), Program: cli.Version}, saving: &saving}
	}
	if os.Getenv("NO_COLOR") != "" { // any value counts
		o.Profile = colorprofile.Ascii
	}
	err := tui.Run(ctx, o, os.Stdin, os.Stdout)
	saving.Wait() // it ends by itself: a server that says nothing is given up, and what was to be saved goes beside
	if errors.Is(err, tea.ErrInterrupted) {
		return nil // ctrl+c is a way to leave
	}
	return err
}
