package main

import (
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"sync"

	"github.com/adrg/xdg"

	"brazebooth/internal/book"
	"brazebooth/internal/cli"
	"brazebooth/internal/serve"
	"brazebooth/tui"
)

// serving is what the server is given of the program.
func serving() serve.Deps {
	d := serve.Deps{Command: guestCommand, Keeper: guestKeeper, NameOf: cli.NameOf, Healthy: readable, Getenv: os.Getenv, Err: os.Stderr, Config: configFile()}
	if xdg.DataHome != "" {
		d.Data = filepath.Join(xdg.DataHome, "brazebooth")
	}
	return d
}

// guestCommand is the command tree of one guest: the same answers, no files of this machine, no other book.
func guestCommand(ctx context.Context, g serve.Guest, where string, args []string, in io.Reader, out, errOut io.Writer) int {
	return cli.Run(ctx, args, cli.Deps{In: in, Out: out, Err: errOut, Remote: true, LookOnly: !g.Writer,
		Example: tui.ExampleJob(), Title: tui.ExampleTitle, Book: where, Beside: inData("offline.db"), Who: g.Name, Where: g.From})
}

// guestKeeper is the book as one guest's screens see it.
func guestKeeper(g serve.Guest, where string) (tui.Keeper, func()) {
	if where == "" {
		return nil, func() {}
	}
	var saving sync.WaitGroup
	return desk{where: where, beside: inData("offline.db"), look: !g.Writer, remote: true, saving: &saving,
		author: book.Author{Who: g.Name, Where: g.From, Program: cli.Version}}, saving.Wait
}

// readable says why a book cannot be read; one that nothing was kept in yet can.
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
