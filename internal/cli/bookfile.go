package cli

import (
	"context"
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"brazebooth/internal/book"
	"brazebooth/internal/crew"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

func (d *Deps) bookExport() *cobra.Command {
	var asCSV bool
	cmd := &cobra.Command{
		Use: "export FILE", Short: "Every revision as JSON lines, or the cards as CSV; - is standard output", Args: oneArg("a file, or -", "brazebooth book export book.jsonl"),
		RunE: func(cmd *cobra.Command, args []string) error {
			return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
				write := book.Export
				if asCSV {
					write = book.ExportCards
				}
				var n int
				var unread error // of a damaged book what can be read is kept
				err := d.write(args[0], 0o600, func(w io.Writer) (err error) {
					out := &noted{w: w}
					n, err = write(ctx, b, out)
					if err == nil || out.err != nil || ctx.Err() != nil {
						return err
					}
					unread = err
					return nil
				})
				if err = errors.Join(err, unread); err != nil {
					return err
				}
				_, err = fmt.Fprintf(d.Err, "%d written\n", n)
				return err
			})
		},
	}
	cmd.Flags().BoolVar(&asCSV, "csv", false, "the present cards as CSV, formulas escaped")
	return cmd
}

// noted keeps what went wrong with the writing, to tell it from the reading.
type noted struct {
	w   io.Writer
	err error
}

func (n *noted) Write(p []byte) (int, error) {
	written, err := n.w.Write(p)
	if err != nil {
		n.err = err
	}
	return written, err
}

func (d *Deps) bookImport() *cobra.Command {
	return &cobra.Command{
		Use: "import FILE", Short: "Take in an export: what is there already stays once; - is standard input", Args: oneArg("a file, or -", "brazebooth book import book.jsonl"),
		RunE: func(cmd *cobra.Command, args []string) error {
			in, done, err := d.readFrom(args[0], "name the file of an export")
			if err != nil {
				return err
			}
			defer done()
			return d.withBook(cmd, true, func(ctx context.Context, b book.Book) error {
				n, err := book.Import(ctx, b, crew.Reader(ctx, in))
				if ctx.Err() != nil {
					return &failure{"cancelled: " + quantity.Count(n, "revision") + " before that in the book", "import the file again: what is there already stays once", ctx.Err()}
				}
				if err != nil {
					return wrong(plain.Line(err.Error(), 200), quantity.Count(n, "revision")+" before that in the book; mend the file and import it again")
				}
				return d.say("%s read\n", quantity.Count(n, "revision"))
			})
		},
	}
}

func (d *Deps) bookMerge() *cobra.Command {
	return &cobra.Command{
		Use: "merge OTHER", Short: "Take in another book whole; the same record once, both histories kept", Args: oneArg("another book", "brazebooth book merge other.db"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := d.wholeFile(args[0]); err != nil {
				return err
			}
			other, err := book.Read(cmd.Context(), args[0])
			if err != nil {
				return wrong(plain.Line(err.Error(), 200), "name another book: a file, or postgres://user@host/database")
			}
			defer other.Close()
			return d.withBook(cmd, true, func(ctx context.Context, b book.Book) error {
				n, err := book.Merge(ctx, b, other)
				if err != nil {
					return err
				}
				return d.say("%s of %s in %s\n", quantity.Count(n, "revision"), plain.Line(other.Where(), 200), plain.Line(b.Where(), 200))
			})
		},
	}
}

func (d *Deps) bookCheck() *cobra.Command {
	return &cobra.Command{
		Use: "check", Short: "Read the whole book and say what is wrong with it", Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
				faults, n, err := b.Check(ctx)
				if err != nil {
					return err
				}
				for _, f := range faults {
					if err := d.say("%s\n", plain.Line(f, 300)); err != nil {
						return err
					}
				}
				if len(faults) > 0 {
					return fmt.Errorf("%s in %s: keep a copy of the file as it is, and export what can be read", quantity.Count(len(faults), "fault"), quantity.Count(n, "revision"))
				}
				return d.say("%s, nothing wrong\n", quantity.Count(n, "revision"))
			})
		},
	}
}

func (d *Deps) bookBackup() *cobra.Command {
	return &cobra.Command{
		Use: "backup FILE", Short: "A copy of the book in a file that is not there yet", Args: oneArg("a file", "brazebooth book backup copy.db"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := errors.Join(d.wholeFile(args[0]), d.free(args[0])); err != nil {
				return err
			}
			return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
				if err := b.Backup(ctx, args[0]); err != nil {
					return uncopied(args[0], err)
				}
				return d.say("copied to %s\n", plain.Line(args[0], 200))
			})
		},
	}
}

// uncopied says of a copy that was not made what to do.
func uncopied(file string, err error) error {
	var use *usageError
	if err = unmade(err); errors.As(err, &use) {
		return err
	}
	return &failure{"no copy in " + plain.Line(file, 200) + ": " + plain.Line(err.Error(), 200), "make room on that disk, or name a file on another; brazebooth book check says whether the book itself is sound", err}
}
