package program

import (
	"context"
	"errors"
	"io"
	"os"
	"runtime"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/term"

	"brazebooth/internal/book"
	"brazebooth/internal/cli"
	"brazebooth/internal/linear"
	"brazebooth/internal/serve"
	"brazebooth/internal/shop"
	"brazebooth/tui"
)

// Run is the whole program; it returns its exit code.
func Run(ctx context.Context, args []string) int {
	d := cli.Deps{In: os.Stdin, Out: os.Stdout, Serve: serve.Bind(serving()), Err: os.Stderr,
		Example: tui.ExampleJob(), Title: tui.ExampleTitle, Patient: term.IsTerminal(os.Stderr.Fd()),
		Book: inData("book.db"), Beside: inData("offline.db"), Who: shortName(), Where: hostName(),
		Config: configFile(), Env: os.Getenv, Terminal: terminalHere, HostKey: inData(serve.HostKeyFile),
		Asking: &cli.Asking{Signs: tui.Signs(), Ask: askTerminal, Samples: samples}}
	d.RunPlain = func(ctx context.Context, given cli.ScreenOptions) error {
		return questions(ctx, given, shopAt(given.Book, given.Who, hostName()), os.Stdin, os.Stdout)
	}
	switch {
	case canShow():
		d.RunScreens = screens
	case canAsk():
		d.RunScreens = d.RunPlain
	}
	return cli.Run(ctx, args, d)
}

// canShow reports whether there is a terminal that can place text. On Windows a terminal has no name.
func canShow() bool {
	name := os.Getenv("TERM")
	named := name != "" || runtime.GOOS == "windows"
	return named && name != "dumb" && canAsk() && carriesOut()
}

// canAsk reports whether standard input and output are a terminal of any kind.
func canAsk() bool { return term.IsTerminal(os.Stdin.Fd()) && term.IsTerminal(os.Stdout.Fd()) }

// shopAt is the book at a place, for a user who works at from; nil without a book.
func shopAt(where, who, from string) *shop.Shop {
	if where == "" {
		return nil
	}
	return &shop.Shop{Where: where, Beside: inData("offline.db"),
		Author: book.Author{Who: who, Where: from, Program: cli.Version}}
}

// lookOf is what the options of a command line say about how the screens look.
func lookOf(given cli.ScreenOptions) tui.Options {
	return tui.Options{Units: given.Units, Theme: tui.Theme(given.Theme), Comma: given.Comma, Pictures: given.Pictures}
}

// questions asks and answers line by line; s is nil if there is no book.
func questions(ctx context.Context, given cli.ScreenOptions, s *shop.Shop, in io.Reader, out io.Writer) error {
	o := linear.Options{Units: given.Units, Comma: given.Comma, Example: tui.ExampleJob(), Title: tui.ExampleTitle}
	if s != nil {
		o.Book = s
		defer s.Wait()
	}
	return linear.Run(ctx, o, in, out)
}

func screens(ctx context.Context, given cli.ScreenOptions) error {
	o := lookOf(given)
	o.Walk = firstWalk(given.Book)
	s := shopAt(given.Book, given.Who, hostName())
	if s != nil {
		o.Book = s
		defer s.Wait()
	}
	if os.Getenv("NO_COLOR") != "" { // any value counts
		o.Profile = colorprofile.Ascii
	}
	err := tui.Run(ctx, o, terminalInput(os.Stdin), os.Stdout)
	if errors.Is(err, tea.ErrInterrupted) || ctx.Err() != nil && errors.Is(err, tea.ErrProgramKilled) {
		return nil // ctrl+c and a signal are normal ways to leave
	}
	return err
}
