package cli

import (
	"cmp"
	"context"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/book"
	"brazebooth/internal/report"
	"brazebooth/internal/shop"
)

const bookUsage = "the book: a file, or postgres://user@host/database; without it your own"

// bookCommand has every command for the shop's record below it.
func (d *Deps) bookCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "book",
		Short: "What worked: cards, trials, readings, power sources, spools",
		Long: `The shop's record. Nothing in it is overwritten: a change is a new revision, a deletion a mark, and
history shows both. It is one file of this user, another one with --book FILE, or a PostgreSQL database that several
booths share.`,
		Example: `  brazebooth book save --name "tank lid" --metal galvanized --gauge 20ga --feed 4.1 --travel 8
  brazebooth book find tank
  brazebooth book reading --power-source "booth 1" --feed 6.3 --stickout 12mm --amps 96 --volts 15.2`,
		Args: noCommand,
		RunE: func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	cmd.AddCommand(d.bookSave(), d.bookList(), d.bookFind(), d.bookShow(), d.bookHistory(), d.bookCompare(),
		d.bookRecompute(), d.bookEdit(), d.bookDelete(), d.bookRestore(), d.bookTrial(), d.bookReading(), d.bookPull(),
		d.bookDials(),
		d.bookSource(), d.bookSpool(), d.bookPerson(), d.bookExport(), d.bookImport(), d.bookMerge(), d.bookCheck(),
		d.bookBackup(), d.bookPrint(), d.bookProcedure(), d.bookValidation())
	return cmd
}

// shop is the book of a command with the rights and the name of the user.
func (d *Deps) shop(cmd *cobra.Command) (*shop.Shop, error) {
	where, err := d.place(cmd)
	if err != nil {
		return nil, err
	}
	author := book.Author{Who: d.Who, Where: d.Where, Program: Version, Now: d.Now}
	return &shop.Shop{Where: where, Beside: d.Beside, Author: author, LookOnly: d.LookOnly, Remote: d.Remote,
		Fault: d.Fault}, nil
}

func (d *Deps) withBook(cmd *cobra.Command, writes bool, do func(ctx context.Context, b book.Book) error) error {
	s, err := d.shop(cmd)
	if err != nil {
		return err
	}
	return s.With(cmd.Context(), writes, func(b book.Book) error { return do(cmd.Context(), b) })
}

// doer does one thing with the book and returns what to print.
type doer = func(context.Context, *shop.Shop) (shop.Done, error)

// act does one thing with the book and prints the outcome.
func (d *Deps) act(cmd *cobra.Command, do doer) error {
	done, err := d.done(cmd, do)
	if err == nil {
		d.say("%s\n", done.Line())
		d.tellLines(done.Lines)
	}
	return err
}

// done does one thing with the book and prints its remarks to standard error.
func (d *Deps) done(cmd *cobra.Command, do doer) (done shop.Done, err error) {
	s, err := d.shop(cmd)
	if err != nil {
		return done, err
	}
	if done, err = do(cmd.Context(), s); err == nil {
		for _, text := range done.Remarks {
			remark(cmd, text)
		}
	}
	return done, err
}

func (d *Deps) tellLines(lines []string) {
	for _, line := range lines {
		d.tell("%s\n", line)
	}
}

// withCard opens the book and calls do with the kept card that the arguments name.
func (d *Deps) withCard(cmd *cobra.Command, args []string,
	do func(context.Context, book.Book, *book.Revision, *book.Card) error) error {
	name, err := nameOf(args)
	if err != nil {
		return err
	}
	return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
		r, c, err := shop.CardOf(ctx, b, name)
		if err != nil {
			return err
		}
		return do(ctx, b, &r, &c)
	})
}

// nameOf takes the words of a command line as one name.
func nameOf(args []string) (string, error) {
	name := strings.TrimSpace(strings.Join(args, " "))
	if name == "" {
		return "", wrong("this needs a name or an id", "brazebooth book list shows them")
	}
	return name, nil
}

