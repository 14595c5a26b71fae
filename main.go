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

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	code := program.Run(ctx, os.Args[1:])
	stop()
	os.Exit(code)
}
