package program

import (
	"context"
	"io"

	"brazebooth/internal/cli"
	"brazebooth/internal/linear"
	"brazebooth/tui"
)

// questions asks and answers line by line; d is nil where there is no book.
func questions(ctx context.Context, given cli.ScreenOptions, d *desk, in io.Reader, out io.Writer) error {
	o := linear.Options{Units: given.Units, Comma: given.Comma, Example: tui.ExampleJob(), Title: tui.ExampleTitle}
	if d != nil {
		o.Book = lineDesk{*d}
		defer d.saving.Wait()
	}
	return linear.Run(ctx, o, in, out)
}

// lineDesk is the desk as questions and answers see it.
type lineDesk struct{ desk }

// Find lists kept cards.
func (d lineDesk) Find(ctx context.Context, text string) ([]linear.Entry, error) {
	found, err := d.desk.Find(ctx, text)
	list := make([]linear.Entry, len(found))
	for i, e := range found {
		list[i] = linear.Entry{ID: e.ID, Name: e.Name, At: e.At, Line: e.Line}
	}
	return list, err
}
