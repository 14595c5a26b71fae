package cli

import (
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

// batchWanted is how a batch is wanted.
type batchWanted struct {
	format, out, carry string
	keepGoing, resume  bool
}

func (d *Deps) batchCommand() *cobra.Command {
	var w batchWanted
	cmd := &cobra.Command{
		Use:   "batch FILE",
		Short: "Cards for many jobs: a CSV table or JSON lines in, the same with the answers out",
		Long: `A card for each row of FILE, in the rows' order and on all cores; - is standard input. Columns, or the keys of JSON
lines, are named like the flags of card, and their cells hold what those flags take; power-source is one of them; id, name
and note, and what --carry names, are carried along. An empty cell is a flag that is not given, and
what is not given is assumed as card does; but every row needs its metal and its gauge or thickness. A row has at most a
megabyte, 400 columns beside those of --carry, and 400 letters for each choice.

CSV comes back with its own columns, then error, verdict, stop (in full), cautions and assumed (by name), then value, low and
high of every figure, always metric, with a point. Its columns may be parted by semicolons, as spreadsheets write them where the comma is
the decimal mark; they then are in the answer too. Of JSON lines each answer is the card's JSON (docs/schema.json) on one line,
with the row as it was under "input".

The first row that cannot be answered ends the batch with its line and what to type instead; the rows before it are written.
With --keep-going such rows stand in the answer with the reason in the column error, and the batch goes on; it then exits
with 1, since not every row is answered.
--out writes row by row into a file; after a stop --resume goes on behind the last whole row of it, once all its rows were
found to be those of FILE. Nothing is overwritten.`,
		Example: `  brazebooth batch jobs.csv > cards.csv
  brazebooth batch jobs.jsonl --out cards.jsonl --keep-going
  brazebooth batch jobs.csv --out cards.csv --resume
  printf 'metal,gauge\nmild-steel,18ga\ngalvanized,20ga\n' | brazebooth batch - --format csv`,
		Args: oneArg("a file, or - for standard input", "brazebooth batch jobs.csv"),
		RunE: func(cmd *cobra.Command, args []string) error { return d.batch(cmd, args[0], &w) },
	}
	cmd.Flags().StringVar(&w.format, "format", "", "csv or jsonl; without it what FILE's ending says")
	cmd.Flags().StringVar(&w.out, "out", "", "write the answers into this new file instead of standard output")
	cmd.Flags().StringVar(&w.carry, "carry", "", "more columns that are only carried along: part,customer")
	cmd.Flags().BoolVar(&w.keepGoing, "keep-going", false, "a row that cannot be answered does not end the batch; the exit code is 1 then")
	cmd.Flags().BoolVar(&w.resume, "resume", false, "go on behind the last whole row of --out")
	bindSource(cmd)
	return cmd
}

func (d *Deps) batch(cmd *cobra.Command, name string, w *batchWanted) error {
	format, err := formatOf(w.format, name)
	if err != nil {
		return err
	}
	if w.resume && (w.out == "" || w.out == "-") {
		return wrong("--resume without a file to go on with", "name it: --out cards.csv --resume")
	}
	in, done, err := d.readFrom(name, "name a file with one job on each line, or - for standard input")
	if err != nil {
		return err
	}
	defer done()
	size, err := sizeOf(in)
	if err != nil {
		return err
	}
	cards := rowCards{d: d, cmd: cmd, source: sourceFlag(cmd)}
	defer cards.close()
	workers := runtime.GOMAXPROCS(0)
	if d.Remote {
		workers = 1 // the others there want to work too
	}
	bar := newBar(d, in, size)
	o := batch.Options{Format: format, Carry: carryOf(w.carry), KeepGoing: w.keepGoing, Workers: workers, Version: Version,
		Solve: cards.solve, Explain: d.explainRow, Done: bar.show,
		Bad: func(f *batch.Fault) { bar.clear(); d.sayFault(f) }}
	tally, err := d.runBatch(cmd.Context(), bar, w, o)
	bar.clear()
	return d.batchEnd(cmd.Context(), tally, err, w)
}

// runBatch answers onto standard output, into a new file, or behind what a file has.
func (d *Deps) runBatch(ctx context.Context, in io.Reader, w *batchWanted, o batch.Options) (batch.Tally, error) {
	if !w.resume {
		name := w.out
		if name == "" {
			name = "-"
		}
		out, done, err := d.rows(name)
		if err != nil {
			return batch.Tally{}, err
		}
		t, err := batch.Run(ctx, in, out, o)
		return t, errors.Join(err, done())
	}
	f, err := d.oldRows(w.out)
	if err != nil {
		return batch.Tally{}, err
	}
	t, err := batch.Resume(ctx, in, f, o)
	return t, errors.Join(err, f.Sync(), f.Close())
}

// batchEnd says how a batch ended.
func (d *Deps) batchEnd(ctx context.Context, t batch.Tally, err error, w *batchWanted) error {
	var fault *batch.Fault
	switch {
	case ctx.Err() != nil && w.out != "" && w.out != "-":
		return failed(fmt.Sprintf("cancelled behind %d rows", t.Kept+t.Answered+t.Bad), "go on behind them with --resume", ctx.Err())
	case ctx.Err() != nil:
		return fmt.Errorf("cancelled behind %d rows", t.Kept+t.Answered+t.Bad)
	case mistake.Of(err) != nil:
		return err
	case errors.As(err, &fault):
		return wrong(fault.Error(), fault.Hint+goOn(w, t))
	case errors.Is(err, batch.ErrOther):
		return &mistake.Error{What: plain.Line(err.Error(), 200), Hint: "name the file that this input's answers went into, or another one without --resume", Cause: err}
	case err != nil && w.out != "" && w.out != "-":
		return failed(plain.Line(err.Error(), 200), fmt.Sprintf("rows written before it: %d; mend that and go on with --resume", t.Kept+t.Answered+t.Bad), err)
	case err != nil:
		return err
	}
	said := fmt.Sprintf("%d rows answered, %d not%s", t.Answered, t.Bad, thereText(t.Kept))
	if t.Bad > 0 {
		return errors.New(said) // the answers are written, and yet not all of them are answers
	}
	if t.Kept > 0 {
		_, err = fmt.Fprintln(d.Err, said)
	}
	return err
}

func thereText(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprintf("; %d were there already", n)
}

// goOn says how a batch that a bad row ended is gone on with.
func goOn(w *batchWanted, t batch.Tally) string {
	if w.out == "" || t.Kept+t.Answered == 0 {
		return ""
	}
	return fmt.Sprintf("; rows written before it: %d; mend it and go on with --resume", t.Kept+t.Answered)
}

func (d *Deps) sayFault(f *batch.Fault) {
	fmt.Fprintf(d.Err, "brazebooth: %s\n  %s\n", f.Error(), f.Hint)
}

// explainRow says of a card that could not be computed what to type instead.
func (d *Deps) explainRow(err error) (what, hint string) {
	what, hint, _ = d.explained(err)
	if hint == "" {
		hint = "see brazebooth card --help"
	}
	return what, hint
}

func formatOf(text, file string) (batch.Format, error) {
	if text == "" {
		text = strings.TrimPrefix(filepath.Ext(file), ".")
	}
	switch strings.ToLower(text) {
	case "csv", "tsv":
		return batch.CSV, nil
	case "jsonl", "ndjson", "json":
		return batch.JSONLines, nil
	}
	return "", wrong("the name "+quote(file)+" does not say whether it is CSV or JSON lines", "type --format csv or --format jsonl")
}

// sizeOf is the length of an input that is a file, 0 where it is none.
func sizeOf(in io.Reader) (int64, error) {
	f, ok := in.(*os.File)
	if !ok {
		return 0, nil
	}
	info, err := f.Stat()
	switch {
	case err != nil:
		return 0, err
	case !info.Mode().IsRegular():
		return 0, nil
	}
	return info.Size(), nil
}

func carryOf(text string) []string {
	if text == "" {
		return nil
	}
	return strings.Split(text, ",")
}
