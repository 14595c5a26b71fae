package cli

import (
	"github.com/spf13/cobra"

	"brazebooth/internal/shop"
)

// place is the book that is meant.
func (d *Deps) place(cmd *cobra.Command) (string, error) {
	where := flagText(cmd, "book")
	switch {
	case d.Remote && where != "":
		return "", wrong("no other book can be named here", "leave --book out: the server has one book for all")
	case where == "" && d.Book == "":
		return "", d.bookless()
	case where == hidden:
		where = d.hidden
	case where == "":
		where = d.Book
	}
	err := shop.PlaceError(where)
	if err != nil && d.Remote {
		return "", shop.Unusable(err)
	}
	return where, err
}

// bookless says that there is no place for a book, and how to get one.
func (d *Deps) bookless() error {
	if d.Remote {
		return wrong("the server has no book", "ask who runs it to start it with one: brazebooth serve --book FILE")
	}
	return wrong("no folder for a book was found",
		"name a book: --book FILE, or BRAZEBOOTH_BOOK; or set XDG_DATA_HOME, or HOME, to a folder that is there")
}

// placeOrNone is the book that is meant, "" where there is none: what can do without one says so itself.
func (d *Deps) placeOrNone(cmd *cobra.Command) (string, error) {
	if d.Book == "" && flagText(cmd, "book") == "" {
		return "", nil
	}
	return d.place(cmd)
}
