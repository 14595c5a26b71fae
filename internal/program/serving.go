package program

import (
	"context"
	"errors"
	"io"
	"os"

	"brazebooth/internal/book"
	"brazebooth/internal/cli"
	"brazebooth/internal/serve"
	"brazebooth/internal/shop"
	"brazebooth/tui"
)

// serving are the functions and places of the program that the server needs.
func serving() serve.Deps {
	return serve.Deps{Command: guestCommand, Keeper: guestKeeper, Screens: guestScreens, NameOf: cli.NameOf,
		Place: shop.PlaceError, PartOf: book.IsPart, Healthy: readable, Getenv: os.Getenv, Err: os.Stderr,
		Config: configFile(), Data: inData("")}
}

// guestCommand is the command tree of one guest: the same answers, no files of this machine, no other book.
func guestCommand(ctx context.Context, g serve.Guest, where string, args []string, in io.Reader,
	out, errOut io.Writer) int {
	ask := func(ctx context.Context, given cli.ScreenOptions) error {
		return questions(ctx, given, guestShop(g, given.Book), in, out)
	}
	return cli.Run(ctx, args, cli.Deps{In: in, Out: out, Err: errOut, Remote: true, Fault: g.Fault,
		LookOnly: !g.Writer, RunPlain: ask, Example: tui.ExampleJob(), Title: tui.ExampleTitle,
		Book: where, Beside: inData("offline.db"), Who: g.Name, Where: g.From})
}

// guestScreens are the options in a guest's command line that opens the screens.
func guestScreens(args []string) (tui.Options, bool) {
	given, ok := cli.ScreensOf(args)
	return lookOf(given), ok
}

// guestKeeper is the book for one guest's screens, and a function that waits for running saves.
func guestKeeper(g serve.Guest, where string) (tui.Keeper, func()) {
	s := guestShop(g, where)
	if s == nil {
		return nil, func() {}
	}
	return s, s.Wait
}

// guestShop is the book with one guest's rights; nil without a book.
func guestShop(g serve.Guest, where string) *shop.Shop {
	s := shopAt(where, g.Name, g.From)
	if s != nil {
		s.LookOnly, s.Remote, s.Fault = !g.Writer, true, g.Fault
	}
	return s
}

// readable returns the error of reading a book; a book that does not exist yet is not an error.
func readable(ctx context.Context, where string) error {
	b, err := book.Read(ctx, where)
	if errors.Is(err, book.ErrNone) {
		return nil
	}
	if err != nil {
		return err
	}
	return b.Close()
}
