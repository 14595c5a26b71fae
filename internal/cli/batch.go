package cli

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/batch"
	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
)

func (d *Deps) batchCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "batch FILE",
		Short: "Cards for many jobs: a CSV table or JSON lines in, the same with the answers out",
		Long: `A card for each row of FILE, in the order of the rows and on all cores; - is standard input. Columns, or
the keys of JSON lines, are named like the flags of card, and their cells hold the values that those flags take;
power-source is one of them; id, name, note and the columns of --carry are copied to the answer. An empty cell is a flag
that is not given, and is assumed as card does it; but every row needs its metal and its gauge or thickness. A row has
at most a megabyte, 400 columns besides those of --carry, and 400 letters for each choice.

CSV comes back with its own columns, then error, verdict, stop (in full), cautions and assumed (by name), then value,
low and high of every figure, always metric, with a point. Its columns may be separated by semicolons, as spreadsheets
write them where the comma is the decimal mark; the answer then has semicolons too. Each answer to a JSON line is the
card's JSON (docs/schema.json) on one line, with the row as it was under "input".

The first row that cannot be answered ends the batch: the message says in which line it is and what to type instead; the
rows before it are written. With --keep-going the answer has such a row with the reason in the column error, and the
batch continues; it then exits with 1, since not every row is answered. --out writes row by row into a file; after a
stop --resume continues after its last whole row, once it has checked that the rows there are those of FILE. Nothing is
overwritten.`,
		Example: `  brazebooth batch jobs.csv > cards.csv
  brazebooth batch jobs.jsonl --out cards.jsonl --keep-going
  brazebooth batch jobs.csv --out cards.csv --resume
  printf 'metal,gauge\nmild-steel,18ga\ngalvanized,20ga\n' | brazebooth batch - --format csv`,
		Args: oneArg("a file, or - for standard input", "brazebooth batch jobs.csv"),
		RunE: func(cmd *cobra.Command, args []string) error { return d.batch(cmd, args[0]) },
	}
	cmd.Flags().String("format", "", "csv or jsonl; without it the ending of FILE decides")
	cmd.Flags().String("out", "", "write the answers into this new file instead of standard output")
	cmd.Flags().String("carry", "", "more columns to copy to the answer: part,customer")
	cmd.Flags().Bool("keep-going", false, "continue after a row that cannot be answered; the exit code is then 1")
	cmd.Flags().Bool("resume", false, "continue after the last whole row of --out")
	bindSource(cmd)
	return cmd
}

func (d *Deps) batch(cmd *cobra.Command, name string) error {
	format, err := formatOf(flagText(cmd, "format"), name)
	if err != nil {
		return err
	}
	out := flagText(cmd, "out")
	if out == "-" {
		out = ""
	}
	if flagOn(cmd, "resume") && out == "" {
		return wrong("--resume without a file to go on with", "name it: --out cards.csv --resume")
	}
	in, done, err := d.readFrom(name, "name a file with one job on each line, or - for standard input")
	if err != nil {
		return err
	}
	defer done()
	cards := rowCards{d: d, cmd: cmd}
	defer cards.close()
	workers := runtime.GOMAXPROCS(0)
	if d.Remote {
		workers = 1 // other users share the machine
	}
	bar := newBar(d, in)
	o := batch.Options{Format: format, KeepGoing: flagOn(cmd, "keep-going"), Workers: workers, Version: Version,
		Carry: strings.Split(flagText(cmd, "carry"), ","), Solve: cards.solve, Done: bar.show,
		Explain: func(err error) (string, string) {
			what, hint, _ := d.explained(err)
			return what, cmp.Or(hint, "see brazebooth card --help")
		},
		Bad: func(m *mistake.Error) {
			bar.clear()
			d.note("brazebooth: %s\n  %s\n", m.What, m.Hint)
		}}
	tally, err := d.runBatch(cmd.Context(), bar, out, flagOn(cmd, "resume"), o)
	bar.clear()
	return d.batchEnd(cmd.Context(), tally, err, out)
}

// runBatch writes the answers to standard output, into a new file, or after the rows that a file already has.
func (d *Deps) runBatch(ctx context.Context, in io.Reader, file string, resume bool, o batch.Options) (batch.Tally,
	error) {
	if !resume {
		out, done, err := d.rows(cmp.Or(file, "-"))
		if err != nil {
			return batch.Tally{}, err
		}
		t, err := batch.Run(ctx, in, out, o)
		return t, errors.Join(err, done())
	}
	f, err := d.openFile(file, os.O_RDWR|os.O_CREATE, "name the file of the batch that was stopped")
	if err != nil {
		return batch.Tally{}, err
	}
	t, err := batch.Resume(ctx, in, f, o)
	return t, errors.Join(err, f.Sync(), f.Close())
}

// batchEnd reports how a batch ended.
func (d *Deps) batchEnd(ctx context.Context, t batch.Tally, err error, file string) error {
	written := t.Kept + t.Answered + t.Bad
	resume := fmt.Sprintf("rows written before it: %d; mend it and go on with --resume", written)
	switch m := mistake.Of(err); {
	case ctx.Err() != nil && file != "":
		return failed(fmt.Sprintf("cancelled after %d rows", written), "go on after them with --resume", ctx.Err())
	case ctx.Err() != nil:
		return fmt.Errorf("cancelled after %d rows", written)
	case m != nil && file != "" && written > 0:
		return wrong(m.What, m.Hint+"; "+resume)
	case errors.Is(err, batch.ErrOther):
		return wrong(plain.Line(err.Error(), 200),
			"name the file that this input's answers went into, or another one without --resume")
	case err != nil && m == nil && file != "":
		return failed(plain.Line(err.Error(), 200), resume, err)
	case err != nil:
		return err
	}
	said := fmt.Sprintf("%d rows answered, %d not", t.Answered, t.Bad)
	if t.Kept > 0 {
		said += fmt.Sprintf("; %d already there", t.Kept)
	}
	if t.Bad > 0 {
		return errors.New(said) // every row is written, but some of them only with their error
	}
	if t.Kept > 0 {
		d.note("%s\n", said)
	}
	return nil
}

func formatOf(text, file string) (batch.Format, error) {
	switch strings.ToLower(cmp.Or(text, strings.TrimPrefix(filepath.Ext(file), "."))) {
	case "csv", "tsv":
		return batch.CSV, nil
	case "jsonl", "ndjson", "json":
		return batch.JSONLines, nil
	}
	return "", wrong("the name "+quote(file)+" does not say whether it is CSV or JSON lines",
		"type --format csv or --format jsonl")
}