func (d *Deps) bookSave() *cobra.Command {
	cmd := &cobra.Command{
		Use: "save", Short: "Keep a card", Args: noArgs,
		Long: "Keep a card with its job, figures, bands and reasons, under a name. Takes the flags of card.",
		Example: `  brazebooth book save --name "tank lid" --tags tank --metal galvanized --gauge 20ga --feed 4.1` +
			` --travel 8`,
		RunE: func(cmd *cobra.Command, _ []string) error {
			job, err := d.jobWith(cmd)
			if err != nil {
				return err
			}
			card, err := d.solve(cmd.Context(), job)
			if err != nil {
				return err
			}
			c := book.Card{Name: flagText(cmd, "name"), Tags: strings.Split(flagText(cmd, "tags"), ","),
				Note: flagText(cmd, "note")}
			return d.act(cmd, func(ctx context.Context, s *shop.Shop) (shop.Done, error) {
				return s.SaveCard(ctx, c, &card)
			})
		},
	}
	bindAll(cmd)
	bindNamed(cmd, "its name")
	return cmd
}

func bindNamed(cmd *cobra.Command, name string) {
	cmd.Flags().String("name", "", name)
	cmd.Flags().String("tags", "", "words to find it by, with commas")
	bindNote(cmd)
}

func (d *Deps) bookList() *cobra.Command {
	var q book.Query
	cmd := withJSON(&cobra.Command{
		Use: "list", Short: "What is in the book, newest first", Args: noArgs,
		Example: "  brazebooth book list --kind card\n  brazebooth book list --deleted",
		RunE: func(cmd *cobra.Command, _ []string) (err error) {
			if q.Kind, err = kindOf(cmd); err != nil {
				return err
			}
			if q.Limit < 1 || q.Limit > 100000 {
				return wrong("--limit: out of range", "type 1 to 100000")
			}
			return d.list(cmd, q)
		},
	})
	cmd.Flags().BoolVar(&q.Deleted, "deleted", false, "also deleted records")
	cmd.Flags().String("kind", "", kindUsage+"; without it all")
	cmd.Flags().StringVar(&q.Text, "text", "", "beginnings of words to find")
	cmd.Flags().IntVar(&q.Limit, "limit", 50, "how many at most")
	return cmd
}

func (d *Deps) bookFind() *cobra.Command {
	return withJSON(&cobra.Command{
		Use: "find WORD ...", Short: "Find by the beginnings of words", Example: "  brazebooth book find tank galv",
		RunE: func(cmd *cobra.Command, args []string) error {
			name, err := nameOf(args)
			if err != nil {
				return err
			}
			return d.list(cmd, book.Query{Text: name})
		},
	})
}

func (d *Deps) list(cmd *cobra.Command, q book.Query) error {
	return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
		list, err := b.List(ctx, q)
		if err != nil {
			return err
		}
		if asJSON(cmd) {
			return d.document(book.Schema, map[string]any{"records": report.OrEmpty(list)})
		}
		entries := shop.Listed(ctx, b, list, "")
		for i := range entries {
			if list[i].Deleted {
				entries[i].Line = strings.TrimSuffix("deleted, "+entries[i].Line, ", ")
			}
		}
		d.tell("%s", listing(entries, d.columns()))
		if len(list) == 0 {
			d.say("nothing found; brazebooth book list shows what is there\n")
		}
		return nil
	})
}

// place is where the book of a command is: a file or a server's address.
func (d *Deps) place(cmd *cobra.Command) (string, error) {
	where := cmp.Or(flagText(cmd, "book"), d.Book)
	switch {
	case d.Remote && flagText(cmd, "book") != "":
		return "", wrong("no other book can be named here", "leave --book out: the server has one book for all")
	case where == "":
		return "", d.bookless()
	case where == hidden:
		where = d.hidden
	}
	err := shop.PlaceError(where)
	if err != nil && d.Remote {
		return "", shop.Unusable(err)
	}
	return where, err
}

// bookless is the error for a machine without a place for a book; its hint says how to get one.
func (d *Deps) bookless() error {
	if d.Remote {
		return wrong("the server has no book", "ask who runs it to start it with one: brazebooth serve --book FILE")
	}
	return wrong("no folder for a book was found",
		"name a book: --book FILE, or BRAZEBOOTH_BOOK; or set XDG_DATA_HOME, or HOME, to a folder that is there")
}

// placeOrNone is place, but "" instead of an error where there is no book, for commands that also work without one.
func (d *Deps) placeOrNone(cmd *cobra.Command) (string, error) {
	if d.Book == "" && flagText(cmd, "book") == "" {
		return "", nil
	}
	return d.place(cmd)
}
