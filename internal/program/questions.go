package program

import (
	"context"
	"io"

	"brazebooth/internal/cli"
	"brazebooth/internal/linear"
	"brazebooth/internal/shop"
	"brazebooth/tui"
)

// questions asks and answers line by line; s is nil if there is no book.
func questions(ctx context.Context, given cli.ScreenOptions, s *shop.Shop, in io.Reader, out io.Writer) error {
	o := linear.Options{Units: given.Units, Comma: given.Comma, Example: tui.ExampleJob(), Title: tui.ExampleTitle}
	if s != nil {
		o.Book = s
		defer s.Wait()
	}
	return linear.Run(ctx, o, in, out)
}
