package cli

import (
	"github.com/spf13/cobra"

	"brazebooth/internal/shop"
)

// place is the book that is meant.
func (d *Deps) place(cmd *cobra.Command) (string, error) {
	where, err := cmd.Flags().GetString("book")
	if d.Remote && where != "" {
		return "", wrong("no other book can be named here", "leave --book out: the server has one book for all")
	}
	if err != nil || where == "" {
		where = d.Book
	}
	if where == hidden {
		where = d.hidden
	}
	if where == "" {
		return "", d.bookless()
	}
	if err = shop.PlaceError(where); err != nil && d.Remote {
		return "", shop.Unusable(err)
	}
	return where, err
}

// bookless says that there is no place for a book, and how to get one.
func (d *Deps) bookless() error {
	if d.Remote {
		return wrong("the server has no book", "ask who runs it to start it with one: brazebooth serve --book FILE")
	}
	return wrong("no folder for a book was found", "name a book: --book FILE, or BRAZEBOOTH_BOOK; or set XDG_DATA_HOME, or HOME, to a folder that is there")
}

// placeOrNone is the book that is meant, "" where there is none: what can do without one says so itself.
func (d *Deps) placeOrNone(cmd *cobra.Command) (string, error) {
	where, err := d.place(cmd)
	if named, _ := cmd.Flags().GetString("book"); err != nil && named == "" && d.Book == "" {
		return "", nil
	}
	return where, err
}
