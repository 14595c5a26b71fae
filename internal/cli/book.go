package cli

import (
	"context"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/internal/shop"
)

const bookUsage = "the book: a file, or postgres://user@host/database; without it the one of this user"

// bookCommand is everything about what is kept.
func (d *Deps) bookCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "book",
		Short: "What worked: cards, trials, readings, power sources, spools",
		Long: `The shop's record. Nothing in it is overwritten: a change is a new revision, a deletion a mark, and history shows
both. It is one file of this user, another one with --book FILE, or a PostgreSQL database that several booths share.`,
		Example: `  brazebooth book save --name "tank lid" --metal galvanized --gauge 20ga --feed 4.1 --travel 8
  brazebooth book find tank
  brazebooth book reading --power-source "booth 1" --feed 6.3 --stickout 12mm --amps 96 --volts 15.2`,
		Args: noCommand,
		RunE: func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	cmd.AddCommand(d.bookSave(), d.bookList(), d.bookFind(), d.bookShow(), d.bookHistory(), d.bookCompare(),
		d.bookRecompute(), d.bookEdit(), d.bookDelete(), d.bookRestore(), d.bookTrial(), d.bookReading(),
		d.bookSource(), d.bookSpool(), d.bookPerson(), d.bookExport(), d.bookImport(), d.bookMerge(), d.bookCheck(),
		d.bookBackup(), d.bookPrint(), d.bookProcedure())
	return cmd
}

// shop is the book that a command means, as who typed it uses it.
func (d *Deps) shop(cmd *cobra.Command) (*shop.Shop, error) {
	where, err := d.place(cmd)
	if err != nil {
		return nil, err
	}
	author := book.Author{Who: d.Who, Where: d.Where, Program: Version, Now: d.Now}
	return &shop.Shop{Where: where, Beside: d.Beside, Author: author, LookOnly: d.LookOnly, Remote: d.Remote,
		Fault: d.Fault}, nil
}

// withBook opens the book, to write or to read, and closes it after.
func (d *Deps) withBook(cmd *cobra.Command, writes bool, do func(ctx context.Context, b book.Book) error) error {
	s, err := d.shop(cmd)
	if err != nil {
		return err
	}
	return s.With(cmd.Context(), writes, func(b book.Book) error { return do(cmd.Context(), b) })
}

// act does something with the book and says what became of it.
func (d *Deps) act(cmd *cobra.Command, do func(*shop.Shop) (shop.Done, error)) error {
	s, err := d.shop(cmd)
	if err != nil {
		return err
	}
	done, err := do(s)
	if err != nil {
		return err
	}
	for _, text := range done.Remarks {
		remark(cmd, text)
	}
	if err := d.say("%s\n", done.Line()); err != nil {
		return err
	}
	return d.tellLines(done.Lines)
}

func (d *Deps) tellLines(lines []string) error {
	for _, line := range lines {
		if err := d.tell("%s\n", line); err != nil {
			return err
		}
	}
	return nil
}

// withCard opens the book and does something with the kept card that is meant.
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
		return "", wrong("a name or an id is wanted", "brazebooth book list shows them")
	}
	return name, nil
}

// tell is say for figures: with the decimal mark that was asked for.
func (d *Deps) tell(format string, args ...any) error {
	return d.say("%s", d.marked(fmt.Sprintf(format, args...)))
}

// marked is a text with the decimal mark that was asked for.
func (d *Deps) marked(text string) string {
	if d.comma {
		return quantity.Comma(text)
	}
	return text
}

func (d *Deps) say(format string, args ...any) error {
	_, err := fmt.Fprintf(d.Out, format, args...)
	return err
}

func (d *Deps) bookSave() *cobra.Command {
	var name, tags, note string
	cmd := &cobra.Command{
		Use: "save", Short: "Keep a card", Args: noArgs,
		Long:    "Keep a card with its job, figures, bands and reasons, under a name. Takes the flags of card.",
		Example: `  brazebooth book save --name "tank lid" --tags tank,seal --metal galvanized --gauge 20ga --feed 4.1 --travel 8`,
		RunE: func(cmd *cobra.Command, _ []string) error {
			job, err := d.jobWith(cmd)
			if err != nil {
				return err
			}
			card, err := d.solve(cmd.Context(), job)
			if err != nil {
				return err
			}
			c := book.Card{Name: name, Tags: strings.Split(tags, ","), Note: note}
			return d.act(cmd, func(s *shop.Shop) (shop.Done, error) { return s.SaveCard(cmd.Context(), c, &card) })
		},
	}
	bindAll(cmd)
	cmd.Flags().StringVar(&name, "name", "", "what it is called")
	cmd.Flags().StringVar(&tags, "tags", "", "words to find it by, with commas")
	cmd.Flags().StringVar(&note, "note", "", "anything worth knowing")
	return cmd
}

func (d *Deps) bookList() *cobra.Command {
	var asJSON, deleted bool
	var kind, text string
	var limit int
	cmd := &cobra.Command{
		Use: "list", Short: "What is in the book, newest first", Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			k, err := kindOf(kind)
			if err != nil {
				return err
			}
			if limit < 1 || limit > 100000 {
				return wrong("--limit: no such number", "type 1 to 100000")
			}
			return d.list(cmd, book.Query{Kind: k, Text: text, Deleted: deleted, Limit: limit}, asJSON)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "JSON")
	cmd.Flags().BoolVar(&deleted, "deleted", false, "what was deleted, too")
	cmd.Flags().StringVar(&kind, "kind", "", kindUsage+"; without it all")
	cmd.Flags().StringVar(&text, "text", "", "beginnings of words to find")
	cmd.Flags().IntVar(&limit, "limit", 50, "how many at most")
	return cmd
}

func (d *Deps) bookFind() *cobra.Command {
	cmd := &cobra.Command{Use: "find WORD ...", Short: "Find by the beginnings of words",
		Example: "  brazebooth book find tank galv"}
	asJSON := cmd.Flags().Bool("json", false, "JSON")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		name, err := nameOf(args)
		if err != nil {
			return err
		}
		return d.list(cmd, book.Query{Text: name}, *asJSON)
	}
	return cmd
}

func (d *Deps) list(cmd *cobra.Command, q book.Query, asJSON bool) error {
	return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
		list, err := b.List(ctx, q)
		if err != nil {
			return err
		}
		if asJSON {
			if list == nil {
				list = []book.Head{}
			}
			return d.encode(map[string]any{"schema": book.Schema, "version": Version, "records": list})
		}
		for _, h := range list {
			mark := " "
			if h.Deleted {
				mark = "x"
			}
			err := d.tell("%s %s %s %-8s %-24s %s\n", mark, h.ID, h.At[:16], h.Kind, plain.Line(h.Name, 24),
				plain.Line(h.Line, 60))
			if err != nil {
				return err
			}
		}
		if len(list) == 0 {
			return d.say("nothing found\n")
		}
		return nil
	})
}

func kindOf(text string) (book.Kind, error) {
	if text == "" {
		return "", nil
	}
	for _, k := range book.Kinds {
		if string(k) == strings.ToLower(text) {
			return k, nil
		}
	}
	return "", wrong("--kind: nothing of the kind "+quote(text)+" is kept", "type "+kindUsage)
}

// jobWith is the job of the flags with what the power source's readings taught.
func (d *Deps) jobWith(cmd *cobra.Command) (calc.Job, error) {
	job, err := jobOf(cmd)
	if err != nil {
		return job, err
	}
	r := rowCards{d: d, cmd: cmd, source: sourceFlag(cmd)}
	defer r.close()
	return r.taught(cmd.Context(), job, "")
}
