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

// run runs a command line. The first ctrl+c or SIGTERM asks it to end in order, the second ends it at once.
func run(args []string) int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // after the first, signals have their default effect
	return program.Run(ctx, args)
}
