package batch

import (
	"context"
	"io"
	"strconv"

	"brazebooth/calc"
	"brazebooth/internal/crew"
)

// Format is how rows are written, in the input and the output.
type Format string

// The formats.
const (
	CSV       Format = "csv"
	JSONLines Format = "jsonl"
)

// Solver computes a row's card; source is the power source that the row names, "" for none.
type Solver func(ctx context.Context, job calc.Job, source string) (calc.Card, error)

// Options is how a batch is run.
type Options struct {
	Format    Format
	Carry     []string // columns besides id, name and note that are copied and not read
	KeepGoing bool     // a bad row is answered with its reason and does not end the batch
	Workers   int      // rows at a time
	Version   string   // of the program, for JSON
	Solve     Solver
	Explain   func(error) (what, hint string) // of an error of Solve
	Bad       func(*Fault)                    // told of each bad row when its turn comes; may be nil
	Done      func(rows int)                  // told after each row how many are done; may be nil
}

// Fault is a row, or a head, that cannot be answered.
type Fault struct {
	Line       int    // of the input, from 1
	Column     string // "" for the whole row
	What, Hint string
}

func (f *Fault) Error() string {
	at := "line " + strconv.Itoa(f.Line)
	if f.Column != "" {
		at += ", " + f.Column
	}
	return at + ": " + f.What
}

// Tally is what became of a batch.
type Tally struct {
	Kept     int // rows that were in the output already
	Answered int
	Bad      int
}

// row is one job as it stands in the input.
type row struct {
	line   int
	echo   []byte // its own part of the output
	job    calc.Job
	source string
	fault  *Fault
}

// table reads rows of one format and writes their answers.
type table interface {
	// next is the next row, io.EOF after the last. Any other error ends the batch.
	next() (row, error)
	// head is what stands above the answers, with its line break; nil for nothing.
	head() []byte
	// answer and refusal are the lines of the output, with their line breaks.
	answer(to []byte, r *row, card *calc.Card) ([]byte, error)
	refusal(to []byte, r *row) []byte
	// mine reports whether a whole line of an earlier output is this row's.
	mine(r *row, line []byte) bool
	// begins is the beginning of every line that this format writes below its head.
	begins() string
}

// open reads the head of the input.
func open(in io.Reader, o *Options) (table, error) {
	if o.Format == JSONLines {
		return newLines(in, o), nil
	}
	return newGrid(in, o)
}

// Run answers every row of in on out. The first bad row ends it with a *Fault unless KeepGoing is set; the rows before
// it are written. Once the batch has ended or was given up, Run no longer waits for its input.
func Run(ctx context.Context, in io.Reader, out io.Writer, o Options) (Tally, error) {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	t, err := open(crew.Reader(ctx, in), &o)
	if err != nil {
		return Tally{}, err
	}
	if err := writeHead(t, out); err != nil {
		return Tally{}, err
	}
	return answer(ctx, stop, t, out, &o, Tally{})
}

func writeHead(t table, out io.Writer) error {
	head := t.head()
	if head == nil {
		return nil
	}
	_, err := out.Write(head)
	return err
}

// limit is the most bytes that one row may take.
const limit = 1 << 20

const tooLong = "row longer than a megabyte: a quote that is not closed?"

// A text that is not UTF-8 is refused: without its unreadable bytes it would be another text.
const (
	foreign     = "letters that are no UTF-8"
	foreignHint = "save it as UTF-8: spreadsheets and editors offer that beside the file's name"
)
