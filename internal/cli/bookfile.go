package cli

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/book"
	"brazebooth/internal/crew"
	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/internal/shop"
)

func (d *Deps) bookExport() *cobra.Command {
	cmd := &cobra.Command{
		Use: "export FILE", Short: "Every revision as JSON lines, or the cards as CSV; - is standard output",
		Args:    oneArg("a file, or -", "brazebooth book export book.jsonl"),
		Example: "  brazebooth book export book.jsonl\n  brazebooth book export cards.csv --csv",
		RunE: func(cmd *cobra.Command, args []string) error {
			write := book.Export
			if flagOn(cmd, "csv") {
				write = book.ExportCards
			}
			return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
				var n int
				var unread error // the readable part of a damaged book is still written
				err := d.write(args[0], 0o600, func(w io.Writer) (err error) {
					out := &outlet{w: w}
					if n, err = write(ctx, b, out); out.err == nil && ctx.Err() == nil {
						unread, err = err, nil
					}
					return err
				})
				if err != nil {
					return err
				}
				d.note("%d written to %s\n", n, plain.Line(args[0], 200))
				return d.sayMissing(unread, keepDamaged)
			})
		},
	}
	cmd.Flags().Bool("csv", false, "the present cards as CSV, formulas escaped")
	return cmd
}

// Hints: what to do with a damaged book.
const (
	keepDamaged = "what could be read is there; keep the damaged book as it is; brazebooth book check says what is " +
		"wrong with it"
	useInstead = "keep the damaged book as it is; when no program has it open, move its file away with those beside " +
		"it that end in -wal and -shm, and put the copy in its place"
	importAgain = "import the file again: what is there already stays once"
)

// sayMissing prints what could not be read of a damaged book and returns that as an error. A guest sees no path of this
// machine.
func (d *Deps) sayMissing(err error, hint string) error {
	lost, ok := errors.AsType[*book.Missing](err)
	if !ok {
		return err
	}
	d.sayLines(lost.Lines, lost.N)
	what := strings.ReplaceAll(lost.Error(), lost.Place, shop.Shown(lost.Place, d.Remote))
	return failed(plain.Line(what, 300), hint, err)
}

// sayLines prints lines about left-out revisions, and how many more of the n there are.
func (d *Deps) sayLines(lines []string, n int) {
	for _, line := range lines {
		d.note("%s\n", plain.Line(line, 300))
	}
	if more := n - len(lines); more > 0 {
		d.note("and %d more\n", more)
	}
}

func (d *Deps) bookImport() *cobra.Command {
	return &cobra.Command{
		Use:     "import FILE",
		Short:   "Add the records of an export; what is there already is not doubled; - is standard input",
		Args:    oneArg("a file, or -", "brazebooth book import book.jsonl"),
		Example: "  brazebooth book import book.jsonl",
		RunE: func(cmd *cobra.Command, args []string) error {
			in, done, err := d.readFrom(args[0], "name the file of an export")
			if err != nil {
				return err
			}
			defer done()
			return d.withBook(cmd, true, func(ctx context.Context, b book.Book) error {
				n, err := book.Import(ctx, b, crew.Reader(ctx, in))
				return d.imported(ctx, quantity.Count(n, "revision"), err)
			})
		},
	}
}

// imported reports how an import ended: how many revisions were read and which lines were left out.
func (d *Deps) imported(ctx context.Context, revisions string, err error) error {
	var out *book.LeftOut
	switch {
	case ctx.Err() != nil:
		return failed("cancelled: "+revisions+" before that in the book", importAgain, ctx.Err())
	case errors.As(err, &out):
		d.sayLines(out.Lines, len(out.Lines))
		what := out.Error() + ", " + revisions + " read"
		if out.More {
			what += "; the rest was not looked at"
		}
		return failed(what, "mend these lines, or name the file of an export; then "+importAgain, out)
	case err != nil:
		return failed(plain.Line(err.Error(), 200), revisions+" in the book; mend what is wrong and "+importAgain, err)
	}
	d.say("%s read\n", revisions)
	return nil
}

func (d *Deps) bookMerge() *cobra.Command {
	return &cobra.Command{
		Use: "merge OTHER", Short: "Add another book whole; a record that both have is kept once, with both histories",
		Args: oneArg("another book", "brazebooth book merge other.db"), Example: "  brazebooth book merge other.db",
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := d.wholeFile(args[0]); err != nil {
				return err
			}
			other, err := book.Read(cmd.Context(), args[0])
			if err != nil {
				return wrong(plain.Line(strings.TrimPrefix(err.Error(), book.ErrNone.Error()+": "), 200),
					"name another book: a file, or postgres://user@host/database")
			}
			defer other.Close()
			return d.withBook(cmd, true, func(ctx context.Context, b book.Book) error {
				n, err := book.Merge(ctx, b, other)
				if _, lost := errors.AsType[*book.Missing](err); err != nil && !lost {
					return err
				}
				d.say("%s of %s in %s\n", quantity.Count(n, "revision"), plain.Line(other.Where(), 200),
					plain.Line(b.Where(), 200))
				return d.sayMissing(err, keepDamaged)
			})
		},
	}
}

func (d *Deps) bookCheck() *cobra.Command {
	return &cobra.Command{
		Use: "check", Short: "Read the whole book and say what is wrong with it", Args: noArgs,
		Example: "  brazebooth book check",
		RunE: func(cmd *cobra.Command, _ []string) error {
			return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
				faults, n, err := b.Check(ctx)
				if err = cmp.Or(err, ctx.Err()); err != nil { // an unread revision is not a fault
					return err
				}
				for _, f := range faults {
					d.say("%s\n", plain.Line(f, 300))
				}
				if len(faults) > 0 {
					return fmt.Errorf("%s in %s: keep a copy of the file and of those beside it as they are; then "+
						"brazebooth book backup NEW.db makes a sound book of what can be read",
						quantity.Count(len(faults), "fault"), quantity.Count(n, "revision"))
				}
				d.say("%s, nothing wrong\n", quantity.Count(n, "revision"))
				return nil
			})
		},
	}
}

func (d *Deps) bookBackup() *cobra.Command {
	return &cobra.Command{
		Use: "backup FILE", Short: "A copy of the book in a file that is not there yet",
		Args: oneArg("a file", "brazebooth book backup copy.db"), Example: "  brazebooth book backup copy.db",
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := errors.Join(d.wholeFile(args[0]), d.free(args[0])); err != nil {
				return err
			}
			return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
				err := b.Backup(ctx, args[0])
				if _, lost := errors.AsType[*book.Missing](err); err != nil && !lost {
					return uncopied(args[0], err)
				}
				d.say("copied to %s\n", plain.Line(args[0], 200))
				return d.sayMissing(err, useInstead)
			})
		},
	}
}

func uncopied(file string, err error) error {
	if err = unmade(err); mistake.Of(err) != nil {
		return err
	}
	return failed("no copy in "+plain.Line(file, 200)+": "+plain.Line(err.Error(), 200),
		"make room on that disk, or name a file on another; brazebooth book check says whether the book is sound", err)
}
