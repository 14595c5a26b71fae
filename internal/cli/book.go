package cli

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
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
	cmd.AddCommand(d.bookSave(), d.bookList(), d.bookFind(), d.bookShow(), d.bookHistory(), d.bookCompare(), d.bookRecompute(), d.bookEdit(), d.bookDelete(), d.bookRestore(),
		d.bookTrial(), d.bookReading(), d.bookSource(), d.bookSpool(), d.bookPerson(), d.bookExport(), d.bookImport(), d.bookMerge(), d.bookCheck(), d.bookBackup(), d.bookPrint(), d.bookProcedure())
	return cmd
}

// ErrLookOnly is said to who may not change the book.
var ErrLookOnly = wrong("this key may look, not keep", "ask who runs the server to put it among the writers")

// ToldBeside says what was kept beside a book whose server is away; who sits at another machine is told no path of this one.
func ToldBeside(kept string, remote bool) string {
	if remote {
		return "the database of the book does not answer: kept beside it on the server; who runs the server merges it when the database is back"
	}
	return plain.Line(book.Told(kept), 400)
}

// withBook opens the book, to write or to read, and closes it after.
func (d *Deps) withBook(cmd *cobra.Command, writes bool, do func(ctx context.Context, b book.Book) error) error {
	b, err := d.openBook(cmd, writes)
	if err != nil {
		return err
	}
	err = do(cmd.Context(), b)
	return bookError(errors.Join(err, b.Close()))
}

// openBook opens the book, to write or to read.
func (d *Deps) openBook(cmd *cobra.Command, writes bool) (book.Book, error) {
	where, err := d.place(cmd)
	if err != nil {
		return nil, err
	}
	open := book.Read
	if writes && d.LookOnly {
		return nil, ErrLookOnly
	}
	if writes {
		open = book.Open
	}
	b, err := open(cmd.Context(), where)
	if errors.Is(err, book.ErrNone) {
		return nil, d.noBook(where)
	}
	return b, bookError(err)
}

// put keeps new records whole: in the book, or beside it while its server is away. It reports whether the book has them.
func (d *Deps) put(cmd *cobra.Command, list ...book.Revision) (inBook bool, err error) {
	if d.LookOnly {
		return false, ErrLookOnly
	}
	where, err := d.place(cmd)
	if err != nil {
		return false, err
	}
	kept, err := book.SaveOr(cmd.Context(), where, d.Beside, list...)
	if err != nil {
		return false, bookError(err)
	}
	if kept != "" {
		_, _ = fmt.Fprintln(d.Err, ToldBeside(kept, d.Remote))
	}
	return kept == "", nil
}

// keep makes a new record and puts it, behind what has to be there first.
func (d *Deps) keep(cmd *cobra.Command, kind book.Kind, body any, what string, first ...book.Revision) (inBook bool, err error) {
	r, err := d.author().New(kind, body)
	if err != nil {
		return false, err
	}
	if inBook, err = d.put(cmd, append(first, r)...); err != nil {
		return false, err
	}
	return inBook, d.say("saved %s %s\n", r.ID, plain.Line(what, 200))
}

// afterwards looks into the book for what is said beside something that was kept just now. That is kept whatever comes of the
// look: an end that was asked for meanwhile, or a book that cannot be read, is no failure of the command, or who reads its exit
// code would keep it twice.
func (d *Deps) afterwards(cmd *cobra.Command, look func() error) error {
	out := d.Out
	var more bytes.Buffer
	d.Out = &more
	failed := look()
	d.Out = out
	if err := d.say("%s", more.String()); err != nil {
		return err
	}
	if failed != nil && cmd.Context().Err() == nil {
		remark(cmd, "it is kept; the book could not be read again to say more about it")
	}
	return nil
}

// author is who saves.
func (d *Deps) author() book.Author {
	return book.Author{Who: d.Who, Where: d.Where, Program: Version, Now: d.Now}
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
			if strings.TrimSpace(plain.Line(name, 100)) == "" {
				return wrong("a card without a name", `type --name "tank lid"`)
			}
			card, err := d.solve(cmd.Context(), job)
			if err != nil {
				return err
			}
			kept := book.Card{Name: name, Tags: strings.Split(tags, ","), Note: note, Job: job, Card: book.Keep(&card)}
			kept.Clean()
			inBook, err := d.keep(cmd, book.CardKind, kept, kept.Name)
			if err != nil {
				return err
			}
			if inBook {
				if err := d.afterwards(cmd, func() error { return d.sayNamesakes(cmd, kept.Name) }); err != nil {
					return err
				}
			}
			return d.sayStops(kept.Card.Warns)
		},
	}
	bindAll(cmd)
	cmd.Flags().StringVar(&name, "name", "", "what it is called")
	cmd.Flags().StringVar(&tags, "tags", "", "words to find it by, with commas")
	cmd.Flags().StringVar(&note, "note", "", "anything worth knowing")
	return cmd
}

// sayNamesakes says where a card went, and how many of its name are there.
func (d *Deps) sayNamesakes(cmd *cobra.Command, name string) error {
	return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
		same, err := b.List(ctx, book.Query{Kind: book.CardKind, Text: name, Limit: 500})
		if err != nil {
			return err
		}
		n := 0
		for _, h := range same {
			if strings.EqualFold(h.Name, name) {
				n++
			}
		}
		if err := d.say("in %s\n", d.shown(b.Where())); err != nil || n < 2 {
			return err
		}
		return d.say("there are %d cards of that name now: they are told apart by their ids\n", n)
	})
}

// sayStops prints the stops among warnings.
func (d *Deps) sayStops(list []calc.Warning) error {
	for _, w := range calc.Stops(list) {
		if err := d.tell("STOP  %s\n", w.Text); err != nil {
			return err
		}
	}
	return nil
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
	var asJSON bool
	cmd := &cobra.Command{
		Use: "find WORD ...", Short: "Find by the beginnings of words", Example: "  brazebooth book find tank galv",
		RunE: func(cmd *cobra.Command, args []string) error {
			name, err := nameOf(args)
			if err != nil {
				return err
			}
			return d.list(cmd, book.Query{Text: name}, asJSON)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "JSON")
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
			if err := d.tell("%s %s %s %-8s %-24s %s\n", mark, h.ID, h.At[:16], h.Kind, plain.Line(h.Name, 24), plain.Line(h.Line, 60)); err != nil {
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
	return "", wrong("--kind: nothing of the kind "+quote(text)+" is kept", "type card, trial, reading, source, spool, person or practice")
}

// jobWith is the job of the flags with what the named power source's readings taught. One that is set once and for all and
// cannot be had is left out, and said: it is none of what was asked now.
func (d *Deps) jobWith(cmd *cobra.Command) (calc.Job, error) {
	job, err := jobOf(cmd)
	if err != nil {
		return job, err
	}
	source := sourceFlag(cmd)
	if source == "" {
		return job, nil
	}
	taught := job
	err = d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
		taught, err = book.Calibrate(ctx, b, job, source)
		return err
	})
	if err != nil && d.leftOut(cmd, source, err) {
		return job, nil
	}
	return taught, err
}

// leftOut says of a power source that is set, and not named on the command line, why an answer does without it.
func (d *Deps) leftOut(cmd *cobra.Command, source string, err error) bool {
	m := mistake.Of(err)
	if cmd.Flags().Changed("power-source") || cmd.Context().Err() != nil || m != nil && m.Field != "" { // the job itself is wrong
		return false
	}
	what, _, _ := d.explained(err)
	remark(cmd, "without the power source that is set, "+quote(source)+": "+what+"; see brazebooth config show")
	return true
}
