// Brazebooth finds settings for gas metal arc brazing: without arguments it opens the screens, with a
// command it prints an answer.
package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"

	"brazebooth/internal/program"
)

func main() { os.Exit(run(os.Args[1:])) }

// run carries out a command line; the first ctrl+c or SIGTERM asks it to end in order, the second ends it at once.
func run(args []string) int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // from then on nobody listens: a signal does what it does by itself
	return program.Run(ctx, args)
}
